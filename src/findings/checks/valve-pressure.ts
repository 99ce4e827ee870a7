/** Relief setting with its override against the pressure that the control valve is rated for. */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'valve-pressure',
  wording: {
    /** Heading of a valve's row while it is rated for the pressure. */
    within: 'The control valve is rated for the pressure',
    /** Heading where it is not. */
    over: 'The control valve is not rated for the pressure',
    /** Below the heading. */
    why: 'Above its rating a valve body can crack, and its spools bind.',
  },
  judge: (input) =>
    circuitsOf(input).flatMap(({ circuit: { valve }, id, more }) =>
      !valve || valve.maxPressure === null
        ? []
        : [
            atMost(
              {
                component: `${id}.valve`,
                value: more.workingPressureBar,
                limit: barFromPascals(valve.maxPressure),
                unit: 'bar',
                source: STATED,
              },
              'change',
            ),
          ],
    ),
}
