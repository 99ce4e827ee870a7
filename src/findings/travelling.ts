/** Travel as checks look at it: where the machine moves on the level, and whether an option makes it faster. */
import type { Point } from '../evaluation.ts'
import { noticeable } from '../tables/limits.ts'
import type { CheckInput, Figures } from './check.ts'
import { isAbove } from './judging.ts'

/** The level point, or the slow one where the level stalls; null where the machine does not move. */
export const movingOnLevel = ({ travel }: Figures): Point | null => {
  if (!travel.level.stalled) return travel.level
  return travel.levelSlow && !travel.levelSlow.stalled ? travel.levelSlow : null
}

/** More than before by more than a noticeable share; any movement is more than none. */
const isRaised = (now: Point | null, before: Point | null): boolean =>
  now !== null && before !== null && isAbove(now.speedKmh, before.speedKmh * (1 + noticeable.value))

/** Whether the option raises a travel speed: level, grade or turn at 50 °C. False where there is no machine before. */
export const isFaster = ({ figures, before }: CheckInput): boolean =>
  before !== null &&
  (['level', 'grade', 'turn'] as const).some((name) => isRaised(figures.travel[name], before.figures.travel[name]))
