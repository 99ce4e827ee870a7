/** Pressure behind the travel motors at the level point against what their shaft seals are rated for. */
import { STATED } from '../../tables/limits.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'
import { movingOnLevel } from '../travelling.ts'

export const check: Check = {
  id: 'motor-return-pressure',
  wording: {
    /** Heading of the motors' row while the oil leaves them freely. */
    within: 'The oil leaves the travel motors freely',
    /** Heading where it backs up. */
    over: 'Pressure backs up behind the travel motors',
    /** Below the heading. */
    why: 'What backs up in the return presses on the shaft seals; they blow and the motor loses its oil.',
  },
  judge: ({ machine, figures }) => {
    const rating = machine.travel.motor.maxReturnPressure
    const point = movingOnLevel(figures)
    if (rating === null || point === null) return []
    return [
      atMost(
        {
          component: 'travel.motor',
          value: point.motorReturnBar,
          limit: barFromPascals(rating),
          unit: 'bar',
          source: STATED,
        },
        'change',
      ),
    ]
  },
}
