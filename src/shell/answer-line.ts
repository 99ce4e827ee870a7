/** One sentence an answer, as the terminal shows it. */
import type { ResultDocument } from '../evaluation.ts'
import { plain } from './plain-text.ts'

export const answerLine = ({ scenario, recommendation }: ResultDocument): string => {
  const { kind, option, offerInstead, provisional } = recommendation
  const words: { readonly [k in typeof kind]: string } = {
    restore: 'restore it first',
    protect: 'protect the oil',
    upgrade: 'do it',
    'upgrade-on-conditions': 'do it, on conditions',
    decline: 'decline',
    'measure-first': 'measure first',
  }
  // What is to be restored is no option; one that is named goes beside it.
  const which = option === null ? '' : kind === 'restore' ? `, and beside it ${option}` : `: ${option}`
  const instead = offerInstead === null || offerInstead === option ? '' : `; beside it: ${offerInstead}`
  const more = provisional ? ' (provisional)' : ''
  return plain(`${scenario.title} (${scenario.customer}): ${words[kind]}${which}${instead}${more}`)
}
