/** What the customer's copy says of a way that was searched for: what it is, why nothing cheaper does it, what it hangs on. */
import type { OptionResult } from '../../evaluation.ts'
import type { FoundBySearch } from '../../search.ts'
import { retold, type Units } from '../format.ts'
import { roundMoney } from '../prices.ts'
import {
  briefChanges,
  givesSaid,
  goalText,
  missesText,
  movesNothing,
  moveText,
  plainCount,
  priceSaid,
  reachedText,
  spanText,
  wantsSeveral,
} from '../search-texts.ts'
import { reach as words } from '../wording-reach.ts'

/** An option whose changes were searched for, with how they were found. */
export interface Searched {
  readonly option: OptionResult
  readonly found: FoundBySearch
}

type Cheap = (amount: number) => string

/** Of one wish: the best of what costs less. */
const below = ({ found }: Searched, cheap: Cheap, units: Units): readonly string[] => {
  const { curve, unpriced, measure } = found
  const price = found.price ?? 0
  const best = curve.filter((step) => step.price < price && step.changes.length > 0 && step.reached !== null).at(-1)
  if (best === undefined) return [words.customer.belowNothing]
  const say = unpriced === null ? words.customer.below : words.customer.belowKnown
  return [say(words.best[measure](reachedText(best.reached, found, units)), cheap(best.price), briefChanges(best))]
}

/** Of several wishes: what costs less, and which of them it misses. */
const belowSeveral = ({ found }: Searched, cheap: Cheap, units: Units): readonly string[] => {
  const { cheaper, unpriced, goal } = found
  return [
    unpriced === null ? words.customer.belowSeveral : words.customer.belowSeveralKnown,
    ...(cheaper === null
      ? []
      : [
          words.customer.cheaper(
            briefChanges(cheaper),
            cheap(cheaper.price),
            missesText(cheaper.gives, cheaper.misses, goal, units),
          ),
        ]),
  ]
}

/** Why it is the cheapest: what costs less falls short, and what the next would cost. */
const reasons = (searched: Searched, units: Units): readonly string[] => {
  const { option, found } = searched
  const { next, unpriced, goal } = found
  const cheap: Cheap = (amount) => words.about(roundMoney(amount, option.cost.currency))
  return [
    (wantsSeveral(goal) ? belowSeveral : below)(searched, cheap, units).join(' '),
    ...(unpriced === null
      ? []
      : [words.customer.unpriced(cheap(unpriced.price), briefChanges(unpriced), unpriced.items)]),
    ...(next === null
      ? []
      : [words.customer.next(cheap(next.price), givesSaid(next.gives, goal, units), briefChanges(next))]),
  ]
}

/** What the answer hangs on most. */
const movedBy = ({ found }: Searched, units: Units): readonly string[] => {
  const { moves, meets } = found
  const workedOut = moves.filter(
    (one) => one.reachedLow !== null && one.reachedHigh !== null && !(one.holds && movesNothing(one, found)),
  )
  if (workedOut.length === 0) return []
  const texts = workedOut.map((one) =>
    (meets && !one.holds ? words.customer.moveBreaks : words.customer.move)(moveText(one), spanText(one, found, units)),
  )
  return [words.customer.moves(texts)]
}

/** What would have to be true, and of which way. */
const takes = ({ found: { wouldTake, pastLimits, goal } }: Searched, units: Units): readonly string[] => {
  const what = wouldTake.map((text) => retold(text, units))
  if (what.length === 0) return []
  return pastLimits === null
    ? [words.customer.wouldTake(what)]
    : [words.customer.pastLimits(briefChanges(pastLimits), givesSaid(pastLimits.gives, goal, units), what)]
}

/** What is to be known of a price, behind the sentence that tells it. */
const withTerms = (sentence: string, { cost, consequences }: OptionResult): string =>
  [
    sentence,
    ...(consequences.some(({ specialOrder }) => specialOrder) ? [words.customer.ordered] : []),
    ...(cost.unpriced.length === 0 ? [] : [words.customer.noPrice(cost.unpriced)]),
  ].join(' ')

/** @returns each a paragraph */
export const foundSentences = (searched: Searched, units: Units): readonly string[] => {
  const { option, found } = searched
  const { goal, counts, isExact, meets } = found
  const [wanted, tried, gives] = [
    goalText(goal, units),
    plainCount(counts.combinations),
    givesSaid(found.gives, goal, units),
  ]
  if (meets && option.changes.length === 0) return [words.customer.already(wanted)]
  const price = priceSaid(option.cost)
  if (meets)
    return [
      counts.combinations === 1
        ? words.customer.only(wanted)
        : words.customer[isExact ? 'found' : 'foundSoFar'](tried, wanted),
      withTerms(words.customer.isFound(briefChanges(option), price, gives), option),
      ...reasons(searched, units),
      ...movedBy(searched, units),
    ]
  return [
    words.customer[isExact ? 'none' : 'noneSoFar'](tried, wanted),
    option.changes.length === 0
      ? words.customer.noNearest
      : withTerms(
          words.customer[found.nearestIsExact ? 'nearest' : 'nearestSoFar'](gives, price, briefChanges(option)),
          option,
        ),
    ...takes(searched, units),
  ]
}
