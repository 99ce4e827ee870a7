/** What the suctions let in, held against the method: 0.2 bar absolute stay at the inlet of a pump that wants more. */
import { describe, expect, test } from 'vitest'
import { balanceEngine, type EngineState } from '../../src/circuit/balance.ts'
import { inletAt } from '../../src/circuit/figures.ts'
import { intakeLimitsFor } from '../../src/circuit/intake.ts'
import { conditionsAt, preparePlant, STARVED_INLET } from '../../src/circuit/plant.ts'
import type { Circuit, Machine, Strainer } from '../../src/machine.ts'
import { randomCase, seeded } from '../fixtures/random-machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const STRAINER: Strainer = { part: null, ratedFlow: 60 / 6e4, drop: 0.05e5, viscosity: 32e-6 }

/** Long hoses of three bores at random, some shared, some not described, some behind a strainer. */
const thirsty = (seed: number): Machine => {
  const { machine } = randomCase(seed)
  const next = seeded(seed + 77)
  const own = machine.circuits.map((circuit): Circuit => {
    const { suction } = circuit.lines
    if (suction === null || next() < 0.2) return { ...circuit, lines: { ...circuit.lines, suction: null } }
    const bore = [0.0127, 0.0159, 0.0254][Math.floor(next() * 3)] as number
    return { ...circuit, lines: { ...circuit.lines, suction: { ...suction, bore, length: 1 + 2 * next() } } }
  })
  const first = own[0] as Circuit
  const shares = next() < 0.3 && own.length > 1 && first.lines.suction !== null
  const circuits = shares
    ? own.map((c, i) =>
        i === 1 ? { ...c, suctionSharedWith: first.name, lines: { ...c.lines, suction: first.lines.suction } } : c,
      )
    : own
  return { ...machine, circuits, strainer: next() < 0.7 ? STRAINER : null }
}

const tasks = (machine: Machine) =>
  machine.circuits.map(({ drives }) =>
    drives === 'no track'
      ? ({ kind: 'neutral' } as const)
      : ({ kind: 'drive', differential: 40e5, motors: drives === 'both tracks' ? 2 : 1 } as const),
  )

describe('suctions behind one strainer', () => {
  test('a pump that starves has just 0.2 bar absolute at its inlet, one that does not has no less', () => {
    let starvedAlone = 0
    for (let seed = 0; seed < 400; seed++) {
      const machine = thirsty(seed)
      const { site } = randomCase(seed)
      const plant = preparePlant(machine, site)
      for (const oil of [-15, 0, 50]) {
        const at = conditionsAt(plant, oil)
        const state: EngineState = balanceEngine(plant, tasks(machine), at)
        for (const [i, circuit] of state.circuits.entries()) {
          const inlet = inletAt(plant, state, i, at)
          const where = `seed ${seed}, ${oil} degC, circuit ${i}`
          if (circuit.starved && circuit.pumpFlow > 0)
            expect(Math.abs(inlet - STARVED_INLET), where).toBeLessThan(1e-6 * STARVED_INLET)
          else if (circuit.pumpFlow > 0) expect(inlet, where).toBeGreaterThan(STARVED_INLET * (1 - 1e-6))
        }
        const starved = state.circuits.filter((c) => c.starved).length
        if (starved > 0 && starved < state.circuits.length) starvedAlone++
      }
    }
    expect(starvedAlone).toBeGreaterThan(20)
  })

  test('pumps straight on a strainer share what it passes as their displacements, (p_atm - 0.2 bar) / resistance', () => {
    const machine = wren()
    const [main] = machine.circuits as [Circuit]
    const bare = (circuit: Circuit, displacement: number): Circuit => ({
      ...circuit,
      suctionSharedWith: null,
      pump: { ...circuit.pump, displacement },
      lines: { ...circuit.lines, suction: null },
    })
    const plant = preparePlant(
      { ...machine, circuits: [bare(main, 16e-6), bare(main, 8e-6)], strainer: STRAINER },
      { ...wrenSite, altitude: 0 },
    )
    const at = conditionsAt(plant, -6)
    // Laminar: drop = stated drop, by flow and by viscosity.
    const passes = ((101325 - 20000) / 5000) * (60 / 6e4) * (32e-6 / at.nu)
    const [first, second] = intakeLimitsFor(plant, [10 * passes, 10 * passes], at) as [number, number]
    expect(first).toBeCloseTo((2 / 3) * passes, 12)
    expect(second).toBeCloseTo((1 / 3) * passes, 12)
    const [large, small] = intakeLimitsFor(plant, [10 * passes, 0.1 * passes], at) as [number, number]
    expect(large).toBeCloseTo(0.9 * passes, 12)
    expect(small).toBe(Number.POSITIVE_INFINITY)
    expect(intakeLimitsFor(plant, [0.5 * passes, 0.4 * passes], at)).toEqual([
      Number.POSITIVE_INFINITY,
      Number.POSITIVE_INFINITY,
    ])
  })
})
