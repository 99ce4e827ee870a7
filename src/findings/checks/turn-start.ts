/**
 * Pull from standstill at the relief setting against what turning on the spot needs on the ground of the site.
 * A point that stalls at full lever fails as well: the operator would have to feather it.
 */
import type { Check } from '../check.ts'
import { judgeStart } from '../starting.ts'

export const check: Check = {
  id: 'turn-start',
  wording: {
    /** Heading of the travel row where the machine can. */
    within: 'It still turns on the spot',
    /** Heading where it cannot. */
    over: 'It does not turn on the spot at full lever',
    /** Below the heading. */
    why: 'Turning asks for far more pull than driving straight; a machine that runs faster may no longer turn.',
  },
  judge: ({ figures, more }) => {
    const { turnPullN: pull, turnNeededN: needed } = more.start
    const point = figures.travel.turn
    if (pull === null || needed === null || point === null) return []
    return [
      judgeStart({ pull, needed, point, source: 'turning resistance of tracks on the ground of the site, worked out' }),
    ]
  },
}
