/**
 * Mean velocity of the oil in each line at the level point, and in the auxiliary lines under the attachment, against the
 * guide value of such a line. A suction line is too small only where its pump is short of oil as well, or the velocity
 * is far above the guide value.
 */
import type { Severity } from '../../evaluation.ts'
import type { LineRole } from '../../tables/velocity-limits.ts'
import { lineRole, velocityLimits } from '../../tables/velocity-limits.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { isStarved } from '../inlets.ts'
import { isAbove } from '../judging.ts'

const severityOf = (velocity: number, role: LineRole, starved: boolean): Severity => {
  const limit = velocityLimits[role]
  if (!isAbove(velocity, limit.guide)) return 'ok'
  const tooSmall = isAbove(velocity, limit.change) && (role !== 'suction' || starved)
  const always = limit.always !== null && isAbove(velocity, limit.always)
  return tooSmall || always ? 'change' : 'watch'
}

export const check: Check = {
  id: 'line-velocity',
  wording: {
    /** Heading of a line's row inside its guide velocity; listed, not highlighted. */
    within: 'Oil speed in this line is in the usual range',
    /** Heading where it is faster than the guide value (watch) or the line is too small (change). */
    over: 'This line is small for the flow',
    /** Below the heading. */
    why: 'Oil that runs too fast heats up, wears hoses and ends, and takes pressure that the tracks should have.',
  },
  judge: (input) => {
    const circuits = circuitsOf(input)
    return [...input.figures.lines, ...(input.more.attachment?.auxiliaryLines ?? [])].map(({ id, velocityMps }) => {
      const role = lineRole(id)
      return {
        component: id,
        value: velocityMps,
        limit: velocityLimits[role].guide,
        unit: 'm/s',
        severity: severityOf(velocityMps, role, role === 'suction' && isStarved(circuits, id)),
        source: velocityLimits[role].source,
        worseWhenHigher: true,
      }
    })
  },
}
