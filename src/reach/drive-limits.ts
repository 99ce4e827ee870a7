/**
 * Choices that cannot be built, whatever else is chosen. Each reads figures that only pumps, motors, sprocket and oil decide
 * (relief settings and engine are changed by nothing), and of what is kept every member of the family must fall under it:
 *
 * - the pump does not go in, is not joined by anything, or does not bear what it must (pump-fit.ts);
 * - at the relief setting the pumps ask for more power than the engine has, or more than before where it was short already;
 * - it would be faster, and has no brake for that;
 * - the motors pull less than grade or turn need, or the engine stalls there under full levers.
 *
 * The last two are not looked at where a suction may starve a pump, for then it takes less torque.
 */
import { canTurn, demandOf } from '../circuit/forces.ts'
import { pumpTorque } from '../formulas/pump.ts'
import type { Circuit, Machine } from '../machine.ts'
import { holdBackGrade, noticeable } from '../tables/limits.ts'
import type { PascalSeconds } from '../units/si.ts'
import { KEEP } from './candidate.ts'
import { type Ground, type Known, machinesOf, pieceOf } from './drive.ts'
import { knownIn } from './known-in.ts'
import { pumpsOf } from './pieces.ts'
import { circuitsOf, hasRoom, joinedBy } from './pump-fit.ts'
import { maySuit } from './suits.ts'
import { isPossible, pricesOf } from './sums.ts'
import { type Drive, pullOf, stallsAt } from './travel-bound.ts'

const HAIR = 1e-6

/** Asked of one pump with every motor and sprocket: by place and option. */
const unfit = new WeakMap<Known, Map<number, boolean>>()

/** The chosen pump cannot take the place. */
export const pumpCannot = (ground: Ground, known: Known | null, option: number): boolean => {
  const machine = known?.pieces[pieceOf(option)]?.machine
  if (known === null || machine === undefined || option === KEEP) return false
  const before = unfit.get(known) ?? new Map<number, boolean>()
  unfit.set(known, before)
  return knownIn(before, option, () => {
    const circuits = circuitsOf(ground, known)
    const pumps = pumpsOf(machine, known.place.circuits)
    return (
      !hasRoom(pumps, circuits) ||
      !isPossible(joinedBy(ground, pumps, circuits, pricesOf(ground.question.loaded.shop, 'any'))) ||
      !maySuit(pumps, circuits, ground.plant.engine.highIdle)
    )
  })
}

/** Power of some pumps at their relief settings and rated speed, or too little where a suction may starve one. */
const reliefPower = (ground: Ground, circuits: readonly Circuit[], mu: PascalSeconds): number => {
  const { engine } = ground.plant.machine
  const torque = circuits.reduce((sum, { pump, relief }) => {
    const { displacement, referenceTorqueLoss, reference } = pump
    const { pressure, speed, viscosity } = reference
    const at = relief.setting
    return sum + pumpTorque(displacement, at, 1, referenceTorqueLoss, pressure, engine.ratedSpeed, mu, speed, viscosity)
  }, 0)
  return torque * 2 * Math.PI * engine.ratedSpeed
}

/**
 * The pumps that drive together, or another one alone, take more at their relief settings than the engine has.
 * @param mu the thinnest that the oil may be at 50 degC: it drags least
 */
export const tooStrong = (ground: Ground, known: Known | null, option: number, mu: PascalSeconds): boolean => {
  const { plant, question } = ground
  if (known === null || option === KEEP || ground.mayStarve) return false
  const { reliefPowerKw, deratedPowerKw } = question.start.before.more
  const limit = Math.max(deratedPowerKw, reliefPowerKw > deratedPowerKw ? reliefPowerKw * (1 + noticeable.value) : 0)
  const isOver = (circuits: readonly Circuit[]) => reliefPower(ground, circuits, mu) > limit * 1000 * (1 + HAIR)
  const there = new Set(plant.machine.circuits.map(({ name }) => name))
  const groups = ({ circuits }: Machine): readonly (readonly Circuit[])[] => [
    known === ground.driving ? circuits.filter((_, i) => plant.driving.includes(i)) : [],
    ...circuits.flatMap((circuit, i) =>
      (known.place.circuits.includes(circuit.name) && !plant.driving.includes(i)) || !there.has(circuit.name)
        ? [[circuit]]
        : [],
    ),
  ]
  return machinesOf(ground, known, option).every((machine) => groups(machine).some(isOver))
}

/**
 * Fastest on the level [km/h] that is allowed at all: a machine without a holding brake, or on a slope without what holds it back,
 * is made no faster (reason 'braking-or-slope'). No part of the search is a brake.
 */
export const fastestAllowed = ({ question: { start, loaded } }: Ground): number => {
  const { holding, counterbalance } = start.before.machine.brakes
  const runsAway = counterbalance === false && loaded.scenario.site.steepestGrade > holdBackGrade.value
  if (holding !== false && !runsAway) return Number.POSITIVE_INFINITY
  return start.beforeJudged.travel.level.speedKmh * (1 + noticeable.value) * (1 + HAIR)
}

/** Pull and engine at grade and turn, as `grade-start` and `turn-start` judge them. */
export const standsStill = (ground: Ground, drives: readonly Drive[]): boolean => {
  const { plant, question } = ground
  const { start } = question
  const was = (check: string) => start.beforeJudged.findings.find((finding) => finding.check === check)
  const points = canTurn(plant.machine) ? (['grade', 'turn'] as const) : (['grade'] as const)
  return points.some((point) => {
    const there = was(`${point}-start`)
    // Short of it already: what then counts as no worse is left to the evaluation.
    if (there !== undefined && there.severity !== 'ok') return false
    const { needed } = demandOf(plant, point)
    return drives.every(
      (drive) => pullOf(plant, drive) < needed * (1 - HAIR) || (!ground.mayStarve && stallsAt(plant, drive, point)),
    )
  })
}
