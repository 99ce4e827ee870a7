/**
 * Flow through the return filter at its worst against its rated flow: the pumps' flow times the area ratio of the
 * cylinders, because a cylinder that draws in sends back more than it gets.
 */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'filter-flow',
  wording: {
    /** Heading of the filter's row while it passes the return flow. */
    within: 'The filter passes the return flow',
    /** Heading where it does not. */
    over: 'The filter is too small for the return flow',
    /** Below the heading. */
    why: 'A filter that is too small opens its bypass, and the oil goes past it unfiltered without a sign.',
  },
  judge: ({ machine, more }) => {
    const rating = machine.filter?.ratedFlow ?? null
    if (rating === null) return []
    return [
      atMost(
        {
          component: 'filter',
          value: more.returnFlowLpm * machine.cylinderAreaRatio,
          limit: lpmFromCubicMetresPerSecond(rating),
          unit: 'L/min',
          source: STATED,
        },
        'change',
      ),
    ]
  },
}
