/** Hoses: the size and kind that a line needs, and the choice from the list. */
import type { Finding } from '../evaluation.ts'
import { hoseRating } from '../tables/hose-ratings.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import { barFromPascals, lpmFromCubicMetresPerSecond, metresFromMm, mmFromMetres } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'
import { type Answer, answer, askedValue, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, choose, type Requirement } from './choose.ts'
import { strainerRemedy } from './cooling-remedies.ts'
import type { LinePlace } from './line-places.ts'
import { hadOf, newHose } from './line-work.ts'
import type { Stocked } from './read-figures.ts'
import { type HoseFigures, hoses } from './stock-lines.ts'
import type { Remedy } from './uses.ts'

/** Kinds of hose that a place takes besides the kind that is there; a rating is asked for on top where relief reaches. */
const SUCTION = 'suction hose'

export const kindFits = (place: LinePlace, kind: string | null): boolean => {
  const own = place.line.kind
  if (kind !== null && kind === own) return true
  if (place.role === 'suction') return kind === SUCTION
  return kind !== SUCTION && kind !== 'tube'
}

/** Bore that keeps the oil at the guide velocity of its role; never less than what is there. */
const boreWanted = (place: LinePlace, because: readonly Finding[]): Metres => {
  const velocity = askedValue(because, 'line-velocity')
  const { guide } = velocityLimits[place.role]
  return place.line.bore * (velocity === null ? 1 : Math.max(1, Math.sqrt(velocity / guide)))
}

const isInlet = ({ check }: Finding): boolean => check === 'inlet-pressure' || check === 'inlet-pressure-cold'

/** Next bigger bore of the dash sizes; null above the biggest. */
const nextBore = (bore: Metres): Metres | null => {
  const next = lineSizes.find(({ boreMm }) => metresFromMm(boreMm) > bore * 1.001)
  return next === undefined ? null : metresFromMm(next.boreMm)
}

export interface HoseChoice {
  readonly place: LinePlace
  readonly because: readonly Finding[]
  readonly hose: Stocked<HoseFigures> | null
  readonly failed: string | null
  readonly bore: Metres
}

/** Chooses the hose of a place: bore and rating, the smallest that will do, then the cheapest of its size. */
export const chooseHose = (
  input: RemedyInput,
  place: LinePlace,
  because: readonly Finding[],
  wanted: Metres = boreWanted(place, because),
): HoseChoice => {
  const pressure = place.workingPressure
  const requirements: readonly Requirement<HoseFigures>[] = [
    { what: `hose for a ${place.role} line`, met: ({ kind }) => kindFits(place, kind) },
    {
      what: `pressure of ${written(barFromPascals(pressure ?? 0), 'bar')}`,
      met: ({ maxPressure }) => pressure === null || atLeastStated(maxPressure, pressure),
    },
    { what: `bore of ${written(mmFromMetres(wanted), 'mm')}`, met: ({ bore }) => atLeastStated(bore, wanted) },
  ]
  const { chosen, failed } = choose(hoses(input.shop), requirements, ({ bore }) => bore, input.shop)
  return { place, because, hose: chosen, failed, bore: wanted }
}

/**
 * What helps a pump that is short at its inlet: whichever of suction hose and strainer takes more pressure, and where that
 * one cannot grow the other. The hose grows a size a pass, or straight to its guide velocity where that asks too.
 */
export const inletHelp = (
  input: RemedyInput,
  place: LinePlace,
  because: readonly Finding[],
): { readonly hose: HoseChoice } | { readonly strainer: Remedy } => {
  const inHose = input.figures.lines.find(({ id }) => id === place.line.id)?.dropBar ?? 0
  const inStrainer = input.figures.drops.find(({ id }) => id === 'strainer')?.dropBar ?? 0
  const fast = askedValue(because, 'line-velocity') !== null
  const { strainer } = input.machine
  const lpm = strainer === null ? 0 : lpmFromCubicMetresPerSecond(strainer.ratedFlow) * 1.01
  const bigger = strainer === null ? null : strainerRemedy(input, because, lpm)
  const wanted = fast ? boreWanted(place, because) : (nextBore(place.line.bore) ?? place.line.bore * 1.1)
  const hose = chooseHose(input, place, because, wanted)
  const hoseFirst = fast || inHose >= inStrainer
  if (hoseFirst && hose.hose !== null) return { hose }
  if (bigger !== null) return { strainer: bigger }
  return { hose }
}

export const needsInletHelp = (because: readonly Finding[]): boolean => because.some(isInlet)

/** Smallest dash size of a bore; the biggest there is where none reaches. */
const dashFor = (bore: Metres): number =>
  (lineSizes.find(({ boreMm }) => metresFromMm(boreMm) >= bore * (1 - 1e-9)) ?? lineSizes.at(-1))?.dash ?? 32

/**
 * The remedy of a line: new hoses with their ends and adapters; the next bigger that can be joined, where the first cannot.
 */
export const lineRemedy = (input: RemedyInput, choice: HoseChoice, placeBefore: LinePlace | null): Remedy => {
  const { place, because, hose, failed, bore } = choice
  const { line, path, count, workingPressure } = place
  const dash = dashFor(bore)
  const rated = hoseRating(line.kind, dash)
  const short = workingPressure !== null && (rated === null || rated < workingPressure)
  const asked: Answer = {
    component: line.id,
    kind: 'hose',
    action: 'replace',
    because,
    chosen: hose?.part ?? null,
    failed,
    quantity: count,
    path,
    ordered: {
      part: null,
      bore: null,
      hose: -dash,
      ...(short && workingPressure !== null ? { 'max-pressure': written(barFromPascals(workingPressure), 'bar') } : {}),
    },
    orderedWords: `-${dash}`,
    job: 'replace hose',
  }
  const made = answer(input, asked)
  if (hose === null || hose.figures.bore === null) return made
  const { dash: size, bore: own } = hose.figures
  const work = newHose(place, placeBefore, { part: hose.part, what: hose.part.name, dash: size, bore: own }, input.shop)
  const { available, specialOrder, lacking } = hadOf(work, input.shop)
  if (!available && !specialOrder) {
    const bigger = chooseHose(input, place, because, own * 1.001)
    if (bigger.hose !== null) return lineRemedy(input, { ...bigger, bore }, placeBefore)
    const without = answer(input, { ...asked, chosen: null, failed: lacking[0]?.what ?? null })
    return { ...without, consequence: { ...without.consequence, connections: work.connections } }
  }
  const present = line.ends?.map(({ text }) => text) ?? null
  const moved = work.ends !== null && (present === null || work.ends.some((end, side) => end !== present[side]))
  const patch = { part: hose.part.id, ...(moved && work.ends !== null ? { ends: [...work.ends] } : {}) }
  return {
    ...made,
    consequence: { ...made.consequence, connections: work.connections, available, specialOrder },
    patch: path.reduceRight<Remedy['patch']>((inner, key) => ({ [key]: inner }), patch),
    uses: work.uses,
    jobs: work.jobs,
  }
}
