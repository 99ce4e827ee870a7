/** Held against the drop of every cooler at many flows (circuit/way.ts: the square of the flow, up to the bypass). */
import { expect, test } from 'vitest'
import { conditionsAt, preparePlant } from '../../src/circuit/plant.ts'
import { dropOfCooler } from '../../src/circuit/way.ts'
import { coolerHeat } from '../../src/formulas/thermal.ts'
import type { Cooler } from '../../src/machine.ts'
import { gentlest, strongest } from '../../src/reach/gentle-coolers.ts'
import { begin } from '../../src/start.ts'
import { BASES, type Base, loadedWith } from './random-lists.ts'

const NO_LIST = { parts: [], orders: [], more: 1, budget: 0, kit: null, withoutHours: null }
const loaded = loadedWith(BASES[0] as Base, NO_LIST)
const { machine } = begin(loaded).start.before
const at = conditionsAt(preparePlant(machine, loaded.scenario.site), 50)

const core = (lpm: number, dropBar: number | null, bypassBar: number, capacity: number, airRise: number): Cooler => ({
  part: null,
  capacity,
  atFlow: lpm / 60_000,
  drop: dropBar === null ? null : dropBar * 1e5,
  maxPressure: null,
  bypass: bypassBar * 1e5,
  airRise,
  fanCurrent: null,
})
const STATED = [core(30, 0.4, 4.5, 45, 0), core(60, 0.7, 1.5, 130, 5), core(20, 1, 6, 30, 2)]
const FLOWS = [1, 10, 20, 33, 50, 80, 150].map((lpm) => lpm / 60_000)

test.each([[STATED], [[...STATED, core(25, null, 3, 40, 0)]], [STATED.slice(1, 2)]])(
  'no cooler holds back less, and none cools better',
  (coolers) => {
    const [gentle, strong] = [gentlest(coolers), strongest(coolers)]
    const drop = (cooler: Cooler | null, flow: number) => dropOfCooler({ ...machine, cooler }, flow, at)
    const heat = ({ capacity, atFlow, airRise }: Cooler, flow: number) =>
      coolerHeat(capacity, flow, atFlow, 70, 25, airRise)
    for (const flow of FLOWS) {
      const least = Math.min(...coolers.map((cooler) => drop(cooler, flow)))
      expect(drop(gentle, flow)).toBeLessThanOrEqual(least * (1 + 1e-9))
      expect(drop(strong, flow)).toBeLessThanOrEqual(least * (1 + 1e-9))
      const most = Math.max(...coolers.map((cooler) => heat(cooler, flow)))
      expect(strong === null ? 0 : heat(strong, flow)).toBeGreaterThanOrEqual(most * (1 - 1e-9))
    }
    // It is one of them where there is only one.
    if (coolers.length === 1)
      for (const flow of FLOWS) expect(drop(gentle, flow)).toBeCloseTo(drop(coolers[0] ?? null, flow), 6)
  },
)

test('of none there is none', () => {
  expect(gentlest([])).toBeNull()
  expect(strongest([])).toBeNull()
})
