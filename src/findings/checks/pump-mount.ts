/** Flange of a new pump against the flange of the one that it replaces. Unknown flanges are not judged. */
import type { Check } from '../check.ts'
import { changedPumps } from '../circuits.ts'
import { sameText } from '../judging.ts'

export const check: Check = {
  id: 'pump-mount',
  wording: {
    /** Heading of a new pump's row where it fits. */
    within: 'The new pump bolts on',
    /** Heading where it does not. */
    over: 'The new pump has another flange',
    /** Below the heading. */
    why: 'Another flange needs an adapter plate or another pump; a pump that does not sit true breaks its shaft.',
  },
  judge: (input) =>
    changedPumps(input).flatMap(({ circuit, before, id }) => {
      const now = circuit.pump.mount.flange
      const there = before.pump.mount.flange
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
