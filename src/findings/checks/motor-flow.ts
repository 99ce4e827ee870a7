/**
 * Flow of one travel motor at the level point against what it is rated for.
 * Only with one lever over it, where one motor may get more: a watch.
 */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { isAbove } from '../judging.ts'
import { movingOnLevel } from '../travelling.ts'

export const check: Check = {
  id: 'motor-flow',
  wording: {
    /** Heading of the motors' row within the limit. */
    within: 'The travel motors take the flow',
    /** Heading over it: on the level (change) or with one lever only (watch). */
    over: 'The travel motors get more oil than they are rated for',
    /** Below the heading. */
    why: 'Too much oil wears a motor fast and raises the pressure inside its case.',
  },
  judge: ({ machine, figures }) => {
    const rating = machine.travel.motor.maxFlow
    if (rating === null) return []
    const limit = lpmFromCubicMetresPerSecond(rating)
    const level = movingOnLevel(figures)?.motorFlowLpm ?? null
    const oneTrack = figures.travel.oneTrack?.motorFlowLpm ?? 0
    const onLevel = level !== null && isAbove(level, limit)
    const withOneLever = !onLevel && isAbove(oneTrack, limit)
    const value = withOneLever ? oneTrack : level
    if (value === null) return []
    return [
      {
        component: 'travel.motor',
        value,
        limit,
        unit: 'L/min',
        severity: onLevel ? 'change' : withOneLever ? 'watch' : 'ok',
        source: STATED,
        worseWhenHigher: true,
      },
    ]
  },
}
