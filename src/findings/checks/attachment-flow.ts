/** Flow that really reaches the attachment at its pressure against the flow that it asks for. */
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import { attachmentCircuit } from '../attachment.ts'
import type { Check } from '../check.ts'
import { atLeast } from '../judging.ts'

const source = "the attachment's own figure, as stated"

export const check: Check = {
  id: 'attachment-flow',
  wording: {
    /** Heading of the attachment's row where it gets its oil. */
    within: 'The attachment gets its flow',
    /** Heading where it gets less, or no circuit works it. */
    over: 'The attachment gets less flow than it asks for',
    /** Below the heading. */
    why: 'A tool with too little oil runs slow and stalls; one that is merely slow may still do the job.',
  },
  judge: (input) => {
    const { attachment, more } = input
    if (!attachment) return []
    const held = { limit: lpmFromCubicMetresPerSecond(attachment.flow), unit: 'L/min', source }
    const works = attachmentCircuit(input)
    if (!works || !more.attachment)
      return [{ ...held, component: 'attachment', value: null, severity: 'watch', worseWhenHigher: false }]
    return [atLeast({ ...held, component: works.id, value: more.attachment.toolFlowLpm }, 'watch')]
  },
}
