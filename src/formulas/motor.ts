/**
 * Low-speed high-torque hydraulic motors (orbital): intake with leak, speed, torque, efficiencies. The leak of these
 * motors grows about with the square of the pressure, unlike the slip of a gear pump.
 */
import type {
  CubicMetresPerRev,
  CubicMetresPerSecond,
  NewtonMetres,
  PascalSeconds,
  Pascals,
  RevsPerSecond,
  Share,
} from '../units/si.ts'

const TURN = 2 * Math.PI
/** The leak coefficient is stated at this pressure [Pa]: 100 bar. */
const LEAK_PRESSURE = 1e7

/**
 * Leak of a motor; against its sense of turning where the pressure is.
 * Q = k dp |dp|/1e7 mu_ref/mu
 * @param leak [m3/(s.Pa)] leak coefficient k at 100 bar and the reference viscosity
 * @param dp [Pa] pressure difference
 * @param muRef [Pa.s] dynamic viscosity at which the leak coefficient holds
 * @param mu [Pa.s] dynamic viscosity, above 0
 * @returns [m3/s] leak
 * Valid: to 145 bar; the dependence on viscosity is untested for these motors.
 * Source: least squares over 25 published performance tables of orbital motors.
 */
export const motorLeak = (leak: number, dp: Pascals, muRef: PascalSeconds, mu: PascalSeconds): CubicMetresPerSecond =>
  (leak * dp * Math.abs(dp) * muRef) / (LEAK_PRESSURE * mu)

/**
 * Flow that a motor takes in.
 * Q = (1 + e) V n + k dp (dp/1e7)(mu_ref/mu)
 * @param displacement [m3/rev] displacement V
 * @param speed [rev/s] shaft speed n
 * @param offset [1] flow offset e
 * @param leak [m3/(s.Pa)] leak coefficient k at 100 bar and the reference viscosity
 * @param dp [Pa] pressure difference
 * @param muRef [Pa.s] dynamic viscosity at which the leak coefficient holds
 * @param mu [Pa.s] dynamic viscosity, above 0
 * @returns [m3/s] intake
 * Valid: 150 to 500 cm3/rev, to 61 L/min and 145 bar.
 * Source: least squares over 25 published performance tables of orbital motors.
 */
export const motorIntake = (
  displacement: CubicMetresPerRev,
  speed: RevsPerSecond,
  offset: Share,
  leak: number,
  dp: Pascals,
  muRef: PascalSeconds,
  mu: PascalSeconds,
): CubicMetresPerSecond =>
  (1 + offset) * displacement * speed + (leak * dp * Math.abs(dp) * muRef) / (LEAK_PRESSURE * mu)

/**
 * Speed of a motor from the flow that it gets. Below zero: the leak takes more than comes, the motor stands.
 * n = (Q - k dp (dp/1e7)(mu_ref/mu))/((1 + e) V)
 * @param flow [m3/s] flow that reaches the motor
 * @param displacement [m3/rev] displacement V, above 0
 * @param offset [1] flow offset e
 * @param leak [m3/(s.Pa)] leak coefficient k at 100 bar and the reference viscosity
 * @param dp [Pa] pressure difference
 * @param muRef [Pa.s] dynamic viscosity at which the leak coefficient holds
 * @param mu [Pa.s] dynamic viscosity, above 0
 * @returns [rev/s] shaft speed, negative where the leak takes more than comes
 * Valid: 150 to 500 cm3/rev, to 61 L/min and 145 bar.
 * Source: motorIntake solved for the speed.
 */
export const motorSpeed = (
  flow: CubicMetresPerSecond,
  displacement: CubicMetresPerRev,
  offset: Share,
  leak: number,
  dp: Pascals,
  muRef: PascalSeconds,
  mu: PascalSeconds,
): RevsPerSecond => (flow - (leak * dp * Math.abs(dp) * muRef) / (LEAK_PRESSURE * mu)) / ((1 + offset) * displacement)

/**
 * Shaft torque of a motor.
 * T = V dp eta/2pi
 * @param displacement [m3/rev] displacement
 * @param dp [Pa] pressure difference
 * @param efficiency [1] hydromechanical efficiency, or the starting one from standstill
 * @returns [N.m] shaft torque
 * Valid: efficiency nearly flat from 28 to 145 bar and to 31 L/min.
 * Source: ISO 4391 (from memory).
 */
export const motorTorque = (displacement: CubicMetresPerRev, dp: Pascals, efficiency: Share): NewtonMetres =>
  (displacement * dp * efficiency) / TURN

/**
 * Pressure difference that a torque asks for.
 * dp = 2pi T/(V eta)
 * @param displacement [m3/rev] displacement, above 0
 * @param torque [N.m] shaft torque
 * @param efficiency [1] hydromechanical efficiency, or the starting one from standstill; above 0
 * @returns [Pa] pressure difference
 * Valid: as motorTorque.
 * Source: motorTorque solved for the pressure.
 */
export const motorDifferential = (displacement: CubicMetresPerRev, torque: NewtonMetres, efficiency: Share): Pascals =>
  (TURN * torque) / (displacement * efficiency)

/**
 * Flow offset and leak coefficient of a motor from a stated volumetric efficiency. Where the stated efficiency leaves no
 * leak beside the offset, the leak is zero and the offset takes what is stated.
 * k = V n (1/eta_v - 1 - e)/(dp_ref dp_ref/1e7)
 * @param displacement [m3/rev] displacement
 * @param speed [rev/s] speed of the reference point
 * @param volumetric [1] volumetric efficiency at the reference point
 * @param referencePressure [Pa] pressure of the reference point, above 0
 * @param usualOffset [1] flow offset of such motors, 0.014 unless given
 * @returns [1, m3/(s.Pa)] offset e and leak coefficient k of motorIntake, at the viscosity of the reference point
 * Valid: efficiency above 0 to 1.
 * Source: motorIntake solved for k; offset the median of 25 published performance tables.
 */
export const leakFromEfficiency = (
  displacement: CubicMetresPerRev,
  speed: RevsPerSecond,
  volumetric: Share,
  referencePressure: Pascals,
  usualOffset: Share = 0.014,
): { readonly offset: Share; readonly leak: number } => {
  const lost = 1 / volumetric - 1
  if (lost <= usualOffset) return { offset: lost, leak: 0 }
  const leak = (displacement * speed * (lost - usualOffset)) / (referencePressure * (referencePressure / LEAK_PRESSURE))
  return { offset: usualOffset, leak }
}

/**
 * Volumetric efficiency of a motor.
 * eta_v = V n/Q
 * @param displacement [m3/rev] displacement
 * @param speed [rev/s] shaft speed
 * @param flow [m3/s] intake, above 0
 * @returns [1] volumetric efficiency
 * Valid: flow above 0.
 * Source: ISO 4391 (from memory).
 */
export const motorVolumetricEfficiency = (
  displacement: CubicMetresPerRev,
  speed: RevsPerSecond,
  flow: CubicMetresPerSecond,
): Share => (displacement * speed) / flow

/**
 * Hydromechanical efficiency of a motor.
 * eta_hm = 2pi T/(V dp)
 * @param displacement [m3/rev] displacement
 * @param dp [Pa] pressure difference, above 0
 * @param torque [N.m] shaft torque
 * @returns [1] hydromechanical efficiency
 * Valid: dp above 0.
 * Source: ISO 4391 (from memory).
 */
export const motorHydromechanicalEfficiency = (
  displacement: CubicMetresPerRev,
  dp: Pascals,
  torque: NewtonMetres,
): Share => (TURN * torque) / (displacement * dp)
