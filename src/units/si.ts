/**
 * SI types. Inside the tool every quantity is SI and its unit is in its type: a pressure cannot be passed where a flow
 * is asked for. The mark is optional, so that the result of plain arithmetic needs no cast; conversions from and to the
 * shop's units are in shop-units.ts.
 */
type Unit<Name extends string> = number & { readonly unit?: Name }

export type Metres = Unit<'m'>
export type SquareMetres = Unit<'m2'>
export type CubicMetres = Unit<'m3'>
export type Kilograms = Unit<'kg'>
export type Seconds = Unit<'s'>
export type Pascals = Unit<'Pa'>
/** Absolute where the name says so, else gauge. */
export type CubicMetresPerSecond = Unit<'m3/s'>
/** Displacement of a pump or motor for one turn of its shaft. */
export type CubicMetresPerRev = Unit<'m3/rev'>
/** Turns a second, not radians. */
export type RevsPerSecond = Unit<'rev/s'>
export type NewtonMetres = Unit<'N.m'>
export type Newtons = Unit<'N'>
export type Watts = Unit<'W'>
export type WattsPerKelvin = Unit<'W/K'>
/** Heat transfer coefficient. */
export type WattsPerSquareMetreKelvin = Unit<'W/(m2.K)'>
export type JoulesPerKelvin = Unit<'J/K'>
export type JoulesPerKilogramKelvin = Unit<'J/(kg.K)'>
export type MetresPerSecond = Unit<'m/s'>
/** Kinematic viscosity. */
export type SquareMetresPerSecond = Unit<'m2/s'>
/** Dynamic viscosity. */
export type PascalSeconds = Unit<'Pa.s'>
export type KilogramsPerCubicMetre = Unit<'kg/m3'>
/** Temperatures are degrees Celsius everywhere; differences are kelvins. */
export type Celsius = Unit<'degC'>
export type Kelvins = Unit<'K'>
export type Amperes = Unit<'A'>
/** 0.15 for 15 %. */
export type Share = Unit<'1'>

/** Standard gravity [m/s2], exact (ISO 80000-3). */
export const GRAVITY = 9.80665
