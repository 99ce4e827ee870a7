/** Energy of motion on the level over that of the machine before the option: it grows with the square of the speed. */
import { motionEnergy } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'kinetic-energy',
  wording: {
    /** Heading of the travel row where stopping stays as it was. */
    within: 'Stopping asks no more of the machine than before',
    /** Heading where it asks for noticeably more. */
    over: 'There is much more to stop than before',
    /** Below the heading. */
    why: 'Twice the speed is four times the energy to stop: longer stopping, more load on brakes, tracks and frame.',
  },
  judge: ({ machine, figures, before }) => {
    const was = before?.figures.travel.level.speedKmh ?? 0
    if (!before || was === 0) return []
    const ratio = (machine.mass / before.machine.mass) * (figures.travel.level.speedKmh / was) ** 2
    return [
      atMost(
        {
          component: 'travel',
          value: ratio,
          limit: motionEnergy.value,
          unit: motionEnergy.unit,
          source: motionEnergy.source,
        },
        'watch',
      ),
    ]
  },
}
