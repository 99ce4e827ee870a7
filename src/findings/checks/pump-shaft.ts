/** Shaft end of a new pump against the one that it replaces. Unknown shafts are not judged. */
import type { Check } from '../check.ts'
import { changedPumps } from '../circuits.ts'
import { sameText } from '../judging.ts'

export const check: Check = {
  id: 'pump-shaft',
  wording: {
    /** Heading of a new pump's row where it fits. */
    within: 'The new pump has the same shaft end',
    /** Heading where it does not. */
    over: 'The new pump has another shaft end',
    /** Below the heading. */
    why: 'Another shaft end needs another coupling hub; shafts that look alike can differ by a tooth.',
  },
  judge: (input) =>
    changedPumps(input).flatMap(({ circuit, before, id }) => {
      const now = circuit.pump.mount.shaft
      const there = before.pump.mount.shaft
      if (now === null || there === null) return []
      return [
        {
          component: `${id}.pump.mount`,
          value: now,
          limit: there,
          unit: '',
          severity: sameText(now, there) ? 'ok' : 'change',
          source: 'the pump that it replaces',
          worseWhenHigher: null,
        },
      ]
    }),
}
