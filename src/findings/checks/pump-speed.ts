/** Each pump's rated speed against the highest speed that the governor allows with no load. */
import { STATED } from '../../tables/limits.ts'
import { rpmFromRevsPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'pump-speed',
  wording: {
    /** Heading of a pump's row while it stays below its speed. */
    within: 'The pump turns within its limit',
    /** Heading where the engine turns it faster than it is made for. */
    over: 'The engine turns the pump faster than it is made for',
    /** Below the heading. */
    why: 'A pump beyond its speed cannot fill with oil and wears out early.',
  },
  judge: ({ machine, more }) =>
    machine.circuits.flatMap(({ name, pump }) =>
      pump.maxSpeed === null
        ? []
        : [
            atMost(
              {
                component: `circuits.${name}.pump`,
                value: more.highIdleRpm,
                limit: rpmFromRevsPerSecond(pump.maxSpeed),
                unit: 'rpm',
                source: STATED,
              },
              'change',
            ),
          ],
    ),
}
