/** Each pump's rated pressure against the relief setting with its override. */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'pump-pressure',
  wording: {
    /** Heading of a pump's row while the relief opens below its rating. */
    within: 'The pump is rated for the pressure',
    /** Heading where the relief lets more pressure through than the pump is rated for. */
    over: 'The pump is not rated for the pressure',
    /** Below the heading. */
    why: 'Above its rating a pump loses oil inside, and its body and bearings are overloaded.',
  },
  judge: (input) =>
    circuitsOf(input).flatMap(({ circuit: { pump }, id, more }) =>
      pump.maxPressure === null
        ? []
        : [
            atMost(
              {
                component: `${id}.pump`,
                value: more.workingPressureBar,
                limit: barFromPascals(pump.maxPressure),
                unit: 'bar',
                source: STATED,
              },
              'change',
            ),
          ],
    ),
}
