/**
 * Relief setting against the pressure at the tool plus everything on the way. The pressure worked out at the pump goes up
 * to the relief setting and no further: where it stands there, the tool does not get its pressure with its flow.
 */
import { attachmentCircuit } from '../attachment.ts'
import type { Check } from '../check.ts'
import { isBelow } from '../judging.ts'

export const check: Check = {
  id: 'attachment-pressure',
  wording: {
    /** Heading of the attachment's row where the relief stays shut. */
    within: 'The relief leaves the attachment its pressure',
    /** Heading where it opens under the attachment. */
    over: 'The relief opens before the attachment has its pressure',
    /** Below the heading. */
    why: 'Oil that goes over the relief does no work and heats the tank; the tool stalls where it should bite.',
  },
  judge: (input) => {
    const works = attachmentCircuit(input)
    if (!input.attachment || !works || !input.more.attachment) return []
    const needed = input.more.attachment.pumpPressureBar
    const setting = works.figures.reliefSettingBar
    return [
      {
        component: `${works.id}.relief`,
        value: needed,
        limit: setting,
        unit: 'bar',
        severity: isBelow(needed, setting) ? 'ok' : 'watch',
        source: 'relief setting, as read or stated',
        worseWhenHigher: true,
      },
    ]
  },
}
