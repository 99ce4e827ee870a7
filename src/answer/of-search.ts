/** The answer to a way that was searched for and that changes nothing: there is nothing to judge but the search itself. */
import type { Answer, OptionResult } from '../evaluation.ts'
import type { FoundBySearch } from '../search.ts'

const AS_IT_IS = 'The machine does it as it is; nothing has to change.'
const NOTHING = 'Nothing on our parts list brings it any further within the limits that we check.'

/**
 * The option's own answer where it changes something. Else it is declined, in the code for what is not worth its price: no
 * reason that is worked out of figures would say more than that they stay as they are, and nobody has to agree to anything.
 */
export const answerOfSearch = (
  { changes, answer }: Pick<OptionResult, 'changes' | 'answer'>,
  { meets }: Pick<FoundBySearch, 'meets'>,
): Answer =>
  changes.length > 0
    ? answer
    : { answer: 'decline', reasons: [{ code: 'not-worth-it', text: meets ? AS_IT_IS : NOTHING }], conditions: [] }
