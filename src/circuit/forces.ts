/**
 * What each travel point asks of the running gear, and what the motors can pull: force, per motor, at the ground.
 */

import { motorDifferential, motorTorque } from '../formulas/motor.ts'
import {
  adhesionLimit,
  forceFromMotorTorque,
  motorTorqueForForce,
  rollingAndGrade,
  turningForcePerTrack,
  turningMoment,
} from '../formulas/traction.ts'
import type { Machine, Site } from '../machine.ts'
import { type CubicMetresPerRev, GRAVITY, type Newtons, type Pascals } from '../units/si.ts'
import type { Plant } from './plant.ts'

export type PointName = 'level' | 'grade' | 'turn' | 'oneTrack'

export interface Demand {
  /** What the point is said to need: both tracks together, of oneTrack the driven one. */
  readonly needed: Newtons
  /** What the tracks are loaded with: needed, but never more than the ground holds on level and grade. */
  readonly applied: Newtons
  /** Motors that carry it. */
  readonly motors: number
  /** The ground gives way first. */
  readonly spinning: boolean
}

const weightOf = (machine: Machine): Newtons => machine.mass * GRAVITY

const perTrackInTurn = (machine: Machine, site: Site): Newtons => {
  const { groundContactLength, gauge } = machine.travel
  const weight = weightOf(machine)
  const { turning, rollingResistance } = site.ground
  const moment = turningMoment(turning, weight, groundContactLength ?? 0, gauge ?? 1)
  return turningForcePerTrack(rollingResistance, weight, moment, gauge ?? 1, turning)
}

/** Turn and one track exist on tracks whose gauge and ground contact length are known. */
export const canTurn = (machine: Machine): boolean =>
  machine.travel.running === 'tracks' && machine.travel.gauge !== null && machine.travel.groundContactLength !== null

export const demandOf = (plant: Plant, point: PointName): Demand => {
  const { machine, site } = plant
  const { motors } = machine.travel
  if (point === 'turn' || point === 'oneTrack') {
    const track = perTrackInTurn(machine, site)
    const needed = point === 'turn' ? 2 * track : track
    return { needed, applied: needed, motors: point === 'turn' ? motors : motors / 2, spinning: false }
  }
  const grade = point === 'grade' ? site.steepestGrade : 0
  const needed = rollingAndGrade(weightOf(machine), site.ground.rollingResistance, grade)
  const held = adhesionLimit(site.ground.adhesion, weightOf(machine), grade)
  return { needed, applied: Math.min(needed, held), motors, spinning: needed > held }
}

/** Pressure difference that one motor needs for its share of a force. */
export const differentialFor = (
  machine: Machine,
  force: Newtons,
  motors: number,
  displacement: CubicMetresPerRev,
): Pascals => {
  const { wayPerTurn, efficiency, finalDriveRatio, motor } = machine.travel
  const torque = motorTorqueForForce(force / motors, wayPerTurn, efficiency, finalDriveRatio)
  return motorDifferential(displacement, torque, motor.hydromechanical)
}

/** Pull from standstill of so many motors on one circuit, the relief setting across each of them, no flow. */
export const startingPull = (
  machine: Machine,
  setting: Pascals,
  motors: number,
  displacement: CubicMetresPerRev,
): Newtons => {
  const { wayPerTurn, efficiency, finalDriveRatio, motor } = machine.travel
  return (
    motors *
    forceFromMotorTorque(motorTorque(displacement, setting, motor.starting), wayPerTurn, efficiency, finalDriveRatio)
  )
}
