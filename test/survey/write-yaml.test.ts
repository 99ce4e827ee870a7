/** The files to fill in: blank, filled in with the sample answers, and of a machine that is known in part. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { evaluate } from '../../src/evaluate.ts'
import type { Json } from '../../src/question.ts'
import { readAll } from '../../src/scenario/read.ts'
import { readForSurvey } from '../../src/scenario/read-survey.ts'
import { SURVEY } from '../../src/survey/entries.ts'
import type { SurveyEntry } from '../../src/survey/entry.ts'
import { NOTHING_KNOWN, written } from '../../src/survey/known.ts'
import { machineYaml, scenarioYaml } from '../../src/survey/write-yaml.ts'

const FERNHILL = new URL('../fixtures/fernhill/', import.meta.url)
const SCENARIOS = new URL('../../scenarios/', import.meta.url)
const SCHEMA = '../schema/x.schema.json'
const text = (file: string, folder = FERNHILL) => readFileSync(new URL(file, folder), 'utf8')
const SHOP = ['shop/parts.yaml', 'shop/shop.yaml'].map((file) => ({ file, text: text(file) }))

const blankMachine = machineYaml(SCHEMA, NOTHING_KNOWN)
const blankScenario = scenarioYaml(SCHEMA, 'machine.yaml')

/** As a person fills it in: a value behind each key, nothing else touched. */
const filled = (yaml: string, wanted: (entry: SurveyEntry) => boolean): string => {
  const keys: string[] = []
  return yaml
    .split('\n')
    .map((line) => {
      const match = /^( *)([\w-]+):(.*)$/u.exec(line)
      if (match === null || line.trimStart().startsWith('#')) return line
      const [, indent = '', key = '', rest = ''] = match
      keys.length = indent.length / 2
      keys.push(key)
      const path = keys.join('.')
      const entry = SURVEY.flatMap(({ entries }) => entries).find(
        (one) =>
          one.path.replace('circuits.*', 'circuits.main') === path ||
          (one.path.startsWith('travel.lines.*') && one.path.replace('*', keys[2] ?? '') === path),
      )
      if (entry === undefined || !wanted(entry) || !rest.trimStart().startsWith('#')) return line
      return `${indent}${key}: ${entry.example}`
    })
    .join('\n')
}

const read = (machine: string, scenario: string) =>
  readAll({ file: 'scenario.yaml', text: scenario }, { file: 'machine.yaml', text: machine }, SHOP, 'shop')

const problemsOf = (machine: string, scenario: string): readonly string[] => {
  const result = read(machine, scenario)
  return 'problems' in result ? result.problems.map(({ path, code }) => `${path.join('.')} ${code}`) : []
}

describe('blank', () => {
  test('every entry stands in it, with unit and usual error', () => {
    expect(blankMachine.startsWith(`# yaml-language-server: $schema=${SCHEMA}\n`)).toBe(true)
    expect(blankMachine).toContain('# Relief: setting by the book [bar or psi]')
    expect(blankMachine).toMatch(/Usual\s+(?:# )?error: ± 3 % by the code/u)
    expect(blankScenario).toMatch(/measured:\n {2}travel:\n(?: {4}# .*\n)+ {4}distance: {2}# such as 20 m/u)
    expect(blankScenario).toMatch(/^machine: machine\.yaml$/mu)
  })

  test('as it is, each thing that is needed is named as missing, and nothing else', () => {
    const needed = (file: string) =>
      SURVEY.filter((group) => group.file === file)
        .flatMap(({ entries }) => entries)
        .filter((entry) => entry.needed && entry.path !== 'machine')
        .map(({ path }) => `${path.replace('*', 'main')} key-missing`)
    expect(
      [
        ...problemsOf(
          blankMachine,
          filled(blankScenario, () => true),
        ),
      ].sort(),
      // Oil is a grade or two viscosities: none of the three is needed, and one of them is.
    ).toEqual([...needed('machine'), 'fluid.grade key-missing'].sort())
  })
})

describe('filled in', () => {
  test('with everything, it is read without a mistake and answered', () => {
    const [machine, scenario] = [blankMachine, blankScenario].map((yaml) => filled(yaml, ({ either }) => !either))
    expect(problemsOf(machine as string, scenario as string)).toEqual([])
    const result = read(machine as string, scenario as string)
    if ('problems' in result) throw new Error('not read')
    const { baseline, options, scenario: told } = evaluate(result.loaded, { ranges: false })
    expect(told.machine).toBe('Reed 10')
    expect(options.map(({ name }) => name)).toEqual(['Bigger pump'])
    expect(baseline.travel.level.speedKmh).toBeGreaterThan(1)
  })

  test('with what is needed and a sprocket, track and one option alone, it is answered on assumptions', () => {
    const more = [
      'travel.sprocket.pitch-diameter',
      'travel.track.gauge',
      'travel.track.ground-contact-length',
      'fluid.grade',
    ]
    const wanted = (entry: SurveyEntry) => entry.needed === true || more.includes(entry.path)
    const [machine, scenario] = [blankMachine, blankScenario].map((yaml) => filled(yaml, wanted))
    expect(problemsOf(machine as string, scenario as string)).toEqual([])
    const result = read(machine as string, scenario as string)
    if ('problems' in result) throw new Error('not read')
    const { assumptions } = evaluate(result.loaded, { ranges: false })
    expect(assumptions.map(({ path }) => path)).toContain('engine.governor-droop')
  })
})

/** Blanks of a file are as good as keys that are not there. */
const bare = (data: Json): Json => {
  if (Array.isArray(data)) return data.map(bare)
  if (typeof data !== 'object' || data === null) return data
  const kept = Object.entries(data)
    .map(([key, value]) => [key, bare(value)] as const)
    .filter(([, value]) => value !== null && !(typeof value === 'object' && Object.keys(value).length === 0))
  return Object.fromEntries(kept)
}

describe('of a machine that is known', () => {
  const names = ['machines/hornbeam-18.yaml', 'machines/rowan-80.yaml', 'machines/plover-12.yaml']
  test.each(names)('%s: nothing that was written is lost or changed', (name) => {
    const source = text(name, SCENARIOS)
    const known = readForSurvey({ file: name, text: source }, [], null)
    if ('problems' in known) throw new Error('not read')
    expect(bare(parse(machineYaml(SCHEMA, known)))).toEqual(bare(parse(source)))
  })

  test('what is assumed, taken by default and missing is marked', () => {
    const source = text('machines/wren-09.yaml')
      .replace('mass: 980 kg', 'mass: 980 kg (assumed)')
      .replace(/ {2}governor-droop.*\n/u, '')
    const known = readForSurvey({ file: 'wren', text: source }, SHOP, 'shop')
    if ('problems' in known) throw new Error('not read')
    const yaml = machineYaml(SCHEMA, known)
    expect(yaml).toMatch(/mass: 980 kg \(assumed\) {2}# assumed: read it/u)
    expect(yaml).toMatch(/governor-droop: {2}# taken until it is read: 8 %/u)
    const gap = readForSurvey({ file: 'wren', text: source.replace(/ {2}rated-speed.*\n/u, '') }, SHOP, 'shop')
    if ('problems' in gap) throw new Error('a gap is no mistake')
    expect(machineYaml(SCHEMA, gap)).toMatch(/rated-speed: {2}# missing/u)
  })

  test('what is written wrongly is no gap', () => {
    const source = text('machines/wren-09.yaml').replace('mass: 980 kg', 'mass: 980 bar')
    const known = readForSurvey({ file: 'wren', text: source }, SHOP, 'shop')
    expect('problems' in known && known.problems.map(({ code }) => code)).toEqual(['unit-of-another-dimension'])
  })
})

test('texts that YAML would take for something else are quoted', () => {
  const values: readonly Json[] = [
    'true',
    '12',
    '-8',
    'a: b',
    'x #y',
    '',
    ' x',
    '[',
    '24° 8L',
    'G 1/2',
    'it’s',
    '2026-03-02',
    '± 3',
    '- x',
    '{',
    "'",
    '1e3',
    '0x1f',
    '.5',
    '~',
    '*a',
    '&a',
    '!t',
    '@',
    '%',
    '`',
    '|',
    '>',
  ]
  for (const value of values) expect(parse(`key: ${written(value)}`)).toEqual({ key: value })
  for (const value of values) expect(parse(`key: [${written(value)}]`)).toEqual({ key: [value] })
})
