/** Drop of the cooler at the coldest start, before its bypass opens, against the bypass setting. */
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'cooler-bypass-cold',
  wording: {
    /** Heading of the cooler's row where the bypass stays shut, also cold. */
    within: 'The cooler passes the oil also at the coldest start',
    /** Heading where it opens. */
    over: 'The cooler is bypassed at the coldest start',
    /** Below the heading. */
    why: 'Its bypass keeps thick oil from bursting the core; it cools only once the oil has warmed, which does no harm.',
  },
  judge: ({ machine: { cooler }, more }) =>
    !cooler || more.coolerColdDropBar === null
      ? []
      : [
          atMost(
            {
              component: 'cooler',
              value: more.coolerColdDropBar,
              limit: barFromPascals(cooler.bypass),
              unit: 'bar',
              source: 'bypass as stated; 4.5 bar where nothing is stated (a service manual)',
            },
            'watch',
          ),
        ],
}
