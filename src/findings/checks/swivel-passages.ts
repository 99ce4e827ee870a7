/**
 * A motor that gets a second displacement needs a shift line, and that line a spare passage of the swivel. Judged only
 * where an option brings the second displacement and there is a swivel.
 */
import type { Check } from '../check.ts'

export const check: Check = {
  id: 'swivel-passages',
  wording: {
    /** Heading of the swivel's row where a passage is free for the shift line. */
    within: 'The swivel has a passage for the shift line',
    /** Heading where none is free, or nobody has counted them. */
    over: 'The swivel has no passage known to be free for the shift line',
    /** Below the heading. */
    why: 'A two-speed motor is shifted by a small pressure line, and on a machine that slews it must pass the swivel.',
  },
  judge: ({ machine, before }) => {
    const { swivel, motor } = machine.travel
    const getsSecond =
      before !== null && motor.secondDisplacement !== null && before.machine.travel.motor.secondDisplacement === null
    if (!swivel || !getsSecond) return []
    const spare = swivel.sparePassages
    return [
      {
        component: 'travel.swivel',
        value: spare ?? 'not read',
        limit: 1,
        unit: '',
        severity: spare === null ? 'watch' : spare < 1 ? 'change' : 'ok',
        source: 'one shift line for both motors',
        worseWhenHigher: false,
      },
    ]
  },
}
