/** Which reading is named for what was assumed, and in which order. */
import { describe, expect, test } from 'vitest'
import type { Readings } from '../../src/question.ts'
import { readingsWorth } from '../../src/survey/readings.ts'

const none: Readings = {
  travel: null,
  engineSpeed: null,
  reliefPressure: [],
  flows: [],
  inletPressure: [],
  oilTemperature: null,
}
const oilRead: Readings = { ...none, oilTemperature: { reading: 80, after: 3600, ambient: 20 } }

describe('readings that are worth it', () => {
  test('the strongest first: a per cent of speed weighs as much as a kelvin of oil', () => {
    const found = [
      { path: 'engine.governor-droop', speed: 0.01, oil: 0 },
      { path: 'travel.swivel.bore', speed: 0.001, oil: 4 },
      { path: 'circuits.main.relief.setting', speed: null, oil: 2 },
    ]
    expect(readingsWorth(found, none).map(({ path, effectOnSpeedPercent }) => [path, effectOnSpeedPercent])).toEqual([
      ['travel.swivel.bore', 0.1],
      ['circuits.main.relief.setting', null],
      ['engine.governor-droop', 1],
    ])
  })

  // sqrt(3^2 + 4^2) = 5
  test('both heat transfers are told by one reading of the oil, their squares added', () => {
    const found = [
      { path: 'reservoir.heat-transfer', speed: 0, oil: 3 },
      { path: 'other-heat-transfer', speed: 0, oil: 4 },
    ]
    expect(readingsWorth(found, none)).toMatchObject([
      { path: 'measured.oil-temperature.reading', label: 'Oil temperature at work', effectOnOilK: 5 },
    ])
  })

  test('once it was read, what has no entry of its own is left out', () => {
    const found = [
      { path: 'reservoir.heat-transfer', speed: 0, oil: 3 },
      { path: 'other-heat-transfer', speed: 0, oil: 4 },
    ]
    expect(readingsWorth(found, oilRead).map(({ path }) => path)).toEqual(['reservoir.heat-transfer'])
  })

  test('what moves nothing is not worth a reading; circuits are told apart', () => {
    const found = [
      { path: 'travel.motor.efficiency.starting', speed: 0.0001, oil: 0.01 },
      { path: 'circuits.left.pump.displacement', speed: 0.02, oil: 0 },
    ]
    expect(readingsWorth(found, none).map(({ label }) => label)).toEqual(['Pump: displacement (left)'])
  })
})
