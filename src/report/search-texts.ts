/** What a search found, as texts: the same on the terminal and on paper. Renders; works nothing out. */
import type { Change, Cost, OptionResult } from '../evaluation.ts'
import type { FoundWay, Gives, Goal, Measure, Moves, Search, SearchCounts } from '../search.ts'
import { against, decimal, quantity, span, typeset, type Units } from './format.ts'
import { componentName, pathName } from './names.ts'
import { moneySaid, moneySpan } from './prices.ts'
import { en } from './wording.ts'
import { reach as words } from './wording-reach.ts'

const UNITS: { readonly [measure in Measure]: string } = {
  'travel-speed': 'km/h',
  'attachment-flow': 'L/min',
  'oil-temperature': '°C',
}

/** Unit of the measure, as the search gives it. */
export const unitOf = (measure: Measure): string => UNITS[measure]

/** Each wish: "3.8 km/h on the level", "oil that settles at 70 °C or less". */
const wishTexts = ({ travelSpeedKmh, attachment, oilBelowC }: Goal, units: Units): readonly string[] => [
  ...(travelSpeedKmh === null ? [] : [words.goal.speed(quantity(travelSpeedKmh, 'km/h', units))]),
  ...(attachment === null
    ? []
    : [
        words.goal.attachment(
          quantity(attachment.flowLpm, 'L/min', units),
          quantity(attachment.pressureBar, 'bar', units),
        ),
      ]),
  ...(oilBelowC === null ? [] : [words.goal.oil(quantity(oilBelowC, '°C', units))]),
]

/** "3.8 km/h on the level and oil that settles at 70 °C or less". */
export const goalText = (goal: Goal, units: Units): string => en.list(wishTexts(goal, units))

/** The goal in the unit of the measure; null where the search measures something else. */
export const wantedOf = (goal: Goal, measure: Measure): number | null =>
  measure === 'travel-speed'
    ? goal.travelSpeedKmh
    : measure === 'attachment-flow'
      ? (goal.attachment?.flowLpm ?? null)
      : goal.oilBelowC

/** What falls short, with as many decimals as it takes to see that it is not what is wanted; what does it, as any other figure. */
export const reachedText = (
  reached: number | null,
  { goal, measure }: Pick<Search, 'goal' | 'measure'>,
  units: Units,
): string => {
  const [unit, wanted] = [unitOf(measure), wantedOf(goal, measure)]
  const does =
    reached !== null && wanted !== null && (measure === 'oil-temperature' ? reached <= wanted : reached >= wanted)
  return reached === null || wanted === null || does
    ? quantity(reached, unit, units, words.notReached)
    : against(reached, wanted, unit, units).value
}

const goalsIn = (goal: Goal): number => Object.values(goal).filter((wish) => wish !== null).length

/** More than one thing is wanted. */
export const wantsSeveral = (goal: Goal): boolean => goalsIn(goal) > 1

/** What a way gives of all that is wanted: "2.2 km/h and 57 °C". */
export const givesText = ({ speedKmh, attachmentLpm, oilC }: Gives, goal: Goal, units: Units): string => {
  const of = (measure: Measure, reached: number | null) =>
    wantedOf(goal, measure) === null ? [] : [reachedText(reached, { goal, measure }, units)]
  return en.list([
    ...of('travel-speed', speedKmh),
    ...of('attachment-flow', attachmentLpm),
    ...of('oil-temperature', oilC),
  ])
}

/** The wishes that the search does not measure by. */
export const otherWishes = (goal: Goal, measure: Measure, units: Units): readonly string[] =>
  wishTexts(
    {
      travelSpeedKmh: measure === 'travel-speed' ? null : goal.travelSpeedKmh,
      attachment: measure === 'attachment-flow' ? null : goal.attachment,
      oilBelowC: measure === 'oil-temperature' ? null : goal.oilBelowC,
    },
    units,
  )

interface Said {
  readonly speed: (text: string) => string
  readonly attachment: (text: string) => string
  readonly oil: (text: string) => string
  readonly oilNever: string
}

/** What a way gives of each thing that is wanted, by its measure. */
const givesOfEach = (
  { speedKmh, attachmentLpm, oilC }: Gives,
  goal: Goal,
  units: Units,
  said: Said,
): readonly { readonly measure: Measure; readonly text: string }[] => {
  const of = (measure: Measure, reached: number | null, say: (text: string) => string) =>
    wantedOf(goal, measure) === null ? [] : [{ measure, text: say(reachedText(reached, { goal, measure }, units)) }]
  return [
    ...of('travel-speed', speedKmh, said.speed),
    ...of('attachment-flow', attachmentLpm, said.attachment),
    ...of('oil-temperature', oilC, oilC === null ? () => said.oilNever : said.oil),
  ]
}

/** What a way gives of all that is wanted, in a sentence: "2.2 km/h and oil that settles at 57 °C". */
export const givesSaid = (gives: Gives, goal: Goal, units: Units): string =>
  en.list(givesOfEach(gives, goal, units, words.gives).map(({ text }) => text))

/** Beside a step of the chart: "2.2 km/h, oil 57 °C". */
export const givesShortly = (gives: Gives, goal: Goal, units: Units): string =>
  givesOfEach(gives, goal, units, words.shortly)
    .map(({ text }) => text)
    .join(', ')

/** "gives 2.2 km/h, but leaves the oil at 74 °C, where you want 60 °C or less". */
export const missesText = (gives: Gives, misses: readonly Measure[], goal: Goal, units: Units): string => {
  const reached = {
    'travel-speed': gives.speedKmh,
    'attachment-flow': gives.attachmentLpm,
    'oil-temperature': gives.oilC,
  }
  const missed = misses.map((measure) => {
    const wanted = wantedOf(goal, measure) ?? 0
    const value = reached[measure]
    if (value === null) return words.missesSettling(quantity(wanted, unitOf(measure), units))
    const texts = against(value, wanted, unitOf(measure), units)
    return words.misses[measure](texts.value, texts.limit)
  })
  const given = givesOfEach(gives, goal, units, words.gives)
    .filter(({ measure }) => !misses.includes(measure))
    .map(({ text }) => text)
  return given.length === 0 ? en.list(missed) : words.butMisses(en.list(given), en.list(missed))
}

/** As the other pages print it: "from" where something has no price. */
export const priceText = ({ low, high, currency, unpriced }: Cost): string =>
  high === 0 && unpriced.length === 0 ? words.nothing : moneySpan(low, high, currency, unpriced.length > 0)

/** Inside a sentence, behind "for" or "costs": "at least $1,900" where something has no price. */
export const priceSaid = ({ low, high, currency, unpriced }: Cost): string =>
  high === 0 && unpriced.length === 0 ? words.free : moneySaid(low, high, currency, unpriced.length > 0)

export const wayPrice = ({ option, specialOrder }: FoundWay): string =>
  specialOrder ? words.specialOrder(priceText(option.cost)) : priceText(option.cost)

const NOTHING: ReadonlySet<string> = new Set(['', 'none', 'as it is'])

/** Hoses are sold by the metre; what is fitted is a hose. */
const partName = (text: string): string => typeset(text.replace(/, metre$/u, ''))

/** The asked changes in full: "pump: Gear pump 13.7 cm³, SAE A, 9 tooth, in place of 6.8 cm³/rev". */
export const changeTexts = ({ changes }: Pick<OptionResult, 'changes'>): readonly string[] =>
  changes.length === 0
    ? [words.asItIs]
    : changes.map(({ component, from, to }) =>
        words.change(componentName(component), partName(to), NOTHING.has(from) ? '' : partName(from)),
      )

/** A part's name up to its first comma: what is behind it is for the one who fits it. A bare figure keeps its component. */
const shortName = ({ component, to }: Change): string => {
  const [first = to] = to.split(', ')
  return /^\p{Lu}\p{Ll}/u.test(first) ? typeset(first) : words.change(componentName(component), partName(to), '')
}

/** The new circuit that a change belongs to, as "circuits.NAME."; a circuit is new where its pump was not there. */
const newCircuitsIn = (changes: readonly Change[]): readonly string[] =>
  changes.flatMap(({ component, from }) =>
    from === 'none' && /^circuits\..+\.pump$/u.test(component) ? [component.slice(0, -'pump'.length)] : [],
  )

/** The asked changes in brief, each once: "Gear pump 13.7 cm³ + Orbital motor 250 cm³". Of a new circuit its pump. */
export const briefChanges = ({ changes }: Pick<OptionResult, 'changes'>): string => {
  if (changes.length === 0) return words.asItIs
  const added = newCircuitsIn(changes)
  const pumps = changes.filter(({ component }) => added.some((circuit) => component === `${circuit}pump`))
  const second = new Set(pumps.map(shortName))
  const others = changes
    .filter(({ component }) => !added.some((circuit) => component.startsWith(circuit)))
    .map(shortName)
    .filter((name) => !second.has(name))
  return [...[...second].map(words.secondPump), ...new Set(others)].join(words.and)
}

/** Whether a way does all that is wanted; if not, whether it falls short of some of it or is stopped by something else. */
export const verdictText = ({ reaches, meets }: Pick<FoundWay, 'reaches' | 'meets'>): string =>
  meets ? words.verdict.does : reaches ? words.verdict.stopped : words.verdict.short

/** More decimals than usual at most, to tell both ends apart. */
const MOST_MORE = 2

/**
 * Both ends, the lower first, with as many decimals as it takes to tell them apart, and to tell the end that falls short from
 * what is wanted.
 */
export const spanText = (
  { reachedLow, reachedHigh, holds }: Moves,
  { goal, measure }: Pick<Search, 'goal' | 'measure'>,
  units: Units,
): string => {
  if (reachedLow === null || reachedHigh === null) return words.notReached
  const [low, high] = [Math.min(reachedLow, reachedHigh), Math.max(reachedLow, reachedHigh)]
  const [unit, wanted] = [unitOf(measure), wantedOf(goal, measure)]
  const worst = measure === 'oil-temperature' ? high : low
  const isShort = wanted !== null && !holds && (measure === 'oil-temperature' ? worst > wanted : worst < wanted)
  const text = (more: number) => span(low, high, unit, units, more)
  const tells = (more: number) =>
    span(low, low, unit, units, more) !== span(high, high, unit, units, more) &&
    !(isShort && span(worst, worst, unit, units, more) === span(wanted, wanted, unit, units, more))
  const more = [0, 1, MOST_MORE].find(tells)
  return text(more ?? 0)
}

/** Over its whole tolerance it moves nothing that anybody would print. */
export const movesNothing = ({ reachedLow, reachedHigh }: Moves, { measure }: Pick<Search, 'measure'>): boolean =>
  reachedLow !== null && reachedHigh !== null && Math.abs(reachedHigh - reachedLow) < LEAST_MOVE[measure]

/** In the unit of the measure: less is no change that a stopwatch, a flow meter or a thermometer shows. */
const LEAST_MOVE: { readonly [measure in Measure]: number } = {
  'travel-speed': 0.02,
  'attachment-flow': 0.1,
  'oil-temperature': 0.5,
}

/** What moves, and by how much it may be off. */
export const moveText = ({ path, label, tolerance }: Moves): string => {
  const name = label === path ? pathName(path) : typeset(label)
  return tolerance === null ? name : words.tolerance(name, tolerance)
}

const MILLION = 1e6
const BILLION = 1e9
const TRILLION = 1e12

/** One decimal below ten, where there is anything behind it. */
const inUnits = (count: number, unit: number): string =>
  decimal(count / unit, count < 10 * unit && count % unit !== 0 ? 1 : 0, 1000)

/** A count that may be too large to be read figure by figure. */
export const largeCount = (count: number): string =>
  count < MILLION
    ? decimal(count, 0, 1000)
    : count < BILLION
      ? words.million(inUnits(count, MILLION))
      : count < TRILLION
        ? words.billion(inUnits(count, BILLION))
        : words.trillion(inUnits(count, TRILLION))

/** For a customer, to whom a thousand million and a million million are the same. */
export const plainCount = (count: number): string => (count < BILLION ? largeCount(count) : words.overABillion)

/** Combinations that the search left open: where there are any, nothing is proved. */
export const leftOpen = ({ combinations, evaluated, cutByPrice, cutByReach, cutByLimit }: SearchCounts): number => {
  const left = combinations - evaluated - cutByPrice - cutByReach - cutByLimit
  // Sums of very large counts are not exact.
  return left > 1e-9 * combinations ? left : 0
}

/**
 * How many combinations there were, and what became of them; what came to nothing is left out.
 * @param besides worked out in full after the search for the goal
 */
export const countTexts = (counts: SearchCounts, besides = 0): readonly string[] => [
  words.counts.combinations(largeCount(counts.combinations)),
  words.counts.evaluated(largeCount(counts.evaluated)),
  ...(['cutByPrice', 'cutByReach', 'cutByLimit'] as const).flatMap((kind) =>
    counts[kind] === 0 ? [] : [words.counts[kind](largeCount(counts[kind]))],
  ),
  ...(leftOpen(counts) === 0 ? [] : [words.counts.open(largeCount(leftOpen(counts)))]),
  ...(besides === 0 ? [] : [words.counts.besides(largeCount(besides))]),
]
