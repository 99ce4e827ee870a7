/** A fleet: units are merge patches over the scenario; mistakes are shown where they were written. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { unitNames } from '../../src/scenario/fleet.ts'
import { readAll } from '../../src/scenario/read.ts'

const FOLDER = new URL('../fixtures/fernhill/', import.meta.url)
const source = (file: string) => ({ file, text: readFileSync(new URL(file, FOLDER), 'utf8') })

const fleet = (units: string) => {
  const { file, text } = source('twice-as-fast.yaml')
  return { file, text: `${text}\nunits:\n${units}` }
}
const read = (units: string, unit: number) =>
  readAll(
    fleet(units),
    source('machines/wren-09.yaml'),
    [source('shop/parts.yaml'), source('shop/shop.yaml')],
    'shop',
    unit,
  )

const UNITS = `  - name: Red one
    site: {ambient: 20 °C}
  - name: Blue one
    title: The blue one
    measured: null
`

describe('fleet', () => {
  test('names its units; a scenario without units is none', () => {
    const { file, text } = fleet(UNITS)
    expect(unitNames(file, text)).toEqual(['Red one', 'Blue one'])
    expect(unitNames(file, source('twice-as-fast.yaml').text)).toBeNull()
  })

  test('each unit is the scenario with its own patch and title', () => {
    const [red, blue] = [read(UNITS, 0), read(UNITS, 1)]
    if (!('loaded' in red) || !('loaded' in blue)) throw new Error('not read')
    expect(red.loaded.scenario.title).toBe('Twice as fast to the far paddock: Red one')
    expect(red.loaded.scenario.site.ambient).toBe(20)
    expect(red.loaded.scenario.readings.travel).not.toBeNull()
    expect(blue.loaded.scenario.title).toBe('The blue one')
    expect(blue.loaded.scenario.site.ambient).toBe(31)
    expect(blue.loaded.scenario.readings.travel).toBeNull()
  })

  test('a mistake in a unit is shown in the unit, one in the common part there', () => {
    const wrong = read('  - name: Red one\n    site: {ambient: 20}\n', 0)
    if (!('problems' in wrong)) throw new Error('read without a mistake')
    expect(wrong.problems.map(({ code }) => code)).toEqual(['unit-missing'])
    const lines = fleet('  - name: Red one\n    site: {ambient: 20}\n').text.split('\n')
    expect(lines[(wrong.problems[0]?.line ?? 0) - 1]).toContain('site: {ambient: 20}')
  })
  test('what is wrong with an entry itself is told of that unit alone', () => {
    const units = `  - {name: Red one}
  - {name: Red one}
  - just a word
  - {site: {ambient: 3 °C}}
  - {name: " "}
  - {name: [Blue]}
  - {name: Blue one}
`
    const said = [0, 1, 2, 3, 4, 5, 6].map((unit) => {
      const one = read(units, unit)
      const lines = fleet(units).text.split('\n')
      return 'problems' in one ? one.problems.map(({ code, line }) => `${code}: ${lines[line - 1]?.trim()}`) : []
    })
    expect(said).toEqual([
      [],
      ['name-twice: - {name: Red one}'],
      ['value-of-wrong-kind: - just a word'],
      ['key-missing: - {site: {ambient: 3 °C}}'],
      ['key-missing: - {name: " "}'],
      ['value-of-wrong-kind: - {name: [Blue]}'],
      [],
    ])
    expect(unitNames('fleet.yaml', fleet(units).text)?.[4]).toBe('unit 5')
  })

  test('a list without units, or with too many, is a mistake of the file', () => {
    const { text } = source('twice-as-fast.yaml')
    expect(unitNames('fleet.yaml', `${text}\nunits: []\n`)).toBeNull()
    const many = Array.from({ length: 201 }, (_, i) => `  - {name: Unit ${i}}\n`).join('')
    expect(unitNames('fleet.yaml', fleet(many).text)).toBeNull()
    const whole = readAll(fleet(many), source('machines/wren-09.yaml'), [], null)
    expect('problems' in whole && whole.problems.map(({ code }) => code)).toContain('list-of-wrong-length')
  })
})
