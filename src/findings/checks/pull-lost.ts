/**
 * Pull up the grade at the relief setting against that of the machine before the option. A noticeable loss is watched;
 * one that leaves less than the steepest grade needs stops the option.
 */
import { noticeable } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { isBelow } from '../judging.ts'

export const check: Check = {
  id: 'pull-lost',
  wording: {
    /** Heading of the travel row where the pull stays. */
    within: 'It pulls as hard as before',
    /** Heading where it pulls less. */
    over: 'It pulls less than before',
    /** Below the heading. */
    why: 'Speed that is bought with smaller motors or bigger sprockets is paid for with pull, uphill and in turns.',
  },
  judge: ({ figures, before }) => {
    if (!before) return []
    const pull = figures.travel.grade.tractiveForceN
    const needed = figures.travel.grade.neededForceN
    const was = before.figures.travel.grade.tractiveForceN
    const lost = isBelow(pull, was * (1 - noticeable.value))
    const short = isBelow(pull, needed) && (lost || !isBelow(was, needed))
    return [
      {
        component: 'travel',
        value: pull,
        limit: short ? needed : was,
        unit: 'N',
        severity: short ? 'stop' : lost ? 'watch' : 'ok',
        source: short ? 'what the steepest grade of the site needs, worked out' : 'the machine before the change',
        worseWhenHigher: false,
      },
    ]
  },
}
