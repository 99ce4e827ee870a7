/** Current of the cooler's fan against what the alternator has left. Where nobody has measured that, it is said. */
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

const source = 'current that the alternator has left, as stated for this machine'

export const check: Check = {
  id: 'fan-current',
  wording: {
    /** Heading of the alternator's row while it feeds the fan. */
    within: 'The alternator feeds the fan',
    /** Heading where it is too weak, or nobody has measured it. */
    over: 'The alternator may be too weak to feed the fan',
    /** Below the heading. */
    why: 'A fan that draws more than is left runs the battery flat, and then neither fan nor engine starts.',
  },
  judge: ({ machine: { cooler, engine } }) => {
    const current = cooler?.fanCurrent ?? null
    if (current === null) return []
    if (engine.spareCurrent !== null)
      return [
        atMost({ component: 'alternator', value: current, limit: engine.spareCurrent, unit: 'A', source }, 'change'),
      ]
    return [
      {
        component: 'alternator',
        value: current,
        limit: null,
        unit: 'A',
        severity: 'watch',
        source,
        worseWhenHigher: true,
      },
    ]
  },
}
