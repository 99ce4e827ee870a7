/** What the reader makes of whole sets of files. */
import { describe, expect, test } from 'vitest'
import { type Edit, MACHINE, PARTS, problemsOf, SCENARIO, SHOP, sample } from '../fixtures/fernhill.ts'

describe('every mistake of every file at once', () => {
  const edits: Edit[] = [
    [SCENARIO, 'altitude: 240 m', 'altitude: 240'],
    [SCENARIO, 'date: 2026-03-02', 'date: last week'],
    [MACHINE, 'mass: 980 kg', 'mass: 980 kilo'],
    [MACHINE, 'cylinders: 3', 'cylinder: 3'],
    [PARTS, 'kind: fitting', 'kind: fiting'],
    [SHOP, 'tax: 7.5 %', 'tax: 7.5'],
  ]
  test('in the order of files and lines', () => {
    const found = problemsOf(...edits).map(({ file, code }) => `${file} ${code}`)
    expect(found).toEqual([
      `${MACHINE} unit-unknown`,
      `${MACHINE} key-unknown`,
      `${PARTS} word-unknown`,
      `${SHOP} unit-missing`,
      `${SCENARIO} date-unreadable`,
      `${SCENARIO} unit-missing`,
    ])
  })
  test('a file that is no YAML does not hide the others', () => {
    const found = problemsOf(
      [PARTS, 'parts:', 'parts: ['],
      [SHOP, 'tax: 7.5 %', 'tax: 7.5'],
      [MACHINE, '980 kg', '980'],
    )
    const codes = new Set(found.map(({ file, code }) => `${file} ${code}`))
    expect(codes).toContain(`${PARTS} yaml-syntax`)
    expect(codes).toContain(`${SHOP} unit-missing`)
    expect(codes).toContain(`${MACHINE} unit-missing`)
  })
  test('without a parts list, a part that is named is not said to be unknown', () => {
    const named: Edit = [MACHINE, 'filter: null', 'filter: { part: return-filter-s }']
    const found = problemsOf(named, [PARTS, 'kind: fitting', 'kind: fiting'])
    expect(found.map(({ file, code }) => `${file} ${code}`)).toEqual([`${PARTS} word-unknown`])
  })
  test('a mistake in the machine is told once, however many options there are', () =>
    expect(problemsOf([MACHINE, 'mass: 980 kg', 'mass: 980'])).toHaveLength(1))
})

describe('where a mistake of a change is shown', () => {
  const asked: Edit = [SCENARIO, 'circuits: { main: { pump: { part: pump-a-158 } } }', 'CHANGE']
  const problem = (change: string) => {
    const [first] = problemsOf([asked[0], asked[1], change])
    return [first?.file, first?.path.join('.'), first?.code]
  }
  test('where the change wrote it', () =>
    expect(problem('circuits: { main: { relief: { setting: 2 } } }')).toEqual([
      SCENARIO,
      'options.0.changes.circuits.main.relief.setting',
      'unit-missing',
    ]))
  test('what a change leaves incomplete is shown at the change', () =>
    expect(problem('filter: { drop: 0.3 bar }')).toEqual([SCENARIO, 'options.0.changes.filter.at', 'key-missing']))
  test('what a change makes of the whole machine too', () =>
    expect(problem('circuits: { main: { drives: left track } }')).toEqual([
      SCENARIO,
      'options.0.changes.circuits.main.drives',
      'drive-incomplete',
    ]))
})

describe('what was probably meant', () => {
  test.each<[string, Edit, string]>([
    ['a key', [MACHINE, 'max-speed: 3500', 'max-sped: 3500'], 'did you mean "max-speed"?'],
    ['a word', [MACHINE, 'drives: both tracks', 'drives: both track'], 'did you mean "both tracks"?'],
    ['a part', [SCENARIO, 'pump-a-158', 'pump-a-185'], 'did you mean "pump-a-158"?'],
    ['a circuit', [SCENARIO, '{ main: { pump', '{ mian: { pump'], 'did you mean "main"?'],
    ['a flange', [MACHINE, 'SAE A 2-bolt', 'SAE A 3-bolt'], 'did you mean "SAE A 2-bolt"?'],
    [
      'a hose',
      [MACHINE, /hose: -5,\s*kind: 2-wire hose/u, 'hose: -5, kind: 2-wire hos'],
      'did you mean "2-wire hose"?',
    ],
  ])('%s', (_, edit, remedy) => expect(problemsOf(edit).map((problem) => problem.remedy)).toContain(remedy))
  test('nothing, where nothing is near', () =>
    expect(problemsOf([MACHINE, 'drives: both tracks', 'drives: sideways'])[0]?.remedy).toBeNull())
})

describe('a scenario that can be read', () => {
  test('the sample has two ways and their parts', () => {
    const { scenario, shop } = sample()
    expect(scenario.options.map(({ name }) => name)).toEqual(['Bigger pump', 'Cooler and return filter'])
    expect(shop.parts.find(({ id }) => id === 'pump-a-158')).toMatchObject({
      price: 268,
      cost: 182,
      leadDays: 6,
      stock: 1,
    })
  })
  test('a patch that does not fit is no silent one', () =>
    expect(() => sample().prepare([{ cooler: { part: 'nothing' } }])).toThrow('there is no part "nothing"'))
  test('the same files twice give the same', () => {
    const [one, two] = [sample(), sample()]
    expect(two.scenario).toEqual(one.scenario)
    expect(two.sheet).toEqual(one.sheet)
    expect(two.prepare([]).resolve()).toEqual(one.prepare([]).resolve())
  })
})
