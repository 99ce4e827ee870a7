/** Drop of the filter at the coldest start, before its bypass opens, against the bypass setting. */
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'filter-bypass-cold',
  wording: {
    /** Heading of the filter's row where the bypass stays shut, also cold. */
    within: 'The filter works from the first minute',
    /** Heading where it opens. */
    over: 'The filter is bypassed at the coldest start',
    /** Below the heading. */
    why: 'Cold oil is too thick for the element and goes past it until it has warmed; warm up slowly.',
  },
  judge: ({ machine: { filter }, more }) =>
    !filter || more.filterColdDropBar === null
      ? []
      : [
          atMost(
            {
              component: 'filter',
              value: more.filterColdDropBar,
              limit: barFromPascals(filter.bypass),
              unit: 'bar',
              source: 'bypass as stated; 1.7 bar where nothing is stated (common practice, no source)',
            },
            'watch',
          ),
        ],
}
