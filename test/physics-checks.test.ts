/**
 * Every published check value of reference/physics-checks.json, worked out with the functions of src and held to the
 * tolerance that stands with it; and the facts of the trade that the tool must give back.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { boreForVelocity } from '../src/formulas/line.ts'
import { motorSpeed } from '../src/formulas/motor.ts'
import { pumpFlow } from '../src/formulas/pump.ts'
import { travelSpeed, wayFromPitchDiameter } from '../src/formulas/traction.ts'
import { MOTOR_DEFAULTS } from '../src/scenario/resolve-motor.ts'
import { REFERENCE_DENSITY } from '../src/scenario/resolve-pump.ts'
import { lineSizes } from '../src/tables/line-sizes.ts'
import {
  cubicMetresPerRevFromCm3,
  cubicMetresPerSecondFromGpm,
  lpmFromCubicMetresPerSecond,
  metresFromInches,
  mmFromMetres,
  mphFromMetresPerSecond,
  pascalsFromBar,
  revsPerSecondFromRpm,
  rpmFromRevsPerSecond,
} from '../src/units/shop-units.ts'
import type { Entry, Expressions } from './reference/entry.ts'
import { fluid } from './reference/expressed/fluid.ts'
import { lines } from './reference/expressed/lines.ts'
import { pumpMotor } from './reference/expressed/pump-motor.ts'
import { travelEngineFilter } from './reference/expressed/travel-engine-filter.ts'
import { units } from './reference/expressed/units.ts'
import { valvesHeat } from './reference/expressed/valves-heat.ts'
import { notExpressed } from './reference/not-expressed.ts'

const entries: readonly Entry[] = JSON.parse(
  readFileSync(new URL('./reference/physics-checks.json', import.meta.url), 'utf8'),
)
const expressed: Expressions = { ...units, ...pumpMotor, ...fluid, ...lines, ...valvesHeat, ...travelEngineFilter }

const allowed = ({ tolerance }: Entry, value: number): number =>
  Math.max(tolerance.abs ?? 0, (tolerance.rel ?? 0) * Math.abs(value))

describe('published check values', () => {
  for (const entry of entries) {
    const expression = expressed[entry.id]
    if (expression === undefined) continue
    test(`${entry.id}: ${entry.source}`, () => {
      const given = (name: string): number => {
        const input = entry.inputs[name]
        if (input === undefined) throw new Error(`${entry.id} has no input ${name}`)
        return input.value
      }
      const results = expression(given)
      for (const [name, { value }] of Object.entries(entry.expected)) {
        const got = results[name]
        expect(got, name).toBeDefined()
        expect(Math.abs((got ?? Number.NaN) - value), `${name}: ${got} for ${value}`).toBeLessThanOrEqual(
          allowed(entry, value) + 1e-12 * Math.abs(value),
        )
      }
    })
  }

  test('each entry is either worked out or listed with its reason, and nothing else is', () => {
    const ids = entries.map(({ id }) => id).sort()
    const ours = [...Object.keys(expressed), ...Object.keys(notExpressed)].sort()
    expect(new Set(ours).size).toBe(ours.length)
    expect(ours).toEqual(ids)
    for (const reason of Object.values(notExpressed)) expect(reason.length).toBeGreaterThan(20)
  })
})

/** Facts of the trade: common practice, no source. */
describe('facts of the trade', () => {
  test('6.8 cm3/rev at 3600 rpm gives 24.5 L/min', () => {
    const flow = pumpFlow(cubicMetresPerRevFromCm3(6.8), revsPerSecondFromRpm(3600), 0, 0, 1, 0, 0.03)
    expect(lpmFromCubicMetresPerSecond(flow)).toBeCloseTo(24.5, 1)
  })

  test('47 rpm on an 11 in sprocket is 1.54 mph, 96 rpm is 3.14 mph', () => {
    const mph = (rpm: number) =>
      mphFromMetresPerSecond(
        travelSpeed(revsPerSecondFromRpm(rpm), 1, wayFromPitchDiameter(metresFromInches(11)), 0, 1),
      )
    expect(mph(47)).toBeCloseTo(1.54, 2)
    expect(mph(96)).toBeCloseTo(3.14, 2)
  })

  test('a lightly loaded 310 cm3/rev motor turns about 47 rpm on 4 US gpm and about 96 rpm on 8', () => {
    const displacement = cubicMetresPerRevFromCm3(310)
    const mu = MOTOR_DEFAULTS.viscosity * REFERENCE_DENSITY
    const rpm = (gpm: number) =>
      rpmFromRevsPerSecond(
        motorSpeed(
          cubicMetresPerSecondFromGpm(gpm),
          displacement,
          MOTOR_DEFAULTS.offset,
          MOTOR_DEFAULTS.leakOverDisplacement * displacement,
          pascalsFromBar(35),
          mu,
          mu,
        ),
      )
    expect(Math.abs(rpm(4) - 47)).toBeLessThan(1.5)
    expect(Math.abs(rpm(8) - 96)).toBeLessThan(1.5)
  })

  test('8 US gpm in the middle of the pressure-line band (15 to 20 ft/s) asks for a 1/2 in bore (-8)', () => {
    const needed = mmFromMetres(boreForVelocity(cubicMetresPerSecondFromGpm(8), 17.5 * 0.3048))
    const chosen = lineSizes.find((size) => size.boreMm >= needed)
    expect(chosen?.dash).toBe(8)
  })
})
