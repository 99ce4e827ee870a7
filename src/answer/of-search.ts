/** The answer to a way that was searched for: what the search itself says of it. */
import type { Answer, OptionResult } from '../evaluation.ts'
import type { FoundBySearch } from '../search.ts'

const AS_IT_IS = 'The machine does it as it is; nothing has to change.'
const NOTHING = 'Nothing on our parts list brings it any further within the limits that we check.'

/** What is wanted and not given: "40.9 L/min at 150 bar, where 45.0 L/min is wanted". */
const shortOf = ({ goal, gives }: Pick<FoundBySearch, 'goal' | 'gives'>): readonly string[] => {
  const { travelSpeedKmh: speed, attachment, oilBelowC: oil } = goal
  const flow = gives.attachmentLpm ?? 0
  return [
    ...(speed !== null && gives.speedKmh < speed
      ? [`${gives.speedKmh.toFixed(1)} km/h, where ${speed.toFixed(1)} km/h is wanted`]
      : []),
    ...(attachment !== null && flow < attachment.flowLpm
      ? [
          `${flow.toFixed(1)} L/min at ${attachment.pressureBar.toFixed(0)} bar, where ${attachment.flowLpm.toFixed(1)} L/min is wanted`,
        ]
      : []),
    ...(oil !== null && (gives.oilC ?? Number.POSITIVE_INFINITY) > oil
      ? [
          `oil that ${gives.oilC === null ? 'never settles' : `settles at ${gives.oilC.toFixed(0)} °C`}, where ${oil.toFixed(0)} °C or less is wanted`,
        ]
      : []),
  ]
}

/**
 * The option's own answer where it changes something; where it falls short of what was looked for that is a condition, and never a
 * plain yes. Where it changes nothing it is declined, in the code for what is not worth its price: no reason that is worked out of
 * figures would say more than that they stay as they are, and nobody has to agree to anything.
 */
export const answerOfSearch = (
  { changes, answer }: Pick<OptionResult, 'changes' | 'answer'>,
  found: Pick<FoundBySearch, 'meets' | 'goal' | 'gives'>,
): Answer => {
  if (changes.length === 0)
    return {
      answer: 'decline',
      reasons: [{ code: 'not-worth-it', text: found.meets ? AS_IT_IS : NOTHING }],
      conditions: [],
    }
  const short = found.meets ? [] : shortOf(found)
  if (short.length === 0 || answer.answer === 'decline') return answer
  const condition = `It falls short, and that has to do: it gives ${short.join(', and ')}.`
  return { ...answer, answer: 'conditions', conditions: [condition, ...answer.conditions] }
}
