/**
 * Pull from standstill at the relief setting against what the steepest grade of the site needs.
 * A point that stalls at full lever fails as well: the operator would have to feather it.
 */
import type { Check } from '../check.ts'
import { judgeStart } from '../starting.ts'

export const check: Check = {
  id: 'grade-start',
  wording: {
    /** Heading of the travel row where the machine can. */
    within: 'It still starts up the steepest grade',
    /** Heading where it cannot. */
    over: 'It does not get up the steepest grade at full lever',
    /** Below the heading. */
    why: 'A machine that stops on a slope and cannot start again is stuck there, or rolls back.',
  },
  judge: ({ figures, more }) => {
    const { gradePullN: pull, gradeNeededN: needed } = more.start
    const point = figures.travel.grade
    return [judgeStart({ pull, needed, point, source: 'weight, rolling resistance and grade of the site, worked out' })]
  },
}
