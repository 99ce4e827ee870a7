/**
 * Whether the machine has a brake that holds it with the engine off.
 * Missing is a watch on the machine as it stands and stops an option that makes it faster; where nobody has looked,
 * that is said.
 */
import type { Check } from '../check.ts'
import { isFaster } from '../travelling.ts'

export const check: Check = {
  id: 'holding-brake',
  wording: {
    /** Heading of the brakes' row where it is there. */
    within: 'There is a holding brake',
    /** Heading where it is missing or nobody has looked. */
    over: 'There is no holding brake, or nobody has looked',
    /** Below the heading. */
    why: 'Oil leaks past motors at rest; without a brake a parked machine creeps, and a faster one rolls further.',
  },
  countsWhenFaster: true,
  judge: (input) => {
    const fitted = input.machine.brakes.holding
    return [
      {
        component: 'brakes',
        value: fitted === null ? 'not read' : fitted ? 'fitted' : 'none',
        limit: 'fitted',
        unit: '',
        severity: fitted ? 'ok' : fitted === false && isFaster(input) ? 'stop' : 'watch',
        source: 'ISO 10265 and ISO 3450 ask for a parking brake (scopes of both)',
        worseWhenHigher: null,
      },
    ]
  },
}
