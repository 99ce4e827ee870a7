/** Flow towards the attachment against the flow for which the drop of its quick couplers is stated. */
import { STATED } from '../../tables/limits.ts'
import { lpmFromCubicMetresPerSecond } from '../../units/shop-units.ts'
import { attachmentCircuit } from '../attachment.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'coupler-flow',
  wording: {
    /** Heading of the couplers' row while they pass the flow. */
    within: 'The quick couplers pass the flow',
    /** Heading where they are small for it. */
    over: 'The quick couplers are small for the flow',
    /** Below the heading. */
    why: 'What a coupler takes grows with the square of the flow: it is lost to the tool and heats the oil.',
  },
  judge: (input) => {
    const works = attachmentCircuit(input)
    const coupler = works?.circuit.auxiliary?.coupler
    if (!input.attachment || !input.more.attachment || !works || !coupler) return []
    return [
      atMost(
        {
          component: `${works.id}.auxiliary.coupler`,
          value: input.more.attachment.flowLpm,
          limit: lpmFromCubicMetresPerSecond(coupler.flow),
          unit: 'L/min',
          source: STATED,
        },
        'watch',
      ),
    ]
  },
}
