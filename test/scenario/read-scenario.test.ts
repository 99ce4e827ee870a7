/** Site, duty, readings and wishes in SI; defaults as the method has them. */
import { describe, expect, test } from 'vitest'
import type { Duty } from '../../src/machine.ts'
import { type Edit, problemsOf, SCENARIO, sample } from '../fixtures/fernhill.ts'

const scenario = (...edits: Edit[]) => sample(...edits).scenario
const assumed = (path: string, ...edits: Edit[]) => sample(...edits).assumptions.find((entry) => entry.path === path)
const without = (key: string): Edit => [SCENARIO, new RegExp(`\\n\\s*${key}:[^\\n]*`, 'u'), '']

describe('site', () => {
  test('as written', () =>
    expect(scenario().site).toMatchObject({
      ambient: 31,
      coldestStart: -6,
      altitude: 240,
      steepestGrade: 0.2,
      trip: 350,
    }))
  test.each<[string, string, number | string, string]>([
    ['coldest-start', 'site.coldest-start', 31, '°C'],
    ['altitude', 'site.altitude', 0, 'm'],
    ['ground', 'site.ground', 'firm soil', ''],
    ['steepest-grade', 'site.steepest-grade', 15, '%'],
  ])('%s by default', (key, path, value, unit) =>
    expect(assumed(path, without(key))).toMatchObject({ value, unit, from: 'default' }),
  )
  test('defaults reach the site', () =>
    expect(scenario(without('coldest-start'), without('altitude'), without('steepest-grade')).site).toMatchObject({
      coldestStart: 31,
      altitude: 0,
      steepestGrade: 0.15,
    }))
  test('units of another country', () =>
    // (88 - 32) / 1.8 = 31.1; 800 ft = 243.84 m
    expect(scenario([SCENARIO, '31 °C', '88 °F'], [SCENARIO, '240 m', '800 ft']).site).toMatchObject({
      ambient: expect.closeTo(31.1111, 3) as number,
      altitude: expect.closeTo(243.84, 9) as number,
    }))
  test('a figure marked (assumed) is listed', () =>
    expect(assumed('site.trip', [SCENARIO, 'trip: 350 m', 'trip: 350 m (assumed)'])).toMatchObject({
      value: 350,
      unit: 'm',
      from: 'assumed',
    }))
})

const DUTY = /duty: \{[^}]*\}/u
const duty = (text: string): Duty => scenario([SCENARIO, DUTY, text]).duty

describe('duty', () => {
  test('as written, to the last digit', () =>
    expect(scenario().duty).toEqual({
      travel: 0.2,
      work: { share: 0.5, pressure: null, useful: 0.6 },
      relief: 0.08,
      attachment: 0,
      idle: 0.22,
    }))
  test('a missing idle share is filled up, and said', () => {
    const edit: Edit = [SCENARIO, DUTY, 'duty: { travel: 30 %, work: 45 % }']
    expect(scenario(edit).duty.idle).toBeCloseTo(0.25, 12)
    expect(assumed('duty.idle', edit)).toMatchObject({ value: 25, unit: '%' })
  })
  test('work with its pressure and what of it is useful', () =>
    expect(duty('duty: { travel: 20 %, work: { share: 50 %, pressure: 60 bar, useful: 55 % } }').work).toEqual({
      share: 0.5,
      pressure: 60e5,
      useful: 0.55,
    }))
  test('none written: travel 20, work 50, relief 5, idle 25', () => {
    expect(duty('')).toEqual({
      travel: 0.2,
      work: { share: 0.5, pressure: null, useful: 0.6 },
      relief: 0.05,
      attachment: 0,
      idle: 0.25,
    })
    expect(assumed('duty', [SCENARIO, DUTY, ''])?.from).toBe('default')
  })
  test('rounded shares are taken as a whole', () => {
    const { travel, work, idle } = duty('duty: { travel: 33.3 %, work: 33.3 %, idle: 33.3 % }')
    expect(travel + work.share + idle).toBeCloseTo(1, 12)
  })
})

describe('readings', () => {
  test('a timed run', () =>
    expect(scenario().readings.travel).toEqual({ distance: 20, time: 31.4, oil: 48, tolerance: 0.015 }))
  test('a stated error of the clock', () =>
    // 0.6 s of 31.4 s
    expect(scenario([SCENARIO, '31.4 s', '31.4 s ± 0.6 s']).readings.travel?.tolerance).toBeCloseTo(0.6 / 31.4, 12))
  test('oil that nobody wrote down is 50 °C, an assumption', () => {
    const edit: Edit = [SCENARIO, ', oil: 48 °C', '']
    expect(scenario(edit).readings.travel?.oil).toBe(50)
    expect(assumed('measured.travel.oil', edit)).toMatchObject({ value: 50, unit: '°C' })
  })
  test('one relief reading holds for all circuits', () =>
    expect(scenario().readings.reliefPressure).toEqual([{ circuit: null, pressure: 152e5 }]))
  test('or each its own', () =>
    expect(
      scenario([SCENARIO, 'relief-pressure: 152 bar', 'relief-pressure: [{ circuit: main, pressure: 149 bar }]'])
        .readings.reliefPressure,
    ).toEqual([{ circuit: 'main', pressure: 149e5 }]))
  test('an inlet pressure may be below the atmosphere', () =>
    expect(scenario().readings.inletPressure[0]?.pressure).toBeCloseTo(-15_000, 6))
  test('flows with their engine speed and oil', () =>
    expect(scenario().readings.flows[0]).toMatchObject({ circuit: null, pressure: 7e5, engineSpeed: 50, oil: 50 }))
  test('a tank temperature after so many minutes', () =>
    expect(scenario().readings.oilTemperature).toEqual({ reading: 84, after: 4200, ambient: 29 }))
  test('nothing measured is nothing', () =>
    expect(scenario([SCENARIO, /\nmeasured:[\s\S]*?\nstatus/u, '\nstatus']).readings).toEqual({
      travel: null,
      engineSpeed: null,
      reliefPressure: [],
      flows: [],
      inletPressure: [],
      oilTemperature: null,
    }))
})

describe('status, wishes, ways that change nothing', () => {
  test.each(['yes', 'no', 'true', 'false', '"yes"', '"false"'])('warranty: %s', (word) => {
    const edits: Edit[] = word === 'no' ? [] : [[SCENARIO, 'warranty: no', `warranty: ${word}`]]
    expect(scenario(...edits).status.warranty).toBe(/yes|true/u.test(word))
  })
  test('a wished speed', () => expect(scenario().wants.travelSpeed).toBeCloseTo(4.8 / 3.6, 12))
  test('a way that saves time', () => expect(scenario().alternatives[0]?.saves).toBe(2400))
  test('an attachment', () =>
    expect(
      scenario(
        [SCENARIO, 'attachment: null', 'attachment: { name: stump grinder, flow: 38 L/min, pressure: 150 bar }'],
        [SCENARIO, 'attachment: 0 %, idle: 22 %', 'attachment: 10 %'],
      ),
    ).toMatchObject({ attachment: { name: 'stump grinder', pressure: 150e5 }, duty: { attachment: 0.1 } }))
  test('a colder start than any place has', () =>
    expect(problemsOf([SCENARIO, '-6 °C', '-66 °C'])[0]?.code).toBe('number-out-of-range'))
})
