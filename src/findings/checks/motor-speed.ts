/**
 * Speed of the travel motors at the level point against what they are rated for.
 * Only with one lever over it, where one motor may get more: a watch.
 */
import { STATED } from '../../tables/limits.ts'
import { rpmFromRevsPerSecond } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { isAbove } from '../judging.ts'
import { movingOnLevel } from '../travelling.ts'

export const check: Check = {
  id: 'motor-speed',
  wording: {
    /** Heading of the motors' row within the limit. */
    within: 'The travel motors turn within their limit',
    /** Heading over it: on the level (change) or with one lever only (watch). */
    over: 'The travel motors turn faster than they are rated for',
    /** Below the heading. */
    why: 'A motor beyond its speed heats up, leaks past its seals and wears early.',
  },
  judge: ({ machine, figures }) => {
    const rating = machine.travel.motor.maxSpeed
    if (rating === null) return []
    const limit = rpmFromRevsPerSecond(rating)
    const level = movingOnLevel(figures)?.motorSpeedRpm ?? null
    const oneTrack = figures.travel.oneTrack?.motorSpeedRpm ?? 0
    const onLevel = level !== null && isAbove(level, limit)
    const withOneLever = !onLevel && isAbove(oneTrack, limit)
    const value = withOneLever ? oneTrack : level
    if (value === null) return []
    return [
      {
        component: 'travel.motor',
        value,
        limit,
        unit: 'rpm',
        severity: onLevel ? 'change' : withOneLever ? 'watch' : 'ok',
        source: STATED,
        worseWhenHigher: true,
      },
    ]
  },
}
