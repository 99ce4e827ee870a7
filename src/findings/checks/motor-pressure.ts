/** Relief setting of the circuits that drive, with override, against the pressure that the travel motors are rated for. */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { drivingPressureBar } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'motor-pressure',
  wording: {
    /** Heading of the motors' row while they are rated for the pressure. */
    within: 'The travel motors are rated for the pressure',
    /** Heading where they are not. */
    over: 'The travel motors are not rated for the pressure',
    /** Below the heading. */
    why: 'Every turn on the spot goes up to this pressure; above the rating shafts and seals suffer.',
  },
  judge: (input) => {
    const rating = input.machine.travel.motor.maxPressure
    const bar = drivingPressureBar(input)
    if (rating === null || bar === null) return []
    return [
      atMost(
        { component: 'travel.motor', value: bar, limit: barFromPascals(rating), unit: 'bar', source: STATED },
        'change',
      ),
    ]
  },
}
