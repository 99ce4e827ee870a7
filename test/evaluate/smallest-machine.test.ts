/**
 * A machine with nothing but its plates is worked out as far as it goes. Its oil is worked out with the tank alone to cool
 * it (method: the other surface is 0 m2 unless it is stated), which no machine is: the answer says so, and waits for the
 * reading that would tell.
 */
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { readAll } from '../../src/scenario/read.ts'

const MACHINE = `format: 1
machine: {name: Barrow 7, type: tracked dumper, mass: 700 kg}
engine: {net-power: 13 hp, rated-speed: 3600 rpm}
fluid: {grade: ISO VG 46}
reservoir: {volume: 12 L, cooling-surface: 0.4 m2}
circuits:
  main: {pump: {displacement: 8 cm3/rev}, relief: {setting: 2300 psi}, drives: both tracks}
travel:
  motor: {displacement: 250 cm3/rev}
  sprocket: {pitch-diameter: 180 mm}
  track: {gauge: 0.6 m, ground-contact-length: 0.8 m}
`
const SCENARIO = `format: 1
title: Does it get too hot?
asked: Will it last the summer?
customer: {name: A. Customer}
machine: machines/barrow-7.yaml
site: {ambient: 28 °C}
`
const answer = (machine = MACHINE, scenario = SCENARIO) => {
  const read = readAll(
    { file: 'q.yaml', text: scenario },
    { file: 'machines/barrow-7.yaml', text: machine },
    [{ file: 'shop/shop.yaml', text: 'format: 1\nshop: {name: Shop}\n' }],
    'shop',
  )
  if ('problems' in read) throw new Error(read.problems.map(({ message }) => message).join('; '))
  return evaluate(read.loaded)
}

describe('the smallest machine', () => {
  const result = answer()

  test('has a speed: what the pump gives at rated speed, less a few per cent, through the motors', () => {
    // 8 cm3 x 3600 rpm = 28.8 L/min; half of it over 250 cm3 turns a motor at 57.6 rpm; x pi x 0.18 m = 32.6 m/min = 1.95 km/h.
    const ideal = ((8 * 3600) / 2 / 250) * Math.PI * 0.18 * (60 / 1000)
    expect(result.baseline.travel.level.speedKmh).toBeGreaterThan(0.8 * ideal)
    expect(result.baseline.travel.level.speedKmh).toBeLessThan(1.08 * ideal) // the governor runs up to 8 % above rated speed
  })

  test('is measured first, for the temperature of its tank', () => {
    const { kind, provisional, reasons } = result.recommendation
    expect([kind, provisional]).toEqual(['measure-first', true])
    expect(reasons.map(({ code }) => code)).toEqual(['data-missing'])
    expect(reasons[0]?.text).toContain('Read the temperature of the tank')
  })

  test('names the assumption, and the reading that replaces it before all others, with its effect', () => {
    expect(result.restsOn).toEqual(['other-cooling-surface'])
    expect(result.assumptions).toContainEqual({
      path: 'other-cooling-surface',
      value: 0,
      unit: 'm2',
      from: 'default',
      tolerance: null,
    })
    expect(result.readings[0]?.path).toBe('measured.oil-temperature.reading')
    expect(result.readings[0]?.effectOnOilK).toBeGreaterThan(10)
  })

  test('a tank that was read, or a surface that is stated, is asked for no more', () => {
    const read = `${SCENARIO}measured: {oil-temperature: {reading: 71 °C, after: 60 min, ambient: 26 °C}}\n`
    expect(answer(MACHINE, read).restsOn).toEqual([])
    expect(answer(MACHINE.replace('circuits:', 'other-cooling-surface: 1.6 m2\ncircuits:')).restsOn).toEqual([])
  })
})
