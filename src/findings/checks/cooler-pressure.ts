/**
 * Pressure at the cooler's inlet against what its core is rated for: warm at the level point, and at the coldest start,
 * where its own bypass caps the drop of the core and the filter's that of a filter behind it.
 */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'cooler-pressure',
  wording: {
    /** Heading of the cooler's row while its core is rated for the pressure. */
    within: 'The cooler core is rated for the return pressure',
    /** Heading where it is not. */
    over: 'The cooler core is not rated for the return pressure',
    /** Below the heading. */
    why: 'A cooler core is thin; above its rating it splits and sprays hot oil.',
  },
  judge: ({ machine: { cooler, filter }, more }) => {
    if (!cooler || cooler.maxPressure === null || more.coolerPressureBar === null) return []
    const core = Math.min(more.coolerColdDropBar ?? 0, barFromPascals(cooler.bypass))
    const behind = filter ? Math.min(more.filterColdDropBar ?? 0, barFromPascals(filter.bypass)) : 0
    return [
      atMost(
        {
          component: 'cooler',
          value: Math.max(more.coolerPressureBar, core + behind),
          limit: barFromPascals(cooler.maxPressure),
          unit: 'bar',
          source: STATED,
        },
        'change',
      ),
    ]
  },
}
