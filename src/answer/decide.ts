/** The answer to one option (method: "The answer"). */
import type { Answer } from '../evaluation.ts'
import { type OptionFacts, speedRaised } from './facts.ts'
import { protectionOf, wrongBefore } from './protecting.ts'
import { reasonsFor } from './reasons.ts'

const TEST_BRAKES =
  'Brakes, holding on the slope and stopping distance are tested at the new speed before it is handed over.'
const WARM_OIL = 'The oil runs warm but within its limits; it lasts longer when it is kept cooler.'
const NOT_NEEDED = 'Oil, inlet and cleanliness are within their limits without it.'
const tooLittle = (wrong: readonly string[]) => `It does too little against what is wrong: ${wrong.join('; ')}.`

/**
 * Answers an option: decline where a declining reason holds, on conditions where a condition does or a travel speed is
 * raised (brakes are tested at the new speed), else recommend. A protecting option must also help.
 */
export const decide = (facts: OptionFacts): Answer => {
  const held = reasonsFor(facts)
  const reasons = held.map(({ code, text }) => ({ code, text }))
  const conditions = held.filter((r) => r.effect === 'conditions').map((r) => r.text)
  const declined = held.some((r) => r.effect === 'decline')
  if (facts.protecting) {
    const protection = protectionOf(facts)
    if (protection === 'does nothing') {
      const wrong = wrongBefore(facts)
      const text = wrong.length === 0 ? NOT_NEEDED : tooLittle(wrong)
      return { answer: 'decline', reasons: [...reasons, { code: 'not-worth-it', text }], conditions }
    }
    if (protection === 'moderate') conditions.push(WARM_OIL)
  } else if (speedRaised(facts)) conditions.push(TEST_BRAKES)
  if (declined) return { answer: 'decline', reasons, conditions }
  return { answer: conditions.length > 0 ? 'conditions' : 'recommend', reasons, conditions }
}
