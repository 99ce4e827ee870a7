/**
 * Least prices of the places that carry the flow, as plain numbers: a search on a long list adds them up a million times.
 */
import type { Candidate } from './candidate.ts'
import { KEEP } from './candidate.ts'
import type { PlaceBound } from './line-bounds.ts'
import { NOTHING, plus, type Sum } from './sums.ts'

export class PriceTable {
  private readonly base: Sum
  private readonly places: readonly (readonly Sum[])[]
  /** Sum of what keeping all places from the i-th on costs. */
  private readonly rest: readonly Sum[]

  /**
   * @param base what the places before these cost
   * @param places in their order
   * @param sizes how many options each of them has
   */
  constructor(base: Sum, places: readonly PlaceBound[], sizes: readonly number[]) {
    this.base = base
    this.places = places.map(({ keep, option }, i) => [
      keep,
      ...Array.from({ length: sizes[i] ?? 0 }, (_, k) => option(k)),
    ])
    const rest: Sum[] = [NOTHING]
    for (const { keep } of places.toReversed()) rest.unshift(plus(rest[0] as Sum, keep))
    this.rest = rest
  }

  /**
   * What a candidate costs at least that begins with these choices; what is still open is kept.
   * @param from index of the first choice that belongs to these places
   */
  sumOf(choices: Candidate, from: number): Sum {
    const { base, rest, places } = this
    const decided = choices.length - from
    const open = rest[decided] as Sum
    let money = base.money + open.money
    let labour = base.labour + open.labour
    let litres = base.litres + open.litres
    for (let i = 0; i < decided; i++) {
      const one = places[i]?.[(choices[from + i] as number) - KEEP] as Sum
      money += one.money
      labour += one.labour
      litres += one.litres
    }
    return { money, labour, litres }
  }
}
