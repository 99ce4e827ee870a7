/** Level speed of a crawler against the end of its braking standard. Wheeled machines have another standard at any speed. */
import { crawlerBraking } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'braking-class',
  wording: {
    /** Heading of the travel row inside the crawlers' braking standard. */
    within: 'It stays in the braking class of crawlers',
    /** Heading above it. */
    over: 'It leaves the braking class of crawlers',
    /** Below the heading. */
    why: 'Above this speed another braking standard holds, which the machine was not built to.',
  },
  countsWhenFaster: true,
  judge: ({ machine, figures }) =>
    machine.travel.running === 'tracks'
      ? [
          atMost(
            {
              component: 'travel',
              value: figures.travel.level.speedKmh,
              limit: crawlerBraking.value,
              unit: crawlerBraking.unit,
              source: crawlerBraking.source,
            },
            'watch',
          ),
        ]
      : [],
}
