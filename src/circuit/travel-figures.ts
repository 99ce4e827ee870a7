/** A solved travel point in the words and units of the result document. */
import type { Point, TravelPoints } from '../evaluation.ts'
import {
  barFromPascals,
  cm3FromCubicMetresPerRev,
  kmhFromMetresPerSecond,
  kwFromWatts,
  lpmFromCubicMetresPerSecond,
  rpmFromRevsPerSecond,
} from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'
import type { CircuitState } from './balance.ts'
import { canTurn } from './forces.ts'
import { type Conditions, conditionsAt, type Plant } from './plant.ts'
import { solveLevel, solvePoint, type TravelState } from './travel-point.ts'

/** Travel points, lines and the engine are judged at this oil temperature (method). */
export const REFERENCE_OIL: Celsius = 50

const meanOf = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length

/**
 * Point of the result. With two driving circuits flows are means and pressures the higher; where the engine stalls,
 * speeds, flows and power are 0 and the pressures are those asked at 70 % of rated speed.
 */
export const pointOf = (state: TravelState): Point => {
  const { engine, tracks } = state
  const drivers = tracks.map((t) => engine.circuits[t.circuit] as CircuitState)
  const running = engine.stalled ? 0 : 1
  return {
    speedKmh: kmhFromMetresPerSecond(state.speed),
    displacementCm3: cm3FromCubicMetresPerRev(state.displacement),
    engineSpeedRpm: running * rpmFromRevsPerSecond(engine.speed),
    engineLoad: engine.load,
    shaftPowerKw: running * kwFromWatts(engine.torque * 2 * Math.PI * engine.speed),
    pumpFlowLpm: running * lpmFromCubicMetresPerSecond(meanOf(drivers.map((d) => d.pumpFlow))),
    pumpPressureBar: barFromPascals(Math.max(...drivers.map((d) => d.pressure))),
    reliefFlowLpm:
      running * lpmFromCubicMetresPerSecond(meanOf(drivers.map((d) => (d.relieving ? d.pumpFlow - d.wayFlow : 0)))),
    motorFlowLpm: running * lpmFromCubicMetresPerSecond(meanOf(tracks.map((t) => t.motorFlow))),
    motorSpeedRpm: running * rpmFromRevsPerSecond(meanOf(tracks.map((t) => t.motorSpeed))),
    motorDifferentialBar: barFromPascals(Math.max(...tracks.map((t) => t.differential))),
    motorReturnBar: barFromPascals(Math.max(...tracks.map((t) => t.returnPressure))),
    tractiveForceN: state.pull,
    neededForceN: state.demand.needed,
    stalled: state.stalled,
    limitedBy: state.limitedBy,
  }
}

export interface SolvedTravel {
  readonly level: TravelState
  readonly points: TravelPoints
  readonly cold: Conditions
  readonly coldLevel: TravelState
}

/**
 * All travel points.
 * @param steady settled oil temperature [degC]; null where nothing settles
 */
export const solveTravel = (plant: Plant, warm: Conditions, steady: Celsius | null): SolvedTravel => {
  const { displacement, secondDisplacement } = plant.machine.travel.motor
  const level = solveLevel(plant, warm)
  const cold = conditionsAt(plant, plant.site.coldestStart)
  const coldLevel = solveLevel(plant, cold)
  const turns = canTurn(plant.machine)
  const slow = secondDisplacement === null ? null : solvePoint(plant, 'level', displacement, warm)
  return {
    level,
    cold,
    coldLevel,
    points: {
      level: pointOf(level),
      levelSlow: slow === null ? null : pointOf(slow),
      levelHot: steady === null ? null : pointOf(solveLevel(plant, conditionsAt(plant, steady))),
      levelCold: pointOf(coldLevel),
      grade: pointOf(solvePoint(plant, 'grade', displacement, warm)),
      turn: turns ? pointOf(solvePoint(plant, 'turn', displacement, warm)) : null,
      oneTrack: turns ? pointOf(solvePoint(plant, 'oneTrack', displacement, warm)) : null,
    },
  }
}
