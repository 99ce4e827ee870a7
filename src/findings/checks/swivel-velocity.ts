/** Velocity of one motor's oil in a passage of the centre swivel at the level point, against the guide value of work lines. */
import { velocityLimits } from '../../tables/velocity-limits.ts'
import { cubicMetresPerSecondFromLpm } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { isAbove } from '../judging.ts'
import { movingOnLevel } from '../travelling.ts'

const limit = velocityLimits.work

export const check: Check = {
  id: 'swivel-velocity',
  wording: {
    /** Heading of the swivel's row while its passages are wide enough. */
    within: 'The swivel passages are wide enough',
    /** Heading where they are small (watch) or too small (change). */
    over: 'The swivel passages are small for the flow',
    /** Below the heading. */
    why: 'All the oil for the tracks goes through the swivel; its narrowest drilling sets what arrives and how hot it gets.',
  },
  judge: ({ machine, figures }) => {
    const bore = machine.travel.swivel?.bore ?? null
    const point = movingOnLevel(figures)
    if (bore === null || point === null) return []
    const velocity = cubicMetresPerSecondFromLpm(point.motorFlowLpm) / ((Math.PI / 4) * bore ** 2)
    const severity = isAbove(velocity, limit.change) ? 'change' : isAbove(velocity, limit.guide) ? 'watch' : 'ok'
    return [
      {
        component: 'travel.swivel',
        value: velocity,
        limit: limit.guide,
        unit: 'm/s',
        severity,
        source: limit.source,
        worseWhenHigher: true,
      },
    ]
  },
}
