/**
 * Positive displacement pumps (external gear): delivered flow with slip, shaft torque with its losses, efficiencies,
 * powers. Pressures are gauge, at the outlet.
 */
import type {
  CubicMetres,
  CubicMetresPerRev,
  CubicMetresPerSecond,
  NewtonMetres,
  PascalSeconds,
  Pascals,
  RevsPerSecond,
  Share,
  Watts,
} from '../units/si.ts'

const TURN = 2 * Math.PI
/** Share of the torque loss that goes with pressure; the rest goes with viscosity and speed. */
const PRESSURE_SHARE = 0.7
/** The film warms as it shears: the viscous part grows no further than this. */
const MOST_VISCOUS = 10

/**
 * Delivered flow of a pump.
 * Q = max(0, (1 - e) V n - w k dp/mu)
 * @param displacement [m3/rev] displacement V
 * @param speed [rev/s] shaft speed n
 * @param offset [1] flow offset e: share by which the displacement falls short of its label
 * @param slip [m3] slip coefficient k of the pump when new
 * @param slipFactor [1] slip factor w: 1 healthy, above 1 worn
 * @param pressure [Pa] outlet pressure dp
 * @param mu [Pa.s] dynamic viscosity
 * @returns [m3/s] delivered flow
 * Valid: 10 to 100 mm2/s, laminar slip, speed above about 500 rpm.
 * Source: Wilson's slip with an offset; fits five points of a gear unit (Cundiff) to 0.3 points of efficiency.
 */
export const pumpFlow = (
  displacement: CubicMetresPerRev,
  speed: RevsPerSecond,
  offset: Share,
  slip: CubicMetres,
  slipFactor: number,
  pressure: Pascals,
  mu: PascalSeconds,
): CubicMetresPerSecond => Math.max(0, (1 - offset) * displacement * speed - (slipFactor * slip * pressure) / mu)

/**
 * Slip coefficient of a pump from a stated volumetric efficiency, with no offset.
 * k = (1 - eta_v) V n mu_ref/dp_ref
 * @param displacement [m3/rev] displacement
 * @param referenceSpeed [rev/s] speed of the reference point
 * @param volumetric [1] volumetric efficiency at the reference point
 * @param referencePressure [Pa] pressure of the reference point, above 0
 * @param referenceMu [Pa.s] dynamic viscosity of the reference point
 * @returns [m3] slip coefficient k of pumpFlow
 * Valid: efficiency above 0 to 1.
 * Source: pumpFlow solved for k.
 */
export const slipFromEfficiency = (
  displacement: CubicMetresPerRev,
  referenceSpeed: RevsPerSecond,
  volumetric: Share,
  referencePressure: Pascals,
  referenceMu: PascalSeconds,
): CubicMetres => ((1 - volumetric) * displacement * referenceSpeed * referenceMu) / referencePressure

/**
 * Shaft torque of a pump. A starved pump's hydraulic torque falls with what it delivers, its friction stays.
 * T = s V dp/2pi + T_ref (0.7 dp/dp_ref + 0.3 m), m = min(10, mu n/(mu_ref n_ref))
 * @param displacement [m3/rev] displacement V
 * @param pressure [Pa] outlet pressure dp
 * @param deliveredShare [1] share s of its flow that it delivers: 1, less where the suction starves it
 * @param torqueLossRef [N.m] torque lost at the reference point
 * @param pressureRef [Pa] pressure of the reference point, above 0
 * @param speed [rev/s] shaft speed n
 * @param mu [Pa.s] dynamic viscosity
 * @param speedRef [rev/s] speed of the reference point, above 0
 * @param muRef [Pa.s] dynamic viscosity of the reference point, above 0
 * @returns [N.m] shaft torque
 * Valid: 0 to 250 bar; the split 70/30 and the bound 10 are assumptions.
 * Source: torque balance; split from efficiency bands of gear pumps (from memory), no source.
 */
export const pumpTorque = (
  displacement: CubicMetresPerRev,
  pressure: Pascals,
  deliveredShare: Share,
  torqueLossRef: NewtonMetres,
  pressureRef: Pascals,
  speed: RevsPerSecond,
  mu: PascalSeconds,
  speedRef: RevsPerSecond,
  muRef: PascalSeconds,
): NewtonMetres => {
  const viscous = Math.min(MOST_VISCOUS, (mu * speed) / (muRef * speedRef))
  const loss = torqueLossRef * ((PRESSURE_SHARE * pressure) / pressureRef + (1 - PRESSURE_SHARE) * viscous)
  return (deliveredShare * displacement * pressure) / TURN + loss
}

/**
 * Torque lost at the reference point, from a stated hydromechanical efficiency.
 * T_ref = V dp/2pi (1/eta_hm - 1)
 * @param displacement [m3/rev] displacement
 * @param referencePressure [Pa] pressure of the reference point
 * @param hydromechanical [1] hydromechanical efficiency at the reference point
 * @returns [N.m] torque loss
 * Valid: efficiency above 0 to 1.
 * Source: ISO 4391, definition of hydromechanical efficiency (from memory).
 */
export const torqueLossFromEfficiency = (
  displacement: CubicMetresPerRev,
  referencePressure: Pascals,
  hydromechanical: Share,
): NewtonMetres => ((displacement * referencePressure) / TURN) * (1 / hydromechanical - 1)

/**
 * Torque of a displacement and a pressure without any loss, of a pump or a motor.
 * T = V dp/2pi
 * @param displacement [m3/rev] displacement
 * @param pressure [Pa] pressure difference
 * @returns [N.m] torque
 * Valid: always.
 * Source: work of one turn.
 */
export const theoreticalTorque = (displacement: CubicMetresPerRev, pressure: Pascals): NewtonMetres =>
  (displacement * pressure) / TURN

/**
 * Volumetric efficiency of a pump.
 * eta_v = Q/(V n)
 * @param flow [m3/s] delivered flow
 * @param displacement [m3/rev] displacement
 * @param speed [rev/s] shaft speed, above 0
 * @returns [1] volumetric efficiency
 * Valid: speed above 0.
 * Source: ISO 4391 (from memory).
 */
export const pumpVolumetricEfficiency = (
  flow: CubicMetresPerSecond,
  displacement: CubicMetresPerRev,
  speed: RevsPerSecond,
): Share => flow / (displacement * speed)

/**
 * Hydromechanical efficiency of a pump.
 * eta_hm = V dp/(2pi T)
 * @param displacement [m3/rev] displacement
 * @param pressure [Pa] pressure difference
 * @param torque [N.m] shaft torque, above 0
 * @returns [1] hydromechanical efficiency
 * Valid: torque above 0.
 * Source: ISO 4391 (from memory).
 */
export const pumpHydromechanicalEfficiency = (
  displacement: CubicMetresPerRev,
  pressure: Pascals,
  torque: NewtonMetres,
): Share => (displacement * pressure) / (TURN * torque)

/**
 * Hydraulic power.
 * P = Q dp
 * @param flow [m3/s] flow
 * @param pressure [Pa] pressure difference
 * @returns [W] power
 * Valid: always.
 * Source: definition.
 */
export const hydraulicPower = (flow: CubicMetresPerSecond, pressure: Pascals): Watts => flow * pressure

/**
 * Power of a shaft.
 * P = 2pi n T
 * @param torque [N.m] torque
 * @param speed [rev/s] shaft speed
 * @returns [W] power
 * Valid: always.
 * Source: definition.
 */
export const shaftPower = (torque: NewtonMetres, speed: RevsPerSecond): Watts => TURN * torque * speed
