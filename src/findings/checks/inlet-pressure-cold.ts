/**
 * Pressure at each pump's inlet, absolute, at the coldest start, against what the pump needs.
 * It is the suction line's finding; of a line that several pumps share, the pump that is worst off counts.
 */
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { judgeInlets } from '../inlets.ts'

export const check: Check = {
  id: 'inlet-pressure-cold',
  wording: {
    /** Heading of a suction line's row while the pump gets its oil. */
    within: 'The pump gets its oil at the coldest start',
    /** Heading where it does not; a watch where thin air alone does it. */
    over: 'The pump is starved of oil at the coldest start',
    /** Below the heading. */
    why: 'Cold oil is thick; a pump that cannot draw it runs dry in its first minutes, every cold morning. Warm up slowly without load.',
  },
  judge: (input) =>
    judgeInlets(
      input,
      circuitsOf(input).map((one) => ({ ...one, pressureBar: one.more.coldInletBarAbs })),
    ),
}
