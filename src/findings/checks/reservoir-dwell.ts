/** Time that the oil rests in the reservoir at the level point: its volume over the return flow. */
import { dwell } from '../../tables/limits.ts'
import { cubicMetresPerSecondFromLpm } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atLeast } from '../judging.ts'

export const check: Check = {
  id: 'reservoir-dwell',
  wording: {
    /** Heading of the reservoir's row while the oil rests long enough. */
    within: 'The oil rests long enough in the reservoir',
    /** Heading where it goes round faster. */
    over: 'The oil goes round faster than it can rest',
    /** Below the heading. */
    why: 'Oil that does not rest keeps its air and its dirt: it foams, heats faster and makes the pump noisy.',
  },
  judge: ({ machine, more }) =>
    more.returnFlowLpm > 0
      ? [
          atLeast(
            {
              component: 'reservoir',
              value: machine.reservoir.volume / cubicMetresPerSecondFromLpm(more.returnFlowLpm),
              limit: dwell.value,
              unit: dwell.unit,
              source: dwell.source,
            },
            'watch',
          ),
        ]
      : [],
}
