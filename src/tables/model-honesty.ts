/**
 * How far the motor model is off where nothing but the plate is known: relative error of its speed over 357 points of
 * published tables of orbital motors (185 to 500 cm3/rev, 14 L/min and more, up to 110 bar), p10, p50 and p90. The label's
 * displacement is the largest part of it.
 * Source: test/motor-tables.test.ts over test/reference/measured.json; the test fails where these figures drift.
 */
export const MOTOR_HONESTY = { speed: { p10: -0.035, p50: -0.005, p90: 0.058 } } as const

/**
 * The same as the half-width of an even spread: eight draws in ten of an even spread lie within 0.8 of its half-width.
 * Ranges take it for a motor whose efficiency nobody states.
 */
export const PLATE_ALONE_SPREAD = (MOTOR_HONESTY.speed.p90 - MOTOR_HONESTY.speed.p10) / 2 / 0.8
