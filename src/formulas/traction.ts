/**
 * Travel on tracks or wheels: force needed on a grade and in a turn, grip, torque and speed at the final drive. Force
 * is for the whole machine unless the name says per track.
 */
import type { Metres, MetresPerSecond, NewtonMetres, Newtons, RevsPerSecond, Share } from '../units/si.ts'

const TURN = 2 * Math.PI

/**
 * Force for straight travel up a grade.
 * F = W (f_r cos a + sin a), a = atan(grade)
 * @param weight [N] weight W
 * @param rollingResistance [-] motion resistance f_r
 * @param grade [1] rise over run: 0.2 for 20 %; negative downhill
 * @returns [N] force, both tracks together
 * Valid: steady speed.
 * Source: balance of forces.
 */
export const rollingAndGrade = (weight: Newtons, rollingResistance: number, grade: Share): Newtons =>
  (weight * (rollingResistance + grade)) / Math.sqrt(1 + grade * grade)

/**
 * Moment that resists turning on the spot. The linear moment mu W L/4 over-predicts; the bracket corrects it.
 * M = mu W L/4 (1.108 - 0.18 L/B)
 * @param mu [-] coefficient of turning resistance
 * @param weight [N] weight W
 * @param length [m] track on ground L
 * @param gauge [m] track centres B, above 0
 * @returns [N.m] moment, both tracks together
 * Valid: L/B from 0.8 to 1.8, uniform ground pressure, low speed.
 * Source: Wong, Theory of Ground Vehicles, ch. 6 (from memory); bracket fitted to an integration of the scrub.
 */
export const turningMoment = (mu: number, weight: Newtons, length: Metres, gauge: Metres): NewtonMetres =>
  ((mu * weight * length) / 4) * (1.108 - (0.18 * length) / gauge)

/**
 * Force of one track in a turn.
 * F = f_r W/2 + min(M/B, mu W/2)
 * @param rollingResistance [-] motion resistance f_r
 * @param weight [N] weight W
 * @param moment [N.m] moment that resists turning M
 * @param gauge [m] track centres B, above 0
 * @param mu [-] coefficient of turning resistance: the bound, all of the track's weight scrubbing
 * @returns [N] force at one track
 * Valid: level ground; counter-rotation, and about a stopped track.
 * Source: Wong, Theory of Ground Vehicles, ch. 6 (from memory).
 */
export const turningForcePerTrack = (
  rollingResistance: number,
  weight: Newtons,
  moment: NewtonMetres,
  gauge: Metres,
  mu: number,
): Newtons => (rollingResistance * weight) / 2 + Math.min(moment / gauge, (mu * weight) / 2)

/**
 * Most that the ground takes up.
 * F = phi W cos a, a = atan(grade)
 * @param adhesion [-] adhesion coefficient phi
 * @param weight [N] weight W
 * @param grade [1] rise over run
 * @returns [N] force, all tracks or driven wheels together
 * Valid: all weight on what is driven.
 * Source: Coulomb friction; coefficients of a published tracked-vehicle table.
 */
export const adhesionLimit = (adhesion: number, weight: Newtons, grade: Share): Newtons =>
  (adhesion * weight) / Math.sqrt(1 + grade * grade)

/**
 * Motor torque that a force at the track asks for.
 * T = F s/(2pi eta i)
 * @param force [N] force at the track or wheel F
 * @param wayPerTurn [m] way for one turn of sprocket or wheel s
 * @param efficiency [1] efficiency of track or wheel eta, above 0
 * @param ratio [-] final-drive ratio i, motor turns per sprocket turn
 * @returns [N.m] motor torque
 * Valid: driving, not braking.
 * Source: work of one turn.
 */
export const motorTorqueForForce = (
  force: Newtons,
  wayPerTurn: Metres,
  efficiency: Share,
  ratio: number,
): NewtonMetres => (force * wayPerTurn) / (TURN * efficiency * ratio)

/**
 * Force at the track of a motor torque: the inverse of motorTorqueForForce.
 * F = 2pi T eta i/s
 * @param torque [N.m] motor torque T
 * @param wayPerTurn [m] way for one turn of sprocket or wheel s, above 0
 * @param efficiency [1] efficiency of track or wheel eta
 * @param ratio [-] final-drive ratio i
 * @returns [N] force at the track or wheel
 * Valid: driving, not braking.
 * Source: work of one turn.
 */
export const forceFromMotorTorque = (
  torque: NewtonMetres,
  wayPerTurn: Metres,
  efficiency: Share,
  ratio: number,
): Newtons => (TURN * torque * efficiency * ratio) / wayPerTurn

/**
 * Travel speed.
 * v = n/i s (1 - slip) factor
 * @param motorSpeed [rev/s] motor speed n
 * @param ratio [-] final-drive ratio i, above 0
 * @param wayPerTurn [m] way for one turn of sprocket or wheel s
 * @param slip [1] slip of the track on the ground
 * @param factor [-] calibrated speed factor, 1 where nothing sets it
 * @returns [m/s] travel speed
 * Valid: straight travel.
 * Source: kinematics.
 */
export const travelSpeed = (
  motorSpeed: RevsPerSecond,
  ratio: number,
  wayPerTurn: Metres,
  slip: Share,
  factor: number,
): MetresPerSecond => (motorSpeed / ratio) * wayPerTurn * (1 - slip) * factor

/**
 * Way for one turn of a sprocket from its teeth, or from the links that pass in one turn.
 * s = z p
 * @param teeth [-] teeth, each taking one link; where every second tooth takes one, the links per turn
 * @param pitch [m] link pitch p
 * @returns [m] way per turn
 * Valid: chain or belt that does not jump.
 * Source: kinematics.
 */
export const wayFromTeeth = (teeth: number, pitch: Metres): Metres => teeth * pitch

/**
 * Way for one turn from a diameter.
 * s = pi D
 * @param diameter [m] diameter at which the belt runs
 * @returns [m] way per turn
 * Valid: friction or many-toothed drive; with few teeth the pitch circle over-states by 1.4 % (11) to 2.1 % (9).
 * Source: kinematics.
 */
export const wayFromPitchDiameter = (diameter: Metres): Metres => Math.PI * diameter

/**
 * Way for one turn of a wheel.
 * s = 2pi r
 * @param radius [m] rolling radius
 * @returns [m] way per turn
 * Valid: tyre at its pressure and load.
 * Source: kinematics.
 */
export const wayFromRollingRadius = (radius: Metres): Metres => TURN * radius

/**
 * Pitch diameter of a sprocket.
 * D = p/sin(pi/z)
 * @param pitch [m] link pitch p
 * @param teeth [-] teeth that each take a link z
 * @returns [m] pitch diameter
 * Valid: 3 teeth and more.
 * Source: geometry of the polygon.
 */
export const pitchDiameter = (pitch: Metres, teeth: number): Metres => pitch / Math.sin(Math.PI / teeth)

/**
 * Longest track on ground against track centres that can still be steered by skidding.
 * L/B = 2/mu (c/p + tan phi - f_r)
 * @param mu [-] coefficient of turning resistance
 * @param cohesionOverPressure [-] soil cohesion over ground pressure c/p
 * @param frictionAngle [rad] friction angle of the soil phi
 * @param rollingResistance [-] motion resistance f_r
 * @returns [-] largest L/B
 * Valid: soil that fails in shear under the track.
 * Source: Wong, Theory of Ground Vehicles, ch. 6 (from memory).
 */
export const steerableRatio = (
  mu: number,
  cohesionOverPressure: number,
  frictionAngle: number,
  rollingResistance: number,
): number => (2 / mu) * (cohesionOverPressure + Math.tan(frictionAngle) - rollingResistance)

/**
 * Coefficient of turning resistance in a turn of some radius, which is less than on the spot.
 * mu = mu_max/(0.85 + 0.15 R/B)
 * @param most [-] coefficient on the spot mu_max
 * @param radius [m] radius R to the outer track
 * @param gauge [m] track centres B, above 0
 * @returns [-] coefficient, never above mu_max
 * Valid: R of B and more; below it mu_max holds.
 * Source: Nikitin (from memory).
 */
export const turningResistanceAtRadius = (most: number, radius: Metres, gauge: Metres): number =>
  most / Math.max(1, 0.85 + (0.15 * radius) / gauge)

/**
 * Share of the most thrust that a slipping track develops on soft soil.
 * F/F_max = 1 - K/(s L)(1 - exp(-s L/K))
 * @param shearModulus [m] shear deformation modulus K, 0.01 to 0.06
 * @param length [m] track on ground L
 * @param slip [1] slip s
 * @returns [1] share of the most thrust
 * Valid: slip 0 to 1.
 * Source: Janosi and Hanamoto, in Wong, Theory of Ground Vehicles, ch. 2 (from memory).
 */
export const thrustShare = (shearModulus: Metres, length: Metres, slip: Share): Share => {
  const ratio = (slip * length) / shearModulus
  return ratio > 0 ? 1 - (1 - Math.exp(-ratio)) / ratio : 0
}
