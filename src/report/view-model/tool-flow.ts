/** What reaches the attachment. */
import type { Evaluation, ResultDocument } from '../../evaluation.ts'
import { findingOf } from './subject.ts'

/**
 * As it was evaluated; where the scenario names no attachment, as a search for one found it.
 * @param evaluation of the machine as it is, or of an option
 * @returns flow [L/min]; null where nobody worked it out
 */
export const toolFlow = ({ baseline, options }: ResultDocument, evaluation: Evaluation): number | null => {
  const value = findingOf(evaluation, 'attachment-flow')?.value
  if (typeof value === 'number') return value
  const searched = options.filter(({ found }) => found?.measure === 'attachment-flow')
  if (evaluation === baseline) return searched[0]?.found?.reachedToday ?? null
  return searched.find((option) => option.evaluation === evaluation)?.found?.reached ?? null
}
