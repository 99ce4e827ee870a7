/** The powers of the flow and the component by component account are the same way. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { conditionsAt, preparePlant } from '../../src/circuit/plant.ts'
import { drivingWay, dropAlong, flowAgainst, flowUnder, neutralWay } from '../../src/circuit/solved-way.ts'
import { dropOfLine, dropOfRestriction, dropToMotor } from '../../src/circuit/way.ts'
import type { Circuit } from '../../src/machine.ts'
import { randomCase } from '../fixtures/random-machine.ts'

const flows = fc.double({ min: 1e-6, max: 1.5e-3, noNaN: true })
const seeds = fc.integer({ min: 0, max: 500 })
const oils = fc.double({ min: -10, max: 110, noNaN: true })

const at = (seed: number, oil: number) => {
  const { machine, site } = randomCase(seed)
  const circuit = machine.circuits[0] as Circuit
  return { machine, circuit, conditions: conditionsAt(preparePlant(machine, site), oil) }
}

describe('ways as powers of the flow', () => {
  test('drop as the components drop', () => {
    fc.assert(
      fc.property(seeds, oils, flows, (seed, oil, flow) => {
        const { machine, circuit, conditions } = at(seed, oil)
        const motors = 2
        const byParts =
          dropOfLine(circuit.lines.pressure, flow, conditions) +
          dropOfRestriction(circuit.valve?.restriction, flow, conditions) +
          dropOfRestriction(machine.travel.motor.block, flow / motors, conditions) +
          2 * dropToMotor(machine, flow / motors, conditions)
        const along = dropAlong(drivingWay(machine, circuit, motors, conditions), flow)
        expect(Math.abs(along - byParts)).toBeLessThan(1e-12 * byParts)
      }),
    )
  })

  test('flowAgainst solves Q + k (base + D(Q)) = most, flowUnder D(Q) = p', () => {
    fc.assert(
      fc.property(
        seeds,
        oils,
        flows,
        fc.double({ min: 0, max: 1e-11, noNaN: true }),
        (seed, oil, most, perPressure) => {
          const { circuit, conditions } = at(seed, oil)
          const way = neutralWay(circuit, conditions)
          const flow = flowAgainst(way, most, perPressure, 2e5)
          const left = flow + perPressure * (2e5 + dropAlong(way, flow)) - most
          if (flow > 0) expect(Math.abs(left)).toBeLessThan(1e-13 * most)
          else expect(perPressure * 2e5).toBeGreaterThanOrEqual(most)
          const pressure = 0.4 * dropAlong(way, most)
          const pushed = flowUnder(way, pressure, most)
          expect(Math.abs(dropAlong(way, pushed) - pressure)).toBeLessThan(1e-11 * pressure)
        },
      ),
    )
  })
})
