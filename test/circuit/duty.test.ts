/** Modes of an hour by the rules of the method, on the invented machine: what is shared out is worked out by hand. */
import { describe, expect, test } from 'vitest'
import { balanceAt, shaftTorque } from '../../src/circuit/balance.ts'
import { atTool, attachmentState, modePower, modesOf, type Work } from '../../src/circuit/duty.ts'
import { conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import { solveLevel } from '../../src/circuit/travel-point.ts'
import { dropOfLine, dropToTool } from '../../src/circuit/way.ts'
import type { Circuit, Duty, Machine } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const lpm = 1 / 60_000
const [main] = wren().circuits as [Circuit]
const duty: Duty = {
  travel: 0.2,
  work: { share: 0.3, pressure: null, useful: 0.6 },
  relief: 0.1,
  attachment: 0.1,
  idle: 0.3,
}
const breaker = { name: 'breaker', flow: 15 * lpm, pressure: 90e5 }

const plantOf = (machine: Machine): Plant => preparePlant(machine, wrenSite)
const mode = (name: Parameters<typeof modePower>[2], machine = wren(), work: Partial<Work> = {}) => {
  const plant = plantOf(machine)
  return modePower(plant, { duty, attachment: breaker, ...work }, name, conditionsAt(plant, 50))
}
const weak = (netPower: number): Machine => ({ ...wren(), engine: { ...wren().engine, netPower } })
/** Site: 240 m and 31 °C leave (1 - 0.03 x 90/300)(1 - 0.01 x 2/5.5) = 0.991 x 0.99636 = 0.98740 of the torque. */
const DERATE = 0.991 * (1 - 0.02 / 5.5)
/** At 70 % of rated speed with a torque rise of 12 %: 0.7 x 1.12 = 0.784 of the derated power. */
const peakPower = (netPower: number) => netPower * DERATE * 0.784

test('modes of no share are no modes', () => {
  expect(modesOf({ ...duty, relief: 0, attachment: 0 })).toEqual([
    ['travel', 0.2],
    ['work', 0.3],
    ['idle', 0.3],
  ])
  expect(modesOf(duty).map(([name]) => name)).toEqual(['travel', 'work', 'relief', 'attachment', 'idle'])
})

describe('work', () => {
  // 0.4 of 155 bar, 60 % of the pump's hydraulic power.
  test('at 0.4 of the relief setting 60 % leaves', () => {
    const { useful, input, returnFlow } = mode('work')
    expect(useful).toBeCloseTo(0.6 * 62e5 * returnFlow, 6)
    expect(input).toBeGreaterThan(62e5 * returnFlow)
  })
  const stated = (pressure: number, useful: number) =>
    mode('work', wren(), { duty: { ...duty, work: { share: 0.3, pressure, useful } } })
  test('as stated, but never above the relief', () => {
    const at90 = stated(90e5, 0.5)
    expect(at90.useful).toBeCloseTo(0.5 * 90e5 * at90.returnFlow, 6)
    const over = stated(300e5, 0.5)
    expect(over.useful).toBeCloseTo(0.5 * 155e5 * over.returnFlow, 6)
  })
})

test('at the relief nothing leaves', () => {
  const { useful, input, returnFlow } = mode('relief')
  expect(useful).toBe(0)
  expect(input).toBeGreaterThan(155e5 * returnFlow)
})

describe('who works', () => {
  const other = (works: Circuit['works']): Circuit => ({ ...main, name: 'other', drives: 'no track', works })
  const machine = (mainWorks: Circuit['works'], otherWorks: Circuit['works']): Machine => ({
    ...weak(20_000),
    circuits: [{ ...main, works: mainWorks }, other(otherWorks)],
  })
  const useful = (m: Machine, name: 'work' | 'attachment') => mode(name, m).useful
  test('the circuits that name implements; where none does, those that drive', () => {
    const both = useful(machine(['implements'], ['implements']), 'work')
    const one = useful(machine([], ['implements']), 'work')
    expect(both / one).toBeGreaterThan(1.8)
    expect(useful(machine([], []), 'work') / one).toBeGreaterThan(0.9)
    expect(useful(machine([], []), 'work') / one).toBeLessThan(1.1)
  })
  test('an attachment works only on circuits that name it', () => {
    expect(useful(machine([], []), 'attachment')).toBe(0)
    expect(useful(machine([], ['attachment']), 'attachment')).toBeGreaterThan(0)
  })
})

describe('attachment', () => {
  // 75 % of 90 bar times the smaller of what the pump gives and what the tool takes.
  test('takes what it wants, or all that the pump gives', () => {
    expect(mode('attachment').useful).toBeCloseTo(0.75 * 90e5 * 15 * lpm, 6)
    const greedy = mode('attachment', wren(), { attachment: { ...breaker, flow: 60 * lpm } })
    expect(greedy.useful).toBeCloseTo(0.75 * 90e5 * greedy.returnFlow, 6)
  })
  test('of two circuits it takes from both together', () => {
    const circuits = [main, { ...main, name: 'other', drives: 'no track' as const }]
    const both = mode('attachment', { ...weak(20_000), circuits }, { attachment: { ...breaker, flow: 90 * lpm } })
    expect(both.useful).toBeCloseTo(0.75 * 90e5 * both.returnFlow, 6)
  })
  test('over the relief it gets what the setting can push', () => {
    const hard = { ...breaker, pressure: 152e5, flow: 60 * lpm }
    const plant = plantOf(wren())
    const at = conditionsAt(plant, 50)
    const { state, working } = attachmentState(plant, hard, at)
    expect(working).toEqual([0])
    const [circuit] = state.circuits
    const [pumps, gets] = [circuit?.pumpFlow ?? 0, circuit?.wayFlow ?? 0]
    expect(circuit?.relieving).toBe(true)
    expect(gets).toBeLessThan(pumps)
    // What is left of the setting pushes it along the way out and back; the return carries the pump's whole flow.
    expect(dropToTool(main, gets, at) + dropOfLine(main.lines.return, pumps, at)).toBeCloseTo(3e5, 0)
    expect(mode('attachment', wren(), { attachment: hard }).useful).toBeCloseTo(0.75 * 152e5 * gets, 6)
  })
  test('that takes nothing of nothing leaves nothing', () => {
    expect(mode('attachment', wren(), { attachment: { name: 'none', flow: 0, pressure: 170e5 } }).useful).toBe(0)
  })
  test('that is not there idles', () => {
    expect(mode('attachment', wren(), { attachment: null })).toEqual(mode('idle'))
  })
})

describe('at the tool', () => {
  const state = { pumpFlow: 20 * lpm, wayFlow: 18 * lpm, pressure: 100e5, torque: 0, relieving: false, starved: false }
  const ready = () => {
    const plant = plantOf(wren())
    return { plant, at: conditionsAt(plant, 50) }
  }
  test('it has what it wants, where the engine carries it', () => {
    const { plant, at } = ready()
    expect(atTool(plant, 0, state, 1e5, 90e5, false, at)).toEqual({ flow: 18 * lpm, pressure: 90e5 })
  })
  test('else what is left of the pump’s pressure behind the way out and back', () => {
    const { plant, at } = ready()
    const lost = dropToTool(main, 20 * lpm, at) + dropOfLine(main.lines.return, 20 * lpm, at) + 1e5
    const { flow, pressure } = atTool(plant, 0, state, 1e5, 90e5, true, at)
    expect(flow).toBe(20 * lpm)
    expect(pressure).toBeCloseTo(100e5 - lost, 6)
    expect(atTool(plant, 0, { ...state, pressure: 1e5 }, 1e5, 90e5, true, at).pressure).toBe(0)
  })
})

describe('an engine that cannot carry a mode', () => {
  test('gives all it has at 70 % of rated speed', () => {
    expect(mode('relief', weak(3000)).input).toBeCloseTo(peakPower(3000), 3)
    expect(mode('work', weak(1500)).input).toBeCloseTo(peakPower(1500), 3)
  })
  test('work by as much less pressure', () => {
    const { useful, returnFlow } = mode('work', weak(1500))
    expect(useful).toBeGreaterThan(0)
    expect(useful).toBeLessThan(0.6 * 62e5 * returnFlow)
  })
  // What leaves is 75 % of the tool's pressure times its flow: less than the 90 bar asked for.
  test('the tool has less than it wants', () => {
    const { useful, input, returnFlow } = mode('attachment', weak(2000), { attachment: { ...breaker, flow: 60 * lpm } })
    expect(input).toBeCloseTo(peakPower(2000), 3)
    expect(useful).toBeGreaterThan(0)
    expect(useful).toBeLessThan(0.75 * 90e5 * returnFlow)
  })
  // The circuit that waits keeps its own pressure; only what works is scaled down.
  test('circuits in neutral are not scaled', () => {
    const machine = (netPower: number): Machine => ({
      ...weak(netPower),
      circuits: [main, { ...main, name: 'other', drives: 'no track', works: [] }],
    })
    const plant = plantOf(machine(2500))
    const at = conditionsAt(plant, 50)
    const neutral = balanceAt(plant, [{ kind: 'neutral' }, { kind: 'neutral' }], 35, at).circuits[1]?.pressure ?? 0
    const tool = attachmentState(plant, breaker, at).state
    expect(tool.scaled).toBe(true)
    expect(tool.circuits[1]?.pressure).toBeCloseTo(neutral, 6)
    // At the relief: the shaft of the waiting pump takes what it takes in neutral, the working one has the rest.
    const { useful, input } = mode('work', machine(1800))
    expect(input).toBeCloseTo(peakPower(1800), 3)
    const waits = shaftTorque(main.pump, 35, neutral, 1, at)
    const left = peakPower(1800) / (2 * Math.PI * 35) - waits
    const torqueAt = (pressure: number) => shaftTorque(main.pump, 35, pressure, 1, at)
    const pressure = (62e5 * (left - torqueAt(0))) / (torqueAt(62e5) - torqueAt(0))
    const flow = main.pump.displacement * 35 - (main.pump.slip * pressure) / at.mu
    expect(useful).toBeCloseTo(0.6 * pressure * flow, 3)
  })
  test('idling is asked as it is', () => {
    const { input, regime } = mode('idle', weak(100))
    const plant = plantOf(weak(100))
    const { torque } = balanceAt(plant, [{ kind: 'neutral' }], 35, conditionsAt(plant, 50))
    expect(input).toBeCloseTo(2 * Math.PI * 35 * torque, 9)
    expect(input).toBeGreaterThan(peakPower(100))
    expect(regime).toBe('scaled free')
  })
  test('travel does not move, and all of it is heat', () => {
    const heavy: Machine = { ...weak(2000), mass: 3500 }
    const { input, useful } = mode('travel', heavy)
    expect(useful).toBe(0)
    expect(input).toBeCloseTo(peakPower(2000), 3)
  })
})

test('travel is the level point: its shaft power, its useful power, its return flow', () => {
  const plant = plantOf(wren())
  const level = solveLevel(plant, conditionsAt(plant, 50))
  const { input, useful, returnFlow } = mode('travel')
  expect(input).toBeCloseTo(2 * Math.PI * level.engine.torque * level.engine.speed, 9)
  expect([useful, returnFlow]).toEqual([level.useful, level.engine.totalFlow])
})

test('idling nothing leaves', () => {
  const { input, useful } = mode('idle')
  expect(useful).toBe(0)
  expect(input).toBeGreaterThan(0)
  expect(input).toBeLessThan(mode('travel').input)
})

describe('what holds the flows is named', () => {
  const regime = (name: Parameters<typeof modePower>[2], machine = wren(), oil = 50) => {
    const plant = plantOf(machine)
    return modePower(plant, { duty, attachment: { ...breaker, pressure: 154e5 } }, name, conditionsAt(plant, oil))
      .regime
  }
  test('governor, lugging or all it has; free, over the relief or starved', () => {
    expect(regime('idle')).toBe('governed free')
    expect(regime('travel')).toBe('governed free')
    expect(regime('travel', { ...weak(2000), mass: 3500 })).toMatch(/^scaled /u)
    // An engine that has 5 % less at rated speed than the level asks for, and 12 % of torque rise.
    const level = solveLevel(plantOf(wren()), conditionsAt(plantOf(wren()), 50)).engine.torque
    expect(regime('travel', weak((level * 2 * Math.PI * 50) / DERATE / 1.05))).toBe('lugging free')
    expect(regime('relief', weak(3000))).toBe('scaled free')
    expect(regime('attachment')).toBe('governed relieving')
    expect(regime('idle', wren(), -20)).toMatch(/ starved$/u)
    // 22.2 N.m at the relief: between the 27.0 x 0.8 = 21.6 N.m of 6880 W at rated speed and 12 % more at its peak.
    expect(regime('relief', weak(6880))).toBe('lugging free')
  })
})
