import { describe, expect, it } from 'vitest'
import { allChecks } from '../../src/findings/all-checks.ts'
import { counts, countsWhenFaster, runChecks } from '../../src/findings/run-checks.ts'
import type { Given } from '../fixtures/check-input.ts'
import { given } from '../fixtures/check-input.ts'

const finding = (id: string, change: Given) => {
  const found = runChecks(given(change)).find((one) => one.id === id)
  if (!found) throw new Error(`no finding ${id}`)
  return found
}

const RELIEF = 'relief-capacity:circuits.main.relief'
const flow = (flowAtReliefLpm: number): Given => ({ more: { circuits: { main: { flowAtReliefLpm } } } })

describe('findings of the sample machine', () => {
  it('are within their limits but for those that its figures ask for', () => {
    const outside = runChecks(given()).filter(({ severity }) => severity !== 'ok')
    expect(outside.map(({ id, severity }) => `${id} ${severity}`)).toEqual([
      // 22 N·m x 2.8 = 61.6 on a coupling of 40 N·m
      'coupling-torque:circuits.main.coupling change',
      // 1.29 m/s over 1.2
      'line-velocity:circuits.main.lines.suction watch',
      // 11 L/min through 6 mm: 6.48 m/s over 6.1
      'swivel-velocity:travel.swivel watch',
      'filter-missing:filter watch',
      // 13 L at 22 L/min: 35 s
      'reservoir-dwell:reservoir watch',
      'counterbalance:brakes watch',
    ])
  })

  it('have ids of their own, in the order of the checks, none existing', () => {
    const findings = runChecks(given())
    expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length)
    expect(findings.every(({ id, check, component }) => id === `${check}:${component}`)).toBe(true)
    const order = findings.map(({ check }) => allChecks.findIndex(({ id }) => id === check))
    expect(order).toEqual(order.toSorted((a, b) => a - b))
    expect(findings.some(({ existing }) => existing)).toBe(false)
  })

  it('carry the heading that holds and the words of their check', () => {
    const wording = allChecks.find(({ id }) => id === 'relief-capacity')?.wording
    expect(finding(RELIEF, flow(39))).toMatchObject({ heading: wording?.within, because: wording?.why })
    expect(finding(RELIEF, flow(41))).toMatchObject({ heading: wording?.over, because: wording?.why })
  })

  it('names a source for each', () => {
    for (const { source } of runChecks(given())) expect(source.length).toBeGreaterThan(5)
  })
})

describe('what the machine already had', () => {
  it('exists where the option leaves it or worsens it by no more than 2 %', () => {
    expect(finding(RELIEF, { ...flow(50), before: flow(50) }).existing).toBe(true)
    expect(finding(RELIEF, { ...flow(51), before: flow(50) }).existing).toBe(true)
    expect(finding(RELIEF, { ...flow(45), before: flow(50) }).existing).toBe(true)
    expect(finding(RELIEF, { ...flow(51.01), before: flow(50) }).existing).toBe(false)
  })

  it('is new where the machine was within its limit, and nothing where the option cures it', () => {
    expect(finding(RELIEF, { ...flow(41), before: flow(39) }).existing).toBe(false)
    expect(finding(RELIEF, { ...flow(39), before: flow(50) })).toMatchObject({ existing: false, severity: 'ok' })
  })

  it('is new where the severity gets worse, however little the value moves', () => {
    const power = (reliefPowerKw: number): Given => ({ more: { reliefPowerKw, deratedPowerKw: 8 } })
    expect(finding('engine-power:engine', { ...power(8.01), before: power(7.99) }).existing).toBe(false)
    expect(finding('engine-power:engine', { ...power(7.99), before: power(8.01) }).existing).toBe(true)
  })

  it('goes the other way where less is worse', () => {
    const inlet = (inletPressureBarAbs: number): Given => ({ figures: { circuits: { main: { inletPressureBarAbs } } } })
    const id = 'inlet-pressure:circuits.main.lines.suction'
    expect(finding(id, { ...inlet(0.49), before: inlet(0.5) }).existing).toBe(true)
    expect(finding(id, { ...inlet(0.48), before: inlet(0.5) }).existing).toBe(false)
    expect(finding(id, { ...inlet(0.6), before: inlet(0.5) }).existing).toBe(true)
  })

  it('is new where a new part brings a lower limit', () => {
    const rated = (lpm: number): Given => ({ ...flow(50), circuit: { relief: { ratedFlow: lpm / 60_000 } } })
    expect(finding(RELIEF, { ...rated(40), before: rated(40) }).existing).toBe(true)
    expect(finding(RELIEF, { ...rated(30), before: rated(40) }).existing).toBe(false)
    expect(finding(RELIEF, { ...rated(45), before: rated(40) }).existing).toBe(true)
  })

  it('compares heat where the oil settles in neither machine, and is new where it settled before', () => {
    const id = 'oil-temperature:cooler'
    const boils = (averageHeatKw: number): Given => ({
      figures: { heat: { steadyOilC: null, steadyViscosityCst: null, averageHeatKw } },
    })
    expect(finding(id, { ...boils(4), before: boils(4) }).existing).toBe(true)
    expect(finding(id, { ...boils(5), before: boils(4) }).existing).toBe(false)
    expect(finding(id, { ...boils(4), before: { figures: { heat: { steadyOilC: 90 } } } }).existing).toBe(false)
    expect(finding(id, { figures: { heat: { steadyOilC: 90 } }, before: boils(4) }).existing).toBe(true)
  })

  it('keeps a missing brake apart from one that the option makes matter', () => {
    const id = 'holding-brake:brakes'
    const machine = { brakes: { holding: false } }
    const faster: Given = { machine, figures: { travel: { level: { speedKmh: 3 } } }, before: { machine } }
    expect(finding(id, { machine, before: { machine } })).toMatchObject({ existing: true, severity: 'watch' })
    expect(finding(id, faster)).toMatchObject({ existing: false, severity: 'stop' })
  })
})

describe('what asks and what counts', () => {
  it('asks for a component by a change that is new, and by nothing else', () => {
    const fresh = finding(RELIEF, { ...flow(50), before: flow(30) })
    expect(counts(fresh)).toBe(true)
    expect(counts({ ...fresh, existing: true })).toBe(false)
    for (const severity of ['ok', 'watch', 'stop'] as const) expect(counts({ ...fresh, severity })).toBe(false)
  })

  it('counts braking and holding against what is faster, existing or not', () => {
    const machine = { brakes: { holding: false } }
    expect(countsWhenFaster(finding('holding-brake:brakes', { machine, before: { machine } }))).toBe(true)
    expect(countsWhenFaster(finding('holding-brake:brakes', {}))).toBe(false)
    expect(countsWhenFaster(finding('filter-missing:filter', {}))).toBe(false)
  })
})
