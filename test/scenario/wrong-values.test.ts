/**
 * Whatever stands at whatever key of the three kinds of file: what is said of it says what was expected, in words of a shop and
 * never in those of the library that checks it.
 */
import { describe, expect, test } from 'vitest'
import { flawsOf } from '../../src/scenario/flaws.ts'
import { machineFile } from '../../src/scenario/machine-schema.ts'
import type { Flaw, Path } from '../../src/scenario/problems.ts'
import { scenarioFile } from '../../src/scenario/scenario-schema.ts'
import { inside } from '../../src/scenario/schema-walk.ts'
import { PART_FIGURES, shopFile } from '../../src/scenario/shop-schema.ts'

/** Every place that a schema knows; names that are free are called "main". */
const placesIn = (schema: unknown, path: Path = []): readonly Path[] => {
  const { shape, valueType, element, items, options } = inside(schema)
  const inner: readonly (readonly [string | number, unknown])[] =
    shape !== undefined
      ? Object.entries(shape)
      : valueType !== undefined
        ? [['main', valueType]]
        : element !== undefined
          ? [[0, element]]
          : (items ?? []).map((one, i) => [i, one] as const)
  const branches = (options ?? []).flatMap((one) => placesIn(one, path))
  return [
    ...(path.length > 0 ? [path] : []),
    ...inner.flatMap(([key, one]) => placesIn(one, [...path, key])),
    ...branches,
  ]
}

const WRONG: readonly unknown[] = [
  [],
  {},
  { x: 1 },
  '',
  '  ',
  'abc',
  'x'.repeat(501),
  -1,
  1.5,
  1e15,
  Number.NaN,
  true,
  [1],
  [[]],
  Array(51).fill('a'),
  Array(501).fill({}),
  '7,400',
  '-3 days',
  '$12',
]

const files = { scenario: scenarioFile, machine: machineFile, shop: shopFile, ...PART_FIGURES }

const put = (path: Path, value: unknown): unknown =>
  path.reduceRight<unknown>(
    (inner, step) => (typeof step === 'number' ? Array(step + 1).fill(inner) : { [step]: inner }),
    value,
  )

const isInside = (place: Path, { path }: Flaw): boolean => place.every((step, i) => path[i] === step)

const flawsFor = (schema: (typeof files)[keyof typeof files], place: Path, value: unknown): readonly Flaw[] => {
  const data = put(place, value) as Parameters<typeof flawsOf>[1]
  const read = schema.safeParse(data)
  return read.success ? [] : flawsOf(read.error, data, schema).filter((flaw) => isInside(place, flaw))
}

const all = Object.entries(files).map(([name, schema]) => ({ name, schema, places: placesIn(schema) }))

/** Words of the library: "Too big: expected string to have <=50 characters". */
const STRANGE =
  /\b(?:expected|received|array|object|string|int|undefined|null|NaN|Invalid|Too (?:big|small))\b(?!s?")|[<>]=?\d/u

describe('what is said of a wrong value', () => {
  test('places are found in every kind of file', () => {
    expect(all.find(({ name }) => name === 'machine')?.places.length).toBeGreaterThan(150)
    expect(all.map(({ places }) => places.length).reduce((a, b) => a + b)).toBeGreaterThan(450)
  })

  test.each(all.filter(({ places }) => places.length > 0))('$name', ({ schema, places }) => {
    let told = 0
    for (const place of places)
      for (const value of WRONG) {
        for (const { message, expected, remedy } of flawsFor(schema, place, value)) {
          const where = `${place.join('.')}: ${JSON.stringify(value).slice(0, 40)}`
          told++
          // What stands in the file may be quoted; what we say of it is ours.
          const ours = [
            message.replace(/"[^"]*"|\(NaN\)/gu, ''),
            expected?.replace(/"[^"]*"/gu, ''),
            remedy?.replace(/"[^"]*"/gu, ''),
          ]
          for (const text of ours) expect(text ?? '', where).not.toMatch(STRANGE)
          expect(expected?.length ?? 0, `${where}: ${message}`).toBeGreaterThan(0)
          expect(message.length, where).toBeGreaterThan(5)
        }
      }
    expect(told).toBeGreaterThan(places.length)
  })

  test('nothing that is offered is wrong itself', () => {
    const title = (value: unknown) => flawsFor(scenarioFile, ['title'], value)[0]?.remedy
    expect(title(2041)).toBe('write "2041" if that is what you mean')
    expect(title(['far'])).toBe('write far if that is what you mean')
    expect(title({ far: null })).toBeNull()
    const trips = (value: unknown) => flawsFor(scenarioFile, ['site', 'trips-per-day'], value)[0]?.remedy
    expect(trips('8 trips')).toBe('write 8 if that is what you mean')
    expect(trips(-8)).toBe('write 8 if that is what you mean')
    expect(trips('80000 trips')).toBeNull()
    expect(trips('1.234,5')).toBe('write 1234.5')
    const defects = (value: unknown) => flawsFor(scenarioFile, ['status', 'open-defects'], value)[0]?.remedy
    expect(defects('worn pin')).toBe('write [worn pin] if that is what you mean')
    expect(defects('a pin, worn')).toBe('write ["a pin, worn"] if that is what you mean')
    expect(title(['Can you', 'make it'])).toBe('write "Can you, make it" if that is what you mean')
    const altitude = flawsFor(scenarioFile, ['site', 'altitude'], '9000 m')[0]
    expect(altitude?.remedy).toBe('did you mean 9000 ft?')
    const flows = (value: unknown) => flawsFor(scenarioFile, ['measured', 'flows'], value)[0]
    expect(flows({ pressure: '7 bar' })?.remedy).toBe('begin each entry of the list with "- "')
    expect(flows('none')?.remedy).toBe('leave the key out where there is none')
    expect(flows('none')?.expected).toMatch(/^a list, each entry a group with "circuit", "pressure", /u)
    const type = (value: unknown) => flawsFor(machineFile, ['machine', 'type'], value)[0]?.remedy
    expect(type('excavator')).toBe('did you mean "tracked excavator"?')
    expect(type('loader')).toBe('did you mean "tracked loader" or "wheeled loader"?')
    expect(type('crane')).toBeNull()
    const circuits = flawsFor(machineFile, ['circuits'], [{ pump: {} }])[0]
    expect(circuits?.expected).toBe('names of your own, each with a group of keys')
    const fluid = (value: unknown) => flawsFor(machineFile, ['fluid'], value)[0]?.remedy
    expect(fluid('ISO VG 46')).toBe('write "fluid: {grade: ISO VG 46}"')
    expect(fluid('46 cSt')).toBe('write "fluid: {viscosity-at-40C: 46 cSt}"')
    const date = (value: unknown) => flawsFor(scenarioFile, ['quote', 'date'], value)[0]?.remedy
    expect(date('2.3.2026')).toBe('write 2026-03-02')
    expect(date('25/3/2026')).toBe('write 2026-03-25')
    expect(date('2/3/2026')).toBe('write 2026-03-02 or 2026-02-03')
    expect(date('2026-3-2')).toBe('write 2026-03-02')
    expect(date('2026-02-30')).toBeNull()
    const ambient = (value: unknown) => flawsFor(scenarioFile, ['site', 'ambient'], value)[0]?.remedy
    expect(ambient('88 °C')).toBe('did you mean 88 °F?')
    expect(ambient('500 °C')).toBeNull()
    const hose = (value: unknown) => flawsFor(PART_FIGURES.hose, ['hose'], value)[0]?.remedy
    expect([hose('1/2 in'), hose('1/2"'), hose('3/8'), hose('half inch'), hose('7/8 mm')]).toEqual([
      'did you mean -8?',
      'did you mean -8?',
      'did you mean -6?',
      null,
      null,
    ])
  })

  test('fifty options are taken, one more is not', () => {
    const options = (count: number) =>
      flawsFor(scenarioFile, ['options'], Array(count).fill({ name: 'A', changes: {} }))
    expect(options(50)).toEqual([])
    expect(options(51)).toMatchObject([
      {
        code: 'list-of-wrong-length',
        path: ['options'],
        message: 'the list has 51 entries',
        expected: 'at most 50 entries',
      },
    ])
  })
})
