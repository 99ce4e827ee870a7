/** The oil's heat balance: what is stored and what leaves by hand, the curve against a general integrator. */
import odex from 'odex'
import { describe, expect, test } from 'vitest'
import { modePower, type Work } from '../../src/circuit/duty.ts'
import { HeatTable, heatAt, heatOut, heatStored, oilAfter, settledOil, warmUp } from '../../src/circuit/oil-heat.ts'
import { conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import type { Cooler, Duty, Machine } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const lpm = 1 / 60_000
const cooler: Cooler = {
  part: null,
  capacity: 60,
  atFlow: 40 * lpm,
  drop: null,
  maxPressure: null,
  bypass: 4.5e5,
  airRise: 5,
  fanCurrent: null,
}
const duty: Duty = {
  travel: 0.2,
  work: { share: 0.4, pressure: null, useful: 0.6 },
  relief: 0.1,
  attachment: 0,
  idle: 0.3,
}
const work: Work = { duty, attachment: null }
const nothing: Work = {
  duty: { ...duty, travel: 0, work: { ...duty.work, share: 0 }, relief: 0, idle: 0 },
  attachment: null,
}
const AMBIENT = wrenSite.ambient

const ready = (machine: Machine, task = work): { plant: Plant; table: HeatTable } => {
  const plant = preparePlant(machine, wrenSite)
  return { plant, table: new HeatTable(plant, task, AMBIENT) }
}

/** Surfaces of the machine by hand: 12 W/m2K on 0.5 and on 0.9 m2. */
const SURFACES = 12 * 0.5 + 12 * 0.9
/** Oil 870 (1 - 0.0007 (T - 15)) kg/m3, 1000 (1.685 + 0.0034 T)/sqrt(0.87) J/kgK, 13 L; steel 32 kg at 480 J/kgK. */
const stored = (oil: number): number =>
  (870 * (1 - 0.0007 * (oil - 15)) * 0.013 * 1000 * (1.685 + 0.0034 * oil)) / Math.sqrt(0.87) + 32 * 480

describe('out', () => {
  // 40 K: 12 x 0.5 x 40 + 12 x 0.9 x 40 = 672 W.
  test('by the surfaces, as much more as they were found to cool', () => {
    expect(heatOut(wren(), 30, 70, 0)).toBeCloseTo(672, 9)
    expect(heatOut({ ...wren(), coolingFactor: 1.5 }, 30, 70, 0)).toBeCloseTo(1008, 9)
  })
  // The air at the core is 5 K warmer: 60 x 35 x 0.5 = 1050 W; the factor is of the surfaces alone.
  test('by the cooler, as far as the flows use it', () => {
    expect(heatOut({ ...wren(), cooler }, 30, 70, 0.5)).toBeCloseTo(672 + 1050, 9)
    expect(heatOut({ ...wren(), cooler, coolingFactor: 1.5 }, 30, 70, 0.5)).toBeCloseTo(1008 + 1050, 9)
  })
})

test('stored in oil and steel', () => {
  // 50 °C: 848.7 kg/m3 x 0.013 m3 x 1988.8 J/kgK = 21 942 J/K, steel 15 360.
  expect(heatStored(wren(), 50)).toBeCloseTo(21_942 + 15_360, -1)
  expect(heatStored(wren(), 50)).toBeCloseTo(stored(50), 6)
})

describe('in', () => {
  const cooled = () => ready({ ...wren(), cooler }).plant
  const power = (name: 'travel' | 'work' | 'relief' | 'idle') =>
    modePower(cooled(), work, name, conditionsAt(cooled(), 60))

  test('what enters less what leaves, by the shares of the duty', () => {
    const lost = (name: Parameters<typeof power>[0]) => power(name).input - power(name).useful
    const expected = 0.2 * lost('travel') + 0.4 * lost('work') + 0.1 * lost('relief') + 0.3 * lost('idle')
    expect(heatAt(cooled(), work, 60).heat).toBeCloseTo(expected, 6)
  })
  test('the cooler is used with the root of the flow, by the same shares, never more than whole', () => {
    const used = (name: Parameters<typeof power>[0], reference: number) =>
      Math.min(1, Math.sqrt(power(name).returnFlow / reference))
    const share = (reference: number) =>
      0.2 * used('travel', reference) +
      0.4 * used('work', reference) +
      0.1 * used('relief', reference) +
      0.3 * used('idle', reference)
    expect(share(40 * lpm)).toBeLessThan(0.9)
    expect(heatAt(cooled(), work, 60).coolerShare).toBeCloseTo(share(40 * lpm), 9)
    const small = ready({ ...wren(), cooler: { ...cooler, atFlow: 5 * lpm } }).plant
    expect(heatAt(small, work, 60).coolerShare).toBeCloseTo(1, 12)
    expect(heatAt(ready(wren()).plant, work, 60).coolerShare).toBe(0)
  })
})

describe('settled', () => {
  /** The cooling factor that balances the duty at a temperature, the surfaces by hand. */
  const balancedAt = (oil: number): Machine => ({
    ...wren(),
    coolingFactor: heatAt(ready(wren()).plant, work, oil).heat / (SURFACES * (oil - AMBIENT)),
  })
  for (const oil of [40, 63, 89.5, 149])
    test(`at the ${oil} °C where the surfaces carry away what comes in`, () => {
      const { plant, table } = ready(balancedAt(oil))
      expect(settledOil(plant, work, table)).toBeCloseTo(oil, 9)
    })
  test('a balance above 150 °C is none, nor is no balance', () => {
    for (const machine of [balancedAt(151), balancedAt(200), { ...wren(), coolingFactor: 0 }]) {
      const { plant, table } = ready(machine)
      expect(settledOil(plant, work, table)).toBeNull()
    }
  })
  test('where nothing is done the oil stays as warm as the air', () => {
    const { plant, table } = ready(wren(), nothing)
    expect(settledOil(plant, nothing, table)).toBe(AMBIENT)
  })
})

describe('between the nodes', () => {
  // The table is a cubic through nodes of 8 K: against the heat itself at temperatures that are no nodes.
  test('the heat of the duty to a thousandth, from ambient up', () => {
    const { plant, table } = ready({ ...wren(), cooler })
    for (const oil of [31, 31.5, 34, 37, 39, 42.3, 55, 68.9, 90, 120]) {
      const direct = heatAt(plant, work, oil)
      expect(Math.abs(table.between(oil).heat / direct.heat - 1), `${oil}`).toBeLessThan(2e-3)
      expect(Math.abs(table.between(oil).coolerShare / direct.coolerShare - 1), `${oil}`).toBeLessThan(2e-3)
    }
  })
  test('at a node it is that node; below the first it is the first', () => {
    const { plant, table } = ready(wren())
    expect(table.temperatureOf(3)).toBe(AMBIENT + 24)
    expect(table.between(AMBIENT + 24).heat).toBeCloseTo(heatAt(plant, work, AMBIENT + 24).heat, 6)
    expect(table.between(AMBIENT - 10).heat).toBeCloseTo(heatAt(plant, work, AMBIENT).heat, 6)
  })
  // Cold oil starves this pump; where it no longer does, the heat has a kink that no cubic over 8 K follows.
  test('a kink is followed closer, to a hundredth', () => {
    const site = { ...wrenSite, ambient: -22 }
    const plant = preparePlant(wren(), site)
    const table = new HeatTable(plant, work, -22)
    const regimes = new Set<string>()
    for (let oil = -22; oil < 30; oil += 1.3) {
      const direct = heatAt(plant, work, oil)
      regimes.add(direct.modes.map(({ regime }) => regime).join())
      expect(Math.abs(table.between(oil).heat / direct.heat - 1), `${oil}`).toBeLessThan(1e-2)
    }
    expect(regimes.size).toBeGreaterThan(1)
  })
})

/** Balance by hand, integrated by a general method with error control; temperatures at these minutes. */
const integrated = (machine: Machine, minutes: readonly number[]): number[] => {
  const { plant } = ready(machine)
  const solver = new odex.Solver(1)
  solver.absoluteTolerance = 1e-6
  solver.relativeTolerance = 1e-6
  const rate = (_: number, [oil = 0]: readonly number[]) => {
    const { heat, coolerShare } = heatAt(plant, work, oil)
    const core = machine.cooler === null ? 0 : 60 * (oil - AMBIENT - 5) * coolerShare
    return [(heat - machine.coolingFactor * SURFACES * (oil - AMBIENT) - core) / stored(oil)]
  }
  let [from, oil] = [0, AMBIENT]
  return minutes.map((minute) => {
    oil = solver.solve(rate, from, [oil], minute * 60).y[0] ?? Number.NaN
    from = minute * 60
    return oil
  })
}

describe('the day', () => {
  const machine: Machine = { ...wren(), cooler }
  const day = () => warmUp(machine, AMBIENT, ready(machine).table)

  test('as odex integrates the balance by hand', () => {
    const { curve } = day()
    const minutes = [5, 20, 60, 120]
    for (const [i, oil] of integrated(machine, minutes).entries())
      expect(Math.abs((curve[(minutes[i] as number) / 5]?.[1] ?? 0) - oil), `${minutes[i]} min`).toBeLessThan(0.02)
  })
  test('a point every five minutes over eight hours, from ambient, always warmer, to where it settles', () => {
    const { curve } = day()
    expect(curve.map(([minute]) => minute)).toEqual(Array.from({ length: 97 }, (_, i) => 5 * i))
    expect(curve[0]).toEqual([0, AMBIENT])
    for (const [i, [, oil]] of curve.entries()) if (i > 0) expect(oil).toBeGreaterThanOrEqual(curve[i - 1]?.[1] ?? 0)
    const { plant, table } = ready(machine)
    expect(curve.at(-1)?.[1]).toBeCloseTo(settledOil(plant, work, table) ?? 0, 1)
  })
  test('after a time, in steps or in one', () => {
    const { table } = ready(machine)
    const minutes = [1.5, 7, 60]
    for (const [i, oil] of integrated(machine, minutes).entries())
      expect(Math.abs(oilAfter(machine, AMBIENT, table, (minutes[i] as number) * 60) - oil)).toBeLessThan(0.02)
    expect(oilAfter(machine, AMBIENT, table, 0)).toBe(AMBIENT)
  })
  test('the minute of a temperature is where the integrator has it', () => {
    const { minutesTo } = day()
    // While it still warms by some kelvins in five minutes; at the end a minute is a hair.
    const minutes = [1, 3, 12, 18]
    for (const [i, oil] of integrated(machine, minutes).entries())
      expect(Math.abs((minutesTo(oil) ?? 0) - (minutes[i] as number))).toBeLessThan(0.03)
  })
  test('of a point of the curve it is its minute; of ambient nothing; of what is never reached none', () => {
    const { curve, minutesTo } = day()
    for (const i of [1, 4, 12]) expect(minutesTo(curve[i]?.[1] ?? 0)).toBeCloseTo(5 * i, 6)
    expect([minutesTo(AMBIENT), minutesTo(AMBIENT - 5)]).toEqual([0, 0])
    expect(minutesTo(120)).toBeNull()
  })
  test('without any cooling it ends at the 150 °C that can be an answer', () => {
    const bare = { ...wren(), coolingFactor: 0 }
    const { table } = ready(bare)
    expect(warmUp(bare, AMBIENT, table).curve.at(-1)?.[1]).toBe(150)
    expect(oilAfter(bare, AMBIENT, table, 8 * 3600)).toBe(150)
  })
})
