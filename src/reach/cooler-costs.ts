/**
 * What a cooler costs at least, chosen or brought by a consequence. A new one brings its bypass, switch and wiring, and what of that
 * the list lacks has no price. So have its hoses where no return line says what they are; else they hang on those that are there in
 * the end, and are left out.
 */
import { coolerBrings, returnLine } from '../consequences/companions.ts'
import type { Part } from '../shop.ts'
import type { Question } from './assess.ts'
import { addUp, leastOf, type Prices, type Sum } from './sums.ts'

/** @param part null: one to order */
const withCompanions = ({ start, places, loaded: { shop } }: Question, part: Part | null, prices: Prices): Sum => {
  const { machine } = start.before
  const mayReturn = returnLine(machine) !== null || places.some(({ options }) => options.some((one) => one.newCircuit))
  const brought = coolerBrings(part?.id ?? null, machine, shop, new Set(), machine.cooler === null, [], [])
  const small = brought.uses.flatMap(({ component, kind, part: id, quantity }) => {
    // Of one to order nobody knows whether it has a fan.
    if (component === 'cooler' ? mayReturn : part === null) return []
    const found = shop.parts.find((one) => one.id === id)
    return [found === undefined ? prices.unlisted(kind, quantity) : prices.part(found, quantity)]
  })
  return addUp([
    part === null ? prices.order('cooler', 1) : prices.part(part, 1),
    prices.job('fit cooler', 1),
    ...small,
  ])
}

export const coolerCost = (question: Question, part: Part, prices: Prices): Sum =>
  withCompanions(question, part, prices)

/** The cheapest of the list, or one to order. */
export const anyCoolerCost = (question: Question, prices: Prices): Sum => {
  const parts = question.loaded.shop.parts.filter(({ kind }) => kind === 'cooler')
  return leastOf([null, ...parts].map((part) => withCompanions(question, part, prices)))
}
