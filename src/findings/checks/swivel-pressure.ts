/** Relief setting of the circuits that drive, with override, against the pressure that the centre swivel is rated for. */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { drivingPressureBar } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'swivel-pressure',
  wording: {
    /** Heading of the swivel's row while it is rated for the pressure. */
    within: 'The swivel is rated for the pressure',
    /** Heading where it is not. */
    over: 'The swivel is not rated for the pressure',
    /** Below the heading. */
    why: 'Seals between the passages give way first, and the machine then creeps, pulls to one side or leaks.',
  },
  judge: (input) => {
    const rating = input.machine.travel.swivel?.maxPressure ?? null
    const bar = drivingPressureBar(input)
    if (rating === null || bar === null) return []
    return [
      atMost(
        { component: 'travel.swivel', value: bar, limit: barFromPascals(rating), unit: 'bar', source: STATED },
        'change',
      ),
    ]
  },
}
