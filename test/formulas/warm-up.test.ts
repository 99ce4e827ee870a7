/** The lumped warm-up against a general integrator and its closed form. */
import odex from 'odex'
import { describe, expect, test } from 'vitest'
import { lumpedTemperature, settledTemperature, timeConstant, timeToTemperature } from '../../src/formulas/thermal.ts'

/** 2.5 kW, 20 W/K, 18 L of oil at 1.70 MJ/m3K and 45 kg of steel, from 25 °C in 20 °C. */
const capacity = 0.018 * 1.7e6 + 45 * 480
const conductance = 20
const tau = timeConstant(capacity, conductance)
const end = settledTemperature(20, 2500, conductance)

describe('lumped warm-up', () => {
  test('closed form by hand: 145 - 120 exp(-t/tau) from 25 °C in 20 °C with 2.5 kW over 20 W/K', () => {
    expect(end).toBeCloseTo(145, 12)
    expect(lumpedTemperature(25, end, tau, 3600)).toBeCloseTo(145 - 120 * Math.exp((-3600 * 20) / capacity), 9)
  })

  /** Published check of a warm-up: 2.5 kW, 20 W/K, from 20 °C in 25 °C, time constant 2606.9 s: 117.33 °C after an hour. */
  test('117.33 °C after an hour', () => {
    expect(lumpedTemperature(20, settledTemperature(25, 2500, 20), 2606.9, 3600)).toBeCloseTo(117.33, 2)
  })

  test('as odex integrates it', () => {
    const solver = new odex.Solver(1)
    solver.absoluteTolerance = 1e-11
    solver.relativeTolerance = 1e-11
    const { y } = solver.solve((_, [oil = 0]) => [(2500 - conductance * (oil - 20)) / capacity], 0, [25], 3600)
    expect(lumpedTemperature(25, end, tau, 3600)).toBeCloseTo(y[0] ?? 0, 7)
  })

  test('the time to a temperature is the inverse', () => {
    const time = timeToTemperature(25, end, tau, 82)
    expect(time).not.toBeNull()
    expect(lumpedTemperature(25, end, tau, time ?? 0)).toBeCloseTo(82, 9)
    expect(timeToTemperature(25, end, tau, end + 1)).toBeNull()
    expect(timeToTemperature(25, end, tau, 25)).toBe(0)
    expect(timeToTemperature(25, end, tau, 24)).toBeNull()
  })
})
