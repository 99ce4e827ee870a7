/**
 * Torque at the relief setting, times the service factor of the engine, against the coupling's rated torque. Sections of
 * one tandem pump hang on one coupling: their torques add up.
 */
import { serviceFactors } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { shaftsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'coupling-torque',
  wording: {
    /** Heading of the coupling's row while it carries the torque and the engine's beat. */
    within: 'The coupling carries the torque',
    /** Heading where it does not. */
    over: 'The coupling is too weak for the torque',
    /** Below the heading. */
    why: 'A small engine drives in beats; a coupling without reserve for them shears, and the machine stops.',
  },
  judge: (input) => {
    const factor = input.machine.engine.cylinders <= 3 ? serviceFactors.upToThreeCylinders : serviceFactors.fourAndMore
    return shaftsOf(input).flatMap((shaft) => {
      const torque = shaft.reduce((sum, { figures }) => sum + figures.shaftTorqueNm, 0)
      return shaft.flatMap(({ circuit, id }) =>
        circuit.coupling === null
          ? []
          : [
              atMost(
                {
                  component: `${id}.coupling`,
                  value: torque * factor.value,
                  limit: circuit.coupling.ratedTorque,
                  unit: 'N·m',
                  source: `rated torque as stated; service factor ${factor.value}, ${factor.source}`,
                },
                'change',
              ),
            ],
      )
    })
  },
}
