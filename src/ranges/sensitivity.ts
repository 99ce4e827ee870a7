/**
 * Which reading matters most: each figure that nobody has read, taken to both ends of its tolerance while everything else
 * stays, with the calibration by the readings that there are; how far level speed and settled oil move.
 */
import { calibrate } from '../calibration/calibrate.ts'
import { carry } from '../calibration/carried.ts'
import type { Work } from '../circuit/duty.ts'
import { conditionsAt, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL } from '../circuit/travel-figures.ts'
import { solveLevel } from '../circuit/travel-point.ts'
import type { Draw } from '../loaded.ts'
import type { Site } from '../machine.ts'
import type { Readings } from '../question.ts'
import { NO_BALANCE_ABOVE } from '../tables/oil-risk.ts'
import type { Celsius, MetresPerSecond } from '../units/si.ts'
import { drawnGround, type Ranged, type Resolve, settledNear, WIDE_STEP } from './ranges.ts'

export interface Sensitivity {
  readonly path: string
  /** Largest departure of level speed over all machines, a share of it; null where none of them moves. */
  readonly speed: number | null
  /** Largest departure of settled oil [K]; oil that does not settle counts as 150 degC. */
  readonly oil: number
}

/** As the draws call it, for the assumption that the scenario lists. */
const DRAWN_AS: { readonly [path: string]: string } = { 'site.ground.rolling-resistance': 'site.ground.rolling' }

interface Figure {
  readonly path: string
  readonly nominal: number
}

interface State {
  readonly speed: MetresPerSecond
  readonly oil: Celsius
}

/**
 * @param plates the machine as its file says
 * @param machines what the answer is about: the machine as it stands, restored, and with each option
 * @param uncertain paths of the figures that were assumed; those without a tolerance are left out
 */
export const sensitivities = (
  plates: Resolve,
  machines: readonly Ranged[],
  uncertain: readonly string[],
  site: Site,
  work: Work,
  readings: Readings,
): readonly Sensitivity[] => {
  const statesWith = (draw: Draw): readonly State[] => {
    const there: Site = { ...site, ground: drawnGround(site.ground, draw) }
    const { carried } = calibrate(plates(draw), there, work, readings, WIDE_STEP)
    return machines.map(({ resolve, steady, restored }) => {
      const plant = preparePlant(carry(resolve(draw), carried, restored), there)
      const { speed } = solveLevel(plant, conditionsAt(plant, REFERENCE_OIL))
      return { speed, oil: settledNear(plant, work, steady) ?? NO_BALANCE_ABOVE }
    })
  }
  const wanted = new Map(uncertain.map((path) => [DRAWN_AS[path] ?? path, path]))
  const figures = new Map<string, Figure>()
  const record: Draw = (path, nominal, tolerance) => {
    if (tolerance > 0 && wanted.has(path)) figures.set(path, { path, nominal })
    return nominal
  }
  plates(record)
  drawnGround(site.ground, record)
  const asKnown = statesWith((_, nominal) => nominal)
  return [...figures.values()].map((figure) => {
    // A part that an option puts in its place has figures of its own, which nobody can read on this machine.
    const at =
      (side: 1 | -1): Draw =>
      (path, nominal, tolerance) =>
        path === figure.path && nominal === figure.nominal ? nominal + side * tolerance : nominal
    const moved = [statesWith(at(-1)), statesWith(at(1))].flat()
    const known = (i: number): State => asKnown[i % asKnown.length] as State
    const speeds = moved.flatMap(({ speed }, i) => (known(i).speed > 0 ? [Math.abs(speed / known(i).speed - 1)] : []))
    return {
      path: wanted.get(figure.path) ?? figure.path,
      speed: speeds.length === 0 ? null : Math.max(...speeds),
      oil: Math.max(...moved.map(({ oil }, i) => Math.abs(oil - known(i).oil))),
    }
  })
}
