/** Viscosity of the oil at the coldest start of the site. */
import { thickOil } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'oil-viscosity-cold',
  wording: {
    /** Heading of the oil's row while it flows at the coldest start. */
    within: 'The oil flows at the coldest start',
    /** Heading where it is too thick. */
    over: 'The oil is too thick at the coldest start',
    /** Below the heading. */
    why: 'Oil that does not flow starves the pump and loads cooler and filter; a thinner grade or a slow warm-up helps.',
  },
  judge: ({ more }) => [
    atMost(
      {
        component: 'fluid',
        value: more.coldViscosityCst,
        limit: thickOil.value,
        unit: thickOil.unit,
        source: thickOil.source,
      },
      'watch',
    ),
  ],
}
