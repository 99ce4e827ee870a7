/**
 * Anything with a stated drop at a stated flow: valves, blocks, coolers, couplers (turbulent, with the square of the
 * flow) and filter elements and strainers (laminar, with flow and viscosity); orifices; counterbalance pilots.
 */
import type {
  CubicMetresPerSecond,
  KilogramsPerCubicMetre,
  MetresPerSecond,
  Pascals,
  SquareMetres,
  SquareMetresPerSecond,
} from '../units/si.ts'

/** Density at which reference drops are stated [kg/m3]: mineral oil near 45 °C. */
const REFERENCE_DENSITY = 850

/**
 * Drop of a turbulent restriction from its reference point.
 * dp = dp_ref (Q/Q_ref)2 rho/850
 * @param flow [m3/s] flow; 0 and less give 0
 * @param refFlow [m3/s] flow of the reference point, above 0
 * @param refDrop [Pa] drop at the reference point
 * @param rho [kg/m3] density
 * @returns [Pa] pressure drop
 * Valid: turbulent flow; on cold oil the real drop is larger.
 * Source: orifice equation; reference density 850 kg/m3 by common practice, no source.
 */
export const quadraticDrop = (
  flow: CubicMetresPerSecond,
  refFlow: CubicMetresPerSecond,
  refDrop: Pascals,
  rho: KilogramsPerCubicMetre,
): Pascals => {
  if (!(flow > 0)) return 0
  const ratio = flow / refFlow
  return (refDrop * ratio * ratio * rho) / REFERENCE_DENSITY
}

/**
 * Flow that a turbulent restriction passes at a drop: the inverse of quadraticDrop.
 * Q = Q_ref sqrt(dp/dp_ref 850/rho)
 * @param drop [Pa] pressure drop; 0 and less give 0
 * @param refFlow [m3/s] flow of the reference point
 * @param refDrop [Pa] drop at the reference point, above 0
 * @param rho [kg/m3] density
 * @returns [m3/s] flow
 * Valid: turbulent flow.
 * Source: orifice equation.
 */
export const quadraticFlow = (
  drop: Pascals,
  refFlow: CubicMetresPerSecond,
  refDrop: Pascals,
  rho: KilogramsPerCubicMetre,
): CubicMetresPerSecond => (drop > 0 ? refFlow * Math.sqrt(((drop / refDrop) * REFERENCE_DENSITY) / rho) : 0)

/**
 * Drop of a laminar restriction (filter element, strainer) from its reference point.
 * dp = dp_ref (Q/Q_ref)(nu/nu_ref)
 * @param flow [m3/s] flow; 0 and less give 0
 * @param refFlow [m3/s] flow of the reference point, above 0
 * @param refDrop [Pa] drop at the reference point
 * @param nu [m2/s] kinematic viscosity
 * @param nuRef [m2/s] kinematic viscosity of the reference point
 * @returns [Pa] pressure drop
 * Valid: clean element, laminar flow in the medium.
 * Source: Darcy's law; common practice of element sizing.
 */
export const laminarDrop = (
  flow: CubicMetresPerSecond,
  refFlow: CubicMetresPerSecond,
  refDrop: Pascals,
  nu: SquareMetresPerSecond,
  nuRef: SquareMetresPerSecond,
): Pascals => (flow > 0 ? (refDrop * (flow / refFlow) * nu) / nuRef : 0)

/**
 * Flow through an orifice.
 * Q = Cd A sqrt(2 dp/rho)
 * @param coefficient [-] discharge coefficient, 0.6 to 0.8
 * @param area [m2] area of the hole
 * @param drop [Pa] pressure drop; 0 and less give 0
 * @param rho [kg/m3] density
 * @returns [m3/s] flow
 * Valid: Re above 1000 to 10000, by the edge.
 * Source: Bernoulli with a discharge coefficient; Esposito, Fluid Power with Applications, ch. 8.
 */
export const orificeFlow = (
  coefficient: number,
  area: SquareMetres,
  drop: Pascals,
  rho: KilogramsPerCubicMetre,
): CubicMetresPerSecond => (drop > 0 ? coefficient * area * Math.sqrt((2 * drop) / rho) : 0)

/**
 * Loss coefficient that a drop at a velocity stands for.
 * K = 2 dp/(rho v2)
 * @param drop [Pa] pressure drop
 * @param velocity [m/s] mean velocity in the bore that the coefficient is to refer to, above 0
 * @param rho [kg/m3] density
 * @returns [-] loss coefficient
 * Valid: turbulent flow.
 * Source: definition.
 */
export const lossCoefficientOf = (drop: Pascals, velocity: MetresPerSecond, rho: KilogramsPerCubicMetre): number =>
  (2 * drop) / (rho * velocity * velocity)

/**
 * Pilot pressure that opens a counterbalance valve.
 * p = (p_set - p_load)/R
 * @param setting [Pa] relief setting of the valve
 * @param load [Pa] pressure that the load induces
 * @param ratio [-] pilot ratio
 * @returns [Pa] pilot pressure
 * Valid: no back pressure, or a vented valve.
 * Source: balance of forces on the spool (from memory).
 */
export const counterbalancePilot = (setting: Pascals, load: Pascals, ratio: number): Pascals => (setting - load) / ratio
