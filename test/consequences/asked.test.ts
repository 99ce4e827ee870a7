import { describe, expect, it } from 'vitest'
import { askedChanges } from '../../src/consequences/asked.ts'
import type { Machine } from '../../src/machine.ts'
import type { Json } from '../../src/question.ts'
import type { Part } from '../../src/shop.ts'
import { connection, wren } from '../fixtures/wren.ts'
import { withCircuit, withPump } from './asking.ts'
import { adapterPart, endPart, hoseList, part, shopWith } from './list.ts'

const asked = (after: Machine, changes: Json, parts: readonly Part[] = hoseList, before: Machine = wren()) =>
  askedChanges({ before, after, changes, shop: shopWith(parts), option: 'As asked' })

const ids = (result: ReturnType<typeof asked>) => result.uses.map(({ part: id, quantity }) => [id, quantity])
const jobs = (result: ReturnType<typeof asked>) => result.jobs.map(({ job, quantity }) => [job, quantity])

const pumpPart = part('pump-158', 'pump', { displacement: '15.8 cm3/rev' }, 268, { name: 'Gear pump 15.8 cm3' })
const patchPump = { circuits: { main: { pump: { part: 'pump-158' } } } }

describe('askedChanges', () => {
  it('lists a pump in words, with its part and job', () => {
    const after = withPump(wren(), { part: 'pump-158', displacement: 15.8e-6 })
    const result = asked(after, patchPump, [pumpPart])
    expect(result.changes).toEqual([{ component: 'circuits.main.pump', from: '7.9 cm3/rev', to: 'Gear pump 15.8 cm3' }])
    expect(ids(result)).toEqual([['pump-158', 1]])
    expect(jobs(result)).toEqual([['replace pump', 1]])
  })

  it('what calibration fitted to the pump is no change', () => {
    const after = withPump(wren(), { slipFactor: 3, flowOffset: 0.05 })
    expect(asked(after, { circuits: { main: { pump: {} } } }).changes).toEqual([])
  })

  it('only what the patch writes is a change', () => {
    expect(asked({ ...wren(), mass: 1, strainer: null }, { cooler: null }).changes).toEqual([])
  })

  it('a new port brings an adapter to the hose that stays', () => {
    const ports = { inlet: connection('G 3/4'), outlet: connection('G 3/4') }
    const result = asked(withPump(wren(), { part: 'pump-158', ports }), patchPump, [pumpPart, ...hoseList])
    expect(ids(result)).toEqual([
      ['pump-158', 1],
      ['ad-G12-G34', 1],
    ])
    expect(result.consequences).toEqual([
      expect.objectContaining({
        component: 'circuits.main.lines.pressure',
        kind: 'adapter',
        action: 'adapt',
        because: [],
        connections: [{ from: 'G 1/2', to: 'G 3/4', adapter: 'ad-G12-G34' }],
      }),
    ])
  })

  it('or, where no adapter is on the list, a new hose of its size with the end that fits', () => {
    const ports = { inlet: connection('G 3/4'), outlet: connection('G 3/4') }
    const parts = [pumpPart, ...hoseList.filter(({ kind }) => kind !== 'adapter'), endPart(8, 'G 3/4', 7)]
    const result = asked(withPump(wren(), { part: 'pump-158', ports }), patchPump, parts)
    expect(ids(result).slice(1)).toEqual([
      ['hose-2-wire-hose-8', 0.9],
      ['end-8-G34', 1],
      ['end-8-G12', 1],
    ])
    expect(jobs(result)).toContainEqual(['replace hose', 1])
  })

  it('motors come in pairs, and a second displacement brings its shift line', () => {
    const motor = { ...wren().travel.motor, part: 'm-2s', secondDisplacement: 117e-6 }
    const after = { ...wren(), travel: { ...wren().travel, motor } }
    const motorPart = part('m-2s', 'motor', {}, 690)
    const result = asked(after, { travel: { motor: { part: 'm-2s' } } }, [motorPart, ...hoseList])
    expect(jobs(result)).toEqual([
      ['replace motor', 2],
      ['fit shift line', 1],
    ])
    expect(ids(result)[0]).toEqual(['m-2s', 2])
    // One line to the swivel (0.8 m), one to each motor (0.7 m): 2.2 m, six ends; and what shifts, named without a price.
    const shift = result.uses.filter(({ component }) => component === 'travel.lines.shift')
    expect(shift.map(({ quantity }) => quantity)).toEqual([2.2, 6, 1])
    expect(shift[2]).toMatchObject({ part: null, what: expect.stringMatching(/shift/u) })
  })

  it('a work line stands for four hoses, each with its length rounded up to a tenth', () => {
    const lines = wren().travel.lines.map((line) =>
      line.id === 'travel.lines.swivel-to-motor'
        ? { ...line, part: 'hose-2-wire-hose-6', dash: 6, bore: 0.0095, length: 0.72 }
        : line,
    )
    const after = { ...wren(), travel: { ...wren().travel, lines } }
    const result = asked(after, { travel: { lines: { 'swivel-to-motor': { part: 'hose-2-wire-hose-6' } } } })
    // 0.72 m is cut as 0.8 m, four times.
    expect(ids(result)).toEqual([
      ['hose-2-wire-hose-6', 3.2],
      ['end-6-G14', 4],
      ['end-6-G12', 4],
    ])
    expect(jobs(result)).toEqual([['replace hose', 4]])
  })

  it('four wheel motors make eight hoses', () => {
    const line = {
      ...(wren().travel.lines[0] as ReturnType<typeof wren>['travel']['lines'][number]),
      id: 'travel.lines.valve-to-motor',
    }
    const travel = { ...wren().travel, motors: 4, swivel: null, lines: [line] }
    const before = { ...wren(), travel }
    const after = { ...before, travel: { ...travel, lines: [{ ...line, part: 'hose-2-wire-hose-6', dash: 6 }] } }
    const result = asked(
      after,
      { travel: { lines: { 'valve-to-motor': { part: 'hose-2-wire-hose-6' } } } },
      hoseList,
      before,
    )
    expect(jobs(result)).toEqual([['replace hose', 8]])
  })

  it('one tandem pump for two circuits is bought and fitted once', () => {
    const [main] = wren().circuits
    if (main === undefined) throw new Error('no circuit')
    const two = (part: string | null): Machine => ({
      ...wren(),
      circuits: (['left', 'right'] as const).map((name, i) => ({
        ...main,
        name,
        pump: { ...main.pump, part, section: i + 1 },
        lines: { suction: null, pressure: null, return: null },
      })),
    })
    const changes = {
      circuits: { left: { pump: { part: 'tandem', section: 1 } }, right: { pump: { part: 'tandem', section: 2 } } },
    }
    const result = asked(two('tandem'), changes, [part('tandem', 'tandem pump', {}, 500)], two(null))
    expect(result.changes).toHaveLength(2)
    expect(ids(result)).toEqual([['tandem', 1]])
    expect(jobs(result)).toEqual([['replace pump', 1]])
  })

  it('a setting is a job and no part; another relief is a part and its own job', () => {
    const [circuit] = wren().circuits
    const set = { ...(circuit?.relief as NonNullable<typeof circuit>['relief']), setting: 140e5 }
    const onlySet = asked(withCircuit(wren(), { relief: set }), {
      circuits: { main: { relief: { setting: '140 bar' } } },
    })
    expect([ids(onlySet), jobs(onlySet)]).toEqual([[], [['set relief', 1]]])
    const other = { ...set, part: 'relief-60', ratedFlow: 0.001 }
    const changes = { circuits: { main: { relief: { part: 'relief-60', setting: '140 bar' } } } }
    const changed = asked(withCircuit(wren(), { relief: other }), changes, [part('relief-60', 'relief', {}, 86)])
    expect([ids(changed), jobs(changed)]).toEqual([[['relief-60', 1]], [['replace relief', 1]]])
  })

  it('a cooler brings bypass, harness and hoses; what the option names itself is not brought twice', () => {
    const cooler = {
      part: 'cooler-s',
      capacity: 45,
      atFlow: 0.0004,
      drop: null,
      maxPressure: null,
      bypass: 4.5e5,
      airRise: 0,
      fanCurrent: 7,
    }
    const parts = [
      part('cooler-s', 'cooler', { capacity: '0.045 kW/K', 'at-flow': '25 L/min', 'fan-current': '7 A' }, 372),
      part('bypass-45', 'oil cooler bypass', {}, 72),
      part('bypass-20', 'oil cooler bypass', {}, 60),
      part('harness-fan', 'harness', {}, 42),
      part('hose-1w-10', 'hose', { hose: -10, kind: '1-wire hose', 'max-pressure': '130 bar' }, 11.6),
      ...hoseList,
    ]
    const result = asked({ ...wren(), cooler }, { cooler: { part: 'cooler-s' } }, parts)
    // Two hoses of a metre, of the kind and size of the return line, with the end that it has at the tank.
    expect(ids(result)).toEqual([
      ['cooler-s', 1],
      ['bypass-20', 1],
      ['harness-fan', 1],
      ['hose-1w-10', 2],
      ['end-10-G34', 4],
    ])
    expect(jobs(result)).toEqual([['fit cooler', 1]])
    const named = asked(
      { ...wren(), cooler },
      { cooler: { part: 'cooler-s' }, 'cooler-bypass': { part: 'bypass-45' } },
      parts,
    )
    expect(ids(named).filter(([id]) => String(id).startsWith('bypass'))).toEqual([['bypass-45', 1]])
  })

  it('a sprocket, of which the machine keeps no part, is found in the patch', () => {
    const after = { ...wren(), travel: { ...wren().travel, wayPerTurn: 0.91 } }
    const result = asked(after, { travel: { sprocket: { part: 'sprocket-290' } } }, [
      part('sprocket-290', 'sprocket', {}, 176),
    ])
    expect([ids(result), jobs(result)]).toEqual([[['sprocket-290', 2]], [['replace sprocket', 2]]])
    // By its name, as every other part: what it moves at each turn says nothing to anybody who orders it.
    expect(result.changes.map(({ to }) => to)).toEqual([part('sprocket-290', 'sprocket', {}, 176).name])
  })

  it('oil is a job; its litres follow from what is drained', () => {
    const oil = { grade: 'ISO VG 68', viscosityAt40: 68e-6, viscosityAt100: 8.7e-6 }
    const result = asked({ ...wren(), oil }, { fluid: { part: 'oil-68' } })
    expect(result.changes).toEqual([{ component: 'fluid', from: 'ISO VG 46', to: 'ISO VG 68' }])
    expect([ids(result), jobs(result)]).toEqual([[], [['change oil', 1]]])
  })

  it('figures without a part stay visible and unpriced', () => {
    const after = withPump(wren(), { displacement: 11e-6 })
    const result = asked(after, { circuits: { main: { pump: { displacement: '11 cm3/rev' } } } }, [
      adapterPart('G 1/2', 'G 3/4', '12 mm', 7),
    ])
    expect(result.uses).toEqual([expect.objectContaining({ kind: 'pump', part: null, what: 'Pump, 11 cm3/rev' })])
  })
})
