/**
 * Plausible is told apart from right: figures of absurd size are read and asked about, those of real machines are not. What
 * is absurd is common practice, no source; each of these was met as a slip of a unit, a digit or a line.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { machinePathIn, readAll } from '../../src/scenario/read.ts'
import { USUAL_OF_A_MACHINE, USUAL_OF_A_SCENARIO } from '../../src/tables/usual-figures.ts'
import { type Edit, MACHINE, readSample, SCENARIO, sample } from '../fixtures/fernhill.ts'

const askedOf = (...edits: readonly Edit[]): readonly string[] => {
  const read = readSample(...edits)
  if ('problems' in read) return read.problems.map(({ code }) => `refused: ${code}`)
  return read.loaded.askedAbout.map(({ path, option }) => (option === null ? path : `${path} of ${option}`))
}

describe('absurd, and asked about', () => {
  test.each<[string, Edit, string]>([
    [
      'a relief in psi that was called bar',
      [MACHINE, 'setting: 155 bar', 'setting: 1550 bar'],
      'circuits.main.relief.setting',
    ],
    ['a relief of next to nothing', [MACHINE, 'setting: 155 bar', 'setting: 2.3 bar'], 'circuits.main.relief.setting'],
    ['a pump a hundred times too large', [MACHINE, '7.9 cm3/rev', '790 cm3/rev'], 'circuits.main.pump.displacement'],
    ['a mass without a digit', [MACHINE, 'mass: 980 kg', 'mass: 98 kg'], 'machine.mass'],
    ['a mass in tonnes that was pounds', [MACHINE, 'mass: 980 kg', 'mass: 90 t'], 'machine.mass'],
    ['an engine of a lorry', [MACHINE, 'net-power: 8.6 kW', 'net-power: 900 kW'], 'engine.net-power'],
    [
      'an engine that turns like a drill',
      [MACHINE, 'rated-speed: 3000 rpm', 'rated-speed: 30000 rpm'],
      'engine.rated-speed',
    ],
    ['a tank of a road tanker', [MACHINE, 'volume: 13 L', 'volume: 2000 L'], 'reservoir.volume'],
    ['a tank in cubic centimetres', [MACHINE, 'volume: 13 L', 'volume: 13 cm3'], 'reservoir.volume'],
    [
      'a tank that is a wall',
      [MACHINE, 'cooling-surface: 0.5 m2', 'cooling-surface: 50 m2'],
      'reservoir.cooling-surface',
    ],
    ['tracks as far apart as a house is wide', [MACHINE, 'gauge: 0.76 m', 'gauge: 6 m'], 'travel.track.gauge'],
    [
      'a sprocket in metres',
      [MACHINE, 'pitch-diameter: 262 mm', 'pitch-diameter: 2.62 m'],
      'travel.sprocket.pitch-diameter',
    ],
    ['a hose as long as a street', [MACHINE, 'length: 0.9 m', 'length: 90 m'], 'circuits.main.lines.pressure.length'],
    ['a drilling of a finger’s width', [MACHINE, 'bore: 6 mm', 'bore: 60 mm'], 'travel.swivel.bore'],
    ['ten cylinders', [MACHINE, 'cylinders: 3', 'cylinders: 10'], 'engine.cylinders'],
    [
      'oil that is colder than the air',
      [SCENARIO, 'reading: 84 °C', 'reading: 5 °C'],
      'measured.oil-temperature.reading',
    ],
    ['oil that fries', [SCENARIO, 'reading: 84 °C', 'reading: 184 °C'], 'measured.oil-temperature.reading'],
    [
      'a start that is warmer than the day',
      [SCENARIO, 'coldest-start: -6 °C', 'coldest-start: 36 °C'],
      'site.coldest-start',
    ],
    ['a course of a metre', [SCENARIO, 'distance: 20 m', 'distance: 1 m'], 'measured.travel.distance'],
    [
      'a relief that was read in psi',
      [SCENARIO, 'relief-pressure: 152 bar', 'relief-pressure: 1520 bar'],
      'measured.relief-pressure',
    ],
    ['a wish for the motorway', [SCENARIO, 'travel-speed: 4.8 km/h', 'travel-speed: 48 km/h'], 'wants.travel-speed'],
    [
      'a change that is absurd',
      [SCENARIO, 'part: pump-a-158 }', 'displacement: 158 cm3/rev }'],
      'circuits.main.pump.displacement of Bigger pump',
    ],
  ])('%s', (_, edit, path) => expect(askedOf(edit)).toContain(path))

  test('is worked out all the same, told with what was written and what is usual, and among the notes', () => {
    const result = evaluate(sample([MACHINE, 'setting: 155 bar', 'setting: 1550 bar']), { ranges: false })
    const [asked] = result.askedAbout
    expect(asked).toMatchObject({ written: '1550 bar', usual: '40 to 350 bar', source: 'common practice, no source' })
    expect(result.calibration.notes).toContain(asked?.text)
  })
})

describe('not asked about', () => {
  test('the sample', () => expect(askedOf()).toEqual([]))

  const folder = new URL('../../scenarios/', import.meta.url)
  const file = (name: string) => ({ file: name, text: readFileSync(new URL(name, folder), 'utf8') })
  const shop = readdirSync(new URL('shop/', folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => file(`shop/${name}`))
  test.each(readdirSync(folder).filter((name) => name.endsWith('.yaml')))('the demo, %s', (name) => {
    const scenario = file(name)
    const unit = /^units:/mu.test(scenario.text) ? 0 : null
    const read = readAll(scenario, file(machinePathIn(scenario, unit) ?? ''), shop, 'shop', unit)
    expect('loaded' in read ? read.loaded.askedAbout : read.problems).toEqual([])
  })
})

describe('the table', () => {
  const rows = [...USUAL_OF_A_MACHINE, ...USUAL_OF_A_SCENARIO]
  test('asks each thing once, with the lower bound first', () => {
    expect(new Set(rows.map(({ path }) => path)).size).toBe(rows.length)
    for (const { path, least, most } of rows)
      expect(Number.parseFloat(least), path).toBeLessThan(Number.parseFloat(most))
  })
})
