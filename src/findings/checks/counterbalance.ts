/**
 * Whether a counterbalance valve holds the machine back downhill; judged where the site is steeper than 15 %.
 * Missing is a watch on the machine as it stands and stops an option that makes it faster; where nobody has looked,
 * that is said.
 */
import { holdBackGrade } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { isAbove } from '../judging.ts'
import { isFaster } from '../travelling.ts'

export const check: Check = {
  id: 'counterbalance',
  wording: {
    /** Heading of the brakes' row where it is there. */
    within: 'A counterbalance valve holds it back downhill',
    /** Heading where it is missing or nobody has looked. */
    over: 'No counterbalance valve holds it back downhill, or nobody has looked',
    /** Below the heading. */
    why: 'Downhill the load drives the motors; without a counterbalance valve the machine can run away, faster the faster it is.',
  },
  countsWhenFaster: true,
  judge: (input) => {
    if (!isAbove(input.site.steepestGrade, holdBackGrade.value)) return []
    const fitted = input.machine.brakes.counterbalance
    return [
      {
        component: 'brakes',
        value: fitted === null ? 'not read' : fitted ? 'fitted' : 'none',
        limit: 'fitted',
        unit: '',
        severity: fitted ? 'ok' : fitted === false && isFaster(input) ? 'stop' : 'watch',
        source: holdBackGrade.source,
        worseWhenHigher: null,
      },
    ]
  },
}
