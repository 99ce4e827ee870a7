/** What coolers hold back at least, for the most that flows (level-bound.ts), and how well any of them cools (oil-bound.ts). */
import type { Cooler } from '../machine.ts'
import type { Question } from './assess.ts'
import { piecesOf } from './pieces.ts'
import { isPossible, pricesOf } from './sums.ts'

/** One that holds back no more than any of these, at every flow: drops grow with the square of the flow, up to the bypass. */
export const gentlest = (coolers: readonly Cooler[]): Cooler | null => {
  const [first] = coolers
  if (first === undefined) return null
  const steepness = Math.min(...coolers.map(({ drop, atFlow }) => (drop ?? 0) / atFlow ** 2))
  return { ...first, drop: steepness * first.atFlow ** 2, bypass: Math.min(...coolers.map(({ bypass }) => bypass)) }
}

/**
 * One that none of these cools better than, or holds back less than. A core of capacity C sheds C at its flow or more, and
 * C sqrt(Q/Q_ref) at less: no more than the most C, and no more than the most C / sqrt(Q_ref) times sqrt(Q).
 */
export const strongest = (coolers: readonly Cooler[]): Cooler | null => {
  const gentle = gentlest(coolers)
  if (gentle === null) return null
  const capacity = Math.max(...coolers.map((one) => one.capacity))
  const rising = Math.max(...coolers.map((one) => one.capacity / Math.sqrt(one.atFlow)))
  const atFlow = (capacity / rising) ** 2
  return {
    ...gentle,
    capacity,
    atFlow,
    drop: (gentle.drop ?? 0) * (atFlow / gentle.atFlow) ** 2,
    // Oil colder than the air behind a core is warmed by it: the stronger the core, the more.
    airRise: 0,
  }
}

export interface GentleCoolers {
  /** While one may still be chosen, or what is there is kept: a consequence may put another one of the list in its place. */
  readonly kept: Cooler | null
  readonly chosen: Cooler | null
}

/** Of one to order nobody knows what it holds back. */
export const gentleCoolers = (question: Question): GentleCoolers => {
  const { places, start, loaded } = question
  const place = places.find(({ kind }) => kind === 'cooler')
  const listed =
    place === undefined
      ? []
      : piecesOf(question, place).flatMap(({ machine }, i) => (i === 0 ? [] : (machine.cooler ?? [])))
  const own = start.before.machine.cooler
  const mayOrder = isPossible(pricesOf(loaded.shop, 'any').order('cooler', 1))
  return { kept: own === null || mayOrder ? null : gentlest([own, ...listed]), chosen: gentlest(listed) }
}
