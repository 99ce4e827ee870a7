/** Travel speed on the level against the maker's published figure; judged where that is known. */
import { overMakersSpeed } from '../../tables/limits.ts'
import { kmhFromMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'maker-speed',
  wording: {
    /** Heading of the travel row up to the maker's figure. */
    within: "It travels no faster than its maker's figure",
    /** Heading above it. */
    over: "It travels faster than its maker's figure",
    /** Below the heading. */
    why: 'Brakes, steering and stability were tried by the maker at that speed and at no higher one.',
  },
  judge: ({ machine, figures }) =>
    machine.designTravelSpeed === null
      ? []
      : [
          atMost(
            {
              component: 'travel',
              value: figures.travel.level.speedKmh,
              limit: kmhFromMetresPerSecond(machine.designTravelSpeed) * overMakersSpeed.value,
              unit: 'km/h',
              source: overMakersSpeed.source,
            },
            'watch',
          ),
        ],
}
