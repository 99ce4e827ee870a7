/**
 * Hoses and tubes: velocity, Reynolds number, friction, ends and elbows. Everything here is hydraulically smooth drawn
 * tube or hose; rough pipe is not covered.
 */
import type {
  CubicMetresPerSecond,
  KilogramsPerCubicMetre,
  Metres,
  MetresPerSecond,
  Pascals,
  SquareMetresPerSecond,
} from '../units/si.ts'

const INCH = 0.0254
/** Flush entrance and outlet into standing oil: one of each per line. */
const ENTRANCE_AND_EXIT = 0.5 + 1

/**
 * Mean velocity in a round bore.
 * v = 4 Q/(pi D2)
 * @param flow [m3/s] flow
 * @param bore [m] inside diameter
 * @returns [m/s] mean velocity
 * Valid: bore above 0.
 * Source: continuity.
 */
export const meanVelocity = (flow: CubicMetresPerSecond, bore: Metres): MetresPerSecond =>
  (4 * flow) / (Math.PI * bore * bore)

/**
 * Bore that gives a mean velocity.
 * D = sqrt(4 Q/(pi v))
 * @param flow [m3/s] flow
 * @param velocity [m/s] mean velocity
 * @returns [m] inside diameter
 * Valid: flow 0 and more, velocity above 0.
 * Source: continuity.
 */
export const boreForVelocity = (flow: CubicMetresPerSecond, velocity: MetresPerSecond): Metres =>
  Math.sqrt((4 * flow) / (Math.PI * velocity))

/**
 * Reynolds number.
 * Re = v D/nu
 * @param velocity [m/s] mean velocity
 * @param bore [m] inside diameter
 * @param nu [m2/s] kinematic viscosity
 * @returns [-] Reynolds number
 * Valid: always.
 * Source: definition.
 */
export const reynolds = (velocity: MetresPerSecond, bore: Metres, nu: SquareMetresPerSecond): number =>
  (velocity * bore) / nu

/**
 * Darcy friction factor of a hose assembly. Crimped ends trip the flow early, so the larger of the two laws holds.
 * f = max(64/Re, 0.3164 Re^-0.25)
 * @param re [-] Reynolds number
 * @returns [-] Darcy friction factor
 * Valid: Re above 0 to 1e5; -6 to +19 % against a published hose table.
 * Source: Hagen-Poiseuille and Blasius; the rule fitted to a hose maker's table of 55 points.
 */
export const hoseFrictionFactor = (re: number): number => Math.max(64 / re, 0.3164 * re ** -0.25)

/**
 * Loss coefficient of a 90° elbow.
 * K = 800/Re + 0.40 (1 + 1/D_inch)
 * @param re [-] Reynolds number
 * @param bore [m] inside diameter
 * @returns [-] loss coefficient on the velocity head
 * Valid: Re above 0, bores of 5 to 50 mm.
 * Source: Hooper, two-K method, Chemical Engineering 1981 (constants from memory).
 */
export const elbowLoss = (re: number, bore: Metres): number => 800 / re + 0.4 * (1 + INCH / bore)

/**
 * Pressure drop of a loss coefficient.
 * dp = K rho v2/2
 * @param coefficient [-] loss coefficient
 * @param velocity [m/s] mean velocity in the bore that the coefficient refers to
 * @param rho [kg/m3] density
 * @returns [Pa] pressure drop
 * Valid: Re above 1000; below it coefficients rise.
 * Source: definition.
 */
export const lossCoefficientDrop = (
  coefficient: number,
  velocity: MetresPerSecond,
  rho: KilogramsPerCubicMetre,
): Pascals => (coefficient * rho * velocity * velocity) / 2

/**
 * Pressure drop of a line with its elbows, entrance and exit. Written without a division by Re, so that it goes to zero
 * with the flow.
 * dp = (f L/D + elbows K_elbow + 0.5 + 1.0) rho v2/2
 * @param flow [m3/s] flow; 0 and less give 0
 * @param bore [m] inside diameter
 * @param length [m] straight length
 * @param elbows [-] number of 90° elbows
 * @param nu [m2/s] kinematic viscosity
 * @param rho [kg/m3] density
 * @returns [Pa] pressure drop
 * Valid: bore above 0, Re to 1e5.
 * Source: Darcy-Weisbach with hoseFrictionFactor and elbowLoss.
 */
export const lineDrop = (
  flow: CubicMetresPerSecond,
  bore: Metres,
  length: Metres,
  elbows: number,
  nu: SquareMetresPerSecond,
  rho: KilogramsPerCubicMetre,
): Pascals => {
  if (!(flow > 0)) return 0
  const v = (4 * flow) / (Math.PI * bore * bore)
  const nuOverBore = nu / bore
  // f v2: 64 nu v/D laminar, 0.3164 (nu/D)^0.25 v^1.75 turbulent.
  const root = Math.sqrt(v)
  const friction = Math.max(64 * nuOverBore * v, 0.3164 * Math.sqrt(Math.sqrt(nuOverBore)) * v * root * Math.sqrt(root))
  const elbow = 800 * nuOverBore * v + 0.4 * (1 + INCH / bore) * v * v
  return (rho / 2) * ((friction * length) / bore + elbows * elbow + ENTRANCE_AND_EXIT * v * v)
}

/** A line's drop as powers of the flow: max(laminar Q, turbulent Q^1.75) + linear Q + square Q^2. */
export interface LineCoefficients {
  readonly laminar: number
  readonly turbulent: number
  readonly linear: number
  readonly square: number
}

/**
 * The drop of lineDrop as powers of the flow, for solving: worked out once a temperature, it makes a flow cost a few
 * multiplications.
 * dp = max(a Q, b Q^1.75) + c Q + d Q^2
 * @param bore [m] inside diameter
 * @param length [m] straight length
 * @param elbows [-] number of 90° elbows
 * @param nu [m2/s] kinematic viscosity
 * @param rho [kg/m3] density
 * @returns [Pa, m3/s] the four coefficients
 * Valid: as lineDrop.
 * Source: lineDrop, with v = 4 Q/(pi D2).
 */
export const lineCoefficients = (
  bore: Metres,
  length: Metres,
  elbows: number,
  nu: SquareMetresPerSecond,
  rho: KilogramsPerCubicMetre,
): LineCoefficients => {
  const perFlow = 4 / (Math.PI * bore * bore)
  const nuOverBore = nu / bore
  const head = rho / 2
  const root = Math.sqrt(perFlow)
  const friction = (head * length) / bore
  return {
    laminar: friction * 64 * nuOverBore * perFlow,
    turbulent: friction * 0.3164 * Math.sqrt(Math.sqrt(nuOverBore)) * perFlow * root * Math.sqrt(root),
    linear: head * elbows * 800 * nuOverBore * perFlow,
    square: head * (elbows * 0.4 * (1 + INCH / bore) + ENTRANCE_AND_EXIT) * perFlow * perFlow,
  }
}

/**
 * Straight length of the same bore that drops as much as a fitting.
 * Le = K D/f
 * @param coefficient [-] loss coefficient of the fitting
 * @param bore [m] inside diameter
 * @param friction [-] Darcy friction factor of the bore at that flow
 * @returns [m] equivalent length
 * Valid: friction above 0.
 * Source: Darcy-Weisbach.
 */
export const equivalentLength = (coefficient: number, bore: Metres, friction: number): Metres =>
  (coefficient * bore) / friction

/**
 * Pressure drop of a straight bore.
 * dp = f L/D rho v2/2
 * @param friction [-] Darcy friction factor
 * @param length [m] length
 * @param bore [m] inside diameter
 * @param velocity [m/s] mean velocity
 * @param rho [kg/m3] density
 * @returns [Pa] pressure drop
 * Valid: bore above 0.
 * Source: Darcy-Weisbach.
 */
export const straightDrop = (
  friction: number,
  length: Metres,
  bore: Metres,
  velocity: MetresPerSecond,
  rho: KilogramsPerCubicMetre,
): Pascals => (((friction * length) / bore) * rho * velocity * velocity) / 2
