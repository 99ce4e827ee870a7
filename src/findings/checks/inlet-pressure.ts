/**
 * Pressure at each pump's inlet, absolute, warm and travelling on the level, against what the pump needs.
 * It is the suction line's finding; of a line that several pumps share, the pump that is worst off counts.
 */
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { judgeInlets } from '../inlets.ts'

export const check: Check = {
  id: 'inlet-pressure',
  wording: {
    /** Heading of a suction line's row while the pump gets its oil. */
    within: 'The pump gets its oil, warm',
    /** Heading where it does not; a watch where thin air alone does it. */
    over: 'The pump is starved of oil',
    /** Below the heading. */
    why: 'A starved pump whines, breaks up the oil into bubbles and wears itself away.',
  },
  judge: (input) =>
    judgeInlets(
      input,
      circuitsOf(input).map((one) => ({ ...one, pressureBar: one.figures.inletPressureBarAbs })),
    ),
}
