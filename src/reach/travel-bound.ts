/**
 * The fastest that a pump, a motor, a sprocket and an oil can drive the machine on the level, whatever else is chosen.
 *
 * The balance of the level point (circuit/balance.ts, travel-point.ts) with every drop between pump and motor left out:
 *
 *   dp = what the motors need for the rolling resistance: it depends on no flow, and pump pressure = dp + drops >= dp
 *   T  = torque of the pumps at dp, without its viscous part: never more than they really take, at any speed
 *   n  = speed of the governed engine under T: torque only slows it (full-load torque does not fall with falling speed)
 *   Q  = (1 - e) V n - w k dp/mu: falls with pressure, grows with speed
 *   speed from Q less the motor's leak at dp
 *
 * Each line is at least what the balance finds, as long as no suction starves a pump. Where one may (`mayStarve`), a pump
 * delivers a share s of its flow and its hydraulic torque falls to s. On the governor line the engine gains by that at most
 * droop x (1 - s) of its speed and the flow loses (1 - s), so s = 1 is still the fastest; an engine that would lug counts as
 * one at rated speed, for it may be relieved up to there. Where dp is above a relief setting, or the engine has not the torque, the machine stands. A two-speed
 * motor runs in either displacement: the faster counts. The calibrated factors are those of the machine (carry()).
 */
import { demandOf, differentialFor, startingPull } from '../circuit/forces.ts'
import type { Plant } from '../circuit/plant.ts'
import { fullLoadTorque, governedSpeed } from '../formulas/engine.ts'
import { motorSpeed } from '../formulas/motor.ts'
import { pumpFlow, pumpTorque } from '../formulas/pump.ts'
import { travelSpeed } from '../formulas/traction.ts'
import type { Machine, Motor, Pump } from '../machine.ts'
import { kmhFromMetresPerSecond } from '../units/shop-units.ts'
import type { CubicMetresPerRev, Metres, NewtonMetres, PascalSeconds, Pascals } from '../units/si.ts'

/** What drives: pumps in the order of the circuits that drive. */
export interface Drive {
  readonly pumps: readonly Pump[]
  readonly motor: Motor
  readonly wayPerTurn: Metres
}

/** Noise of the solver and of unit conversions: a bound may lie this much above what it need. */
const HAIR = 1e-6

/** The machine with the motor and the sprocket of the drive, for what reads them of a machine. */
export const geared = (machine: Machine, { motor, wayPerTurn }: Drive): Machine => ({
  ...machine,
  travel: { ...machine.travel, motor, wayPerTurn },
})

/** Torque of a pump at a pressure, without the viscous part of its loss: a lower bound at every speed and oil. */
export const leastTorque = ({ displacement, referenceTorqueLoss, reference }: Pump, pressure: Pascals): NewtonMetres =>
  pumpTorque(
    displacement,
    pressure,
    1,
    referenceTorqueLoss,
    reference.pressure,
    0,
    0,
    reference.speed,
    reference.viscosity,
  )

const speedIn = (
  plant: Plant,
  drive: Drive,
  displacement: CubicMetresPerRev,
  mu: PascalSeconds,
  mayStarve: boolean,
): number => {
  const { machine, site, engine } = plant
  const demand = demandOf(plant, 'level')
  if (demand.spinning) return 0
  const dp = differentialFor(geared(machine, drive), demand.applied, demand.motors, displacement)
  if (plant.driving.some((i) => dp > (machine.circuits[i]?.relief.setting ?? 0) * (1 + HAIR))) return 0
  const torque = drive.pumps.reduce((sum, pump) => sum + leastTorque(pump, dp), 0)
  const { ratedSpeed, ratedTorque, droop, rise } = engine
  const governed = governedSpeed(torque * (1 - HAIR), ratedSpeed, ratedTorque, droop, rise)
  const turns = mayStarve ? Math.max(ratedSpeed, governed ?? 0) : governed
  if (turns === null) return 0
  const { motor, wayPerTurn } = drive
  const speeds = drive.pumps.map((pump, i) => {
    const fed = plant.motorsFed[plant.driving[i] ?? 0] ?? 1
    const flow = pumpFlow(pump.displacement, turns, pump.flowOffset, pump.slip, pump.slipFactor, dp, mu)
    const at = motorSpeed(flow / fed, displacement, motor.flowOffset, motor.leak, dp, motor.referenceViscosity, mu)
    const { finalDriveRatio, speedFactor } = machine.travel
    return Math.max(0, travelSpeed(at, finalDriveRatio, wayPerTurn, site.ground.slip, speedFactor))
  })
  return kmhFromMetresPerSecond(speeds.reduce((sum, speed) => sum + speed, 0) / speeds.length) * (1 + HAIR)
}

/**
 * @param plant of the machine before, whose engine, circuits and ground no way changes
 * @param mu the thickest that the oil may be at 50 degC: it leaks least
 * @param mayStarve a suction may let in less than a pump could deliver
 * @returns level speed in km/h
 */
export const fastest = (plant: Plant, drive: Drive, mu: PascalSeconds, mayStarve: boolean): number => {
  const { displacement, secondDisplacement } = drive.motor
  const slow = speedIn(plant, drive, displacement, mu, mayStarve)
  return secondDisplacement === null ? slow : Math.max(slow, speedIn(plant, drive, secondDisplacement, mu, mayStarve))
}

/** Pull from standstill at the relief settings, the large displacement: what grade and turn are judged by. */
export const pullOf = (plant: Plant, drive: Drive): number =>
  plant.driving.reduce(
    (sum, i) =>
      sum +
      startingPull(
        geared(plant.machine, drive),
        plant.machine.circuits[i]?.relief.setting ?? 0,
        plant.motorsFed[i] ?? 0,
        drive.motor.displacement,
      ),
    0,
  )

/**
 * The engine stalls at a point under full levers, whatever else is chosen: at 70 % of rated speed it has less torque than
 * the pumps ask for at the least pressure that the point needs, or at the relief settings where those come first.
 */
export const stallsAt = (plant: Plant, drive: Drive, point: 'grade' | 'turn'): boolean => {
  const demand = demandOf(plant, point)
  const { machine, engine } = plant
  const dp = differentialFor(geared(machine, drive), demand.applied, demand.motors, drive.motor.displacement)
  const torque = drive.pumps.reduce((sum, pump, i) => {
    const setting = machine.circuits[plant.driving[i] ?? 0]?.relief.setting ?? 0
    return sum + leastTorque(pump, Math.min(dp, setting))
  }, 0)
  return torque > fullLoadTorque(engine.lowest, engine.ratedSpeed, engine.ratedTorque, engine.rise) * (1 + HAIR)
}
