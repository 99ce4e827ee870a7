/** Shaft power with every lever in neutral, all circuits together, against a tenth of what the engine can give. */
import { standbyShare } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'standby-loss',
  wording: {
    /** Heading of the engine's row while standing still costs little. */
    within: 'Little power is lost with the levers at rest',
    /** Heading where much is lost. */
    over: 'Much power is lost with the levers at rest',
    /** Below the heading. */
    why: 'Oil that only circulates takes fuel and makes heat all day, also while nothing moves.',
  },
  judge: (input) => [
    atMost(
      {
        component: 'engine',
        value: circuitsOf(input).reduce((sum, { more }) => sum + more.neutralPowerKw, 0),
        limit: input.more.deratedPowerKw * standbyShare.value,
        unit: 'kW',
        source: `a tenth of the engine's power: ${standbyShare.source}`,
      },
      'watch',
    ),
  ],
}
