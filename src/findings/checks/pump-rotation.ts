/**
 * Direction of a new pump against the one that it replaces. A pump for both fits anything; where the old one was for both,
 * nobody knows which way the engine turns, and that is said. Unknown directions are not judged.
 */
import type { Check } from '../check.ts'
import { changedPumps } from '../circuits.ts'

type Rotation = 'clockwise' | 'counterclockwise' | 'both'

const severityOf = (now: Rotation, there: Rotation) => {
  if (now === 'both' || now === there) return 'ok'
  return there === 'both' ? 'watch' : 'change'
}

export const check: Check = {
  id: 'pump-rotation',
  wording: {
    /** Heading of a new pump's row where it turns the right way. */
    within: 'The new pump turns the right way',
    /** Heading where it turns the other way, or where the engine's direction must be looked at first. */
    over: 'The new pump may turn the wrong way for this engine',
    /** Below the heading. */
    why: 'A pump driven the wrong way blows its shaft seal within seconds.',
  },
  judge: (input) =>
    changedPumps(input).flatMap(({ circuit, before, id }) => {
      const now = circuit.pump.mount.rotation
      const there = before.pump.mount.rotation
      if (now === null || there === null) return []
      return [
        {
          component: `${id}.pump.mount`,
          value: now,
          limit: there,
          unit: '',
          severity: severityOf(now, there),
          source: 'the pump that it replaces',
          worseWhenHigher: null,
        },
      ]
    }),
}
