/**
 * Which readings and assumptions move the answer most: the way that was found, with each figure that nobody has read (and
 * the timed run within its tolerance) taken to both ends while everything else stays, the machine calibrated anew each time.
 * It holds where the wanted figures are reached at both ends; the parts stay those that were chosen.
 */
import { calibrate } from '../calibration/calibrate.ts'
import { carry } from '../calibration/carried.ts'
import { conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel } from '../circuit/travel-point.ts'
import type { Draw } from '../loaded.ts'
import type { Site } from '../machine.ts'
import type { Readings } from '../question.ts'
import { drawnGround, settledNear, WIDE_STEP } from '../ranges/ranges.ts'
import type { Moves } from '../search.ts'
import type { Begun } from '../start.ts'
import { entryFor } from '../survey/entries.ts'
import { kmhFromMetresPerSecond } from '../units/shop-units.ts'
import type { Assessed, Question } from './assess.ts'
import { attachmentFlow, measured, type Reached, reachesGoal } from './goal.ts'

/** How many are told. */
const MOST = 3
/** As the draws call it, for the assumption that the scenario lists. */
const DRAWN_AS: { readonly [path: string]: string } = { 'site.ground.rolling-resistance': 'site.ground.rolling' }
const RUN = 'measured.travel.time'

interface Figure {
  /** As the draws call it. */
  readonly drawn: string
  readonly path: string
  readonly nominal: number
  readonly tolerance: string | null
}

const withRun = (readings: Readings, draw: Draw): Readings => {
  const { travel } = readings
  if (travel === null) return readings
  const time = draw(RUN, travel.time, travel.tolerance * travel.time)
  return { ...readings, travel: { ...travel, time } }
}

/** What the way reaches in one draw. */
const reachedIn = (question: Question, begun: Begun, found: Assessed, draw: Draw): Reached => {
  const { loaded, wants, start } = question
  const { site, readings } = loaded.scenario
  const there: Site = { ...site, ground: drawnGround(site.ground, draw) }
  const { carried } = calibrate(
    begun.plates.resolve(draw).machine,
    there,
    start.work,
    withRun(readings, draw),
    WIDE_STEP,
  )
  const machine = carry(found.outcome.prepared.resolve(draw).machine, carried, start.isRestored)
  const plant = preparePlant(machine, there)
  return {
    speedKmh: kmhFromMetresPerSecond(solveLevel(plant, conditionsAt(plant, REFERENCE_OIL)).speed),
    flowLpm: attachmentFlow(machine, there, wants),
    oilC: wants.oilBelow === null ? found.reached.oilC : settledNear(plant, start.work, found.reached.oilC),
  }
}

const circuitOf = (path: string): string => {
  const [first, name] = path.split('.')
  return first === 'circuits' && name !== undefined && name !== 'main' ? ` (${name})` : ''
}

const labelOf = (path: string): string => {
  const entry = entryFor(path, 'machine') ?? entryFor(path, 'scenario')
  return `${entry?.label ?? path}${circuitOf(path)}`
}

/** Every figure with a tolerance that the draws of machine, way, ground and run meet, and that was assumed or is the run itself. */
const figuresOf = (question: Question, begun: Begun, found: Assessed): readonly Figure[] => {
  const { loaded } = question
  const { prepared } = found.outcome
  const assumed = new Map(
    [...begun.built.assumptions, ...prepared.resolve().assumptions, ...loaded.assumptions].map((one) => [
      DRAWN_AS[one.path] ?? one.path,
      one,
    ]),
  )
  const figures = new Map<string, Figure>()
  const record: Draw = (path, nominal, tolerance) => {
    const assumption = assumed.get(path)
    if (tolerance > 0 && (assumption !== undefined || path === RUN))
      figures.set(path, {
        drawn: path,
        path: assumption?.path ?? path,
        nominal,
        tolerance: assumption?.tolerance ?? `± ${Number(((100 * tolerance) / nominal).toPrecision(2))} %`,
      })
    return nominal
  }
  begun.plates.resolve(record)
  prepared.resolve(record)
  drawnGround(loaded.scenario.site.ground, record)
  withRun(loaded.scenario.readings, record)
  return [...figures.values()]
}

/** Below this share of what is reached nobody could tell. */
const LEAST = 5e-4

/** @param found the cheapest way, or the nearest */
export const movesOf = (question: Question, begun: Begun, found: Assessed): readonly Moves[] => {
  const { measure, goal } = question
  const all = figuresOf(question, begun, found).map((figure) => {
    const at =
      (side: 1 | -1): Draw =>
      (path, nominal, tolerance) =>
        path === figure.drawn && nominal === figure.nominal ? nominal + side * tolerance : nominal
    const ends = [reachedIn(question, begun, found, at(-1)), reachedIn(question, begun, found, at(1))] as const
    const [low, high] = [measured(ends[0], measure), measured(ends[1], measure)]
    const moves: Moves = {
      path: figure.path,
      label: labelOf(figure.path),
      tolerance: figure.tolerance,
      reachedLow: low,
      reachedHigh: high,
      holds: ends.every((end) => reachesGoal(end, goal)),
    }
    return { moves, by: low === null || high === null ? Number.POSITIVE_INFINITY : Math.abs(high - low) }
  })
  const least = LEAST * Math.abs(found.way.reached ?? 1)
  return all
    .filter(({ by }) => by > least)
    .toSorted((a, b) => b.by - a.by || (a.moves.path < b.moves.path ? -1 : 1))
    .slice(0, MOST)
    .map(({ moves }) => moves)
}
