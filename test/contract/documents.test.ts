/**
 * The published schemas of what the command prints: `npx vitest run test/contract -u` writes them anew. Documents are held against
 * them by a general validator (ajv). Those of the demo scenarios are the whole results of test/golden/, which is held against
 * what is worked out.
 */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { z } from 'zod'
import { documentSchemas } from '../../src/contract/json-schema.ts'
import { resultDocument } from '../../src/contract/result-schema.ts'
import { search } from '../../src/contract/search-schema.ts'
import type { ResultDocument } from '../../src/evaluation.ts'
import type { Json } from '../../src/question.ts'
import type { Search } from '../../src/search.ts'
import { runCommand } from '../shell/world.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const GOLDEN = join(ROOT, 'test', 'golden')
const FERNHILL = join(ROOT, 'test', 'fixtures', 'fernhill')

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true })
const schemas = documentSchemas()
const mistakesOf = (name: keyof typeof schemas): ((document: unknown) => readonly string[]) => {
  const validate = ajv.compile(schemas[name])
  return (document) => (validate(document) ? [] : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message}`))
}
const mistakesOfResult = mistakesOf('result')
const mistakesOfSearch = mistakesOf('search')

describe('published', () => {
  test.each(Object.entries(schemas))('%s', async (name, schema) => {
    await expect(`${JSON.stringify(schema, null, 1)}\n`).toMatchFileSnapshot(
      `../../scenarios/schema/${name}.schema.json`,
    )
  })
})

type Plain<T> = Json extends T ? T : T extends object ? { readonly [K in keyof T]: Plain<T[K]> } : T
type Result = Plain<z.infer<typeof resultDocument>>

type Found = Plain<z.infer<typeof search>>

test('the schemas take what the types say, and no more', () => {
  // Read by the compiler: a key more or less does not pass `npm run types`.
  const there = (document: ResultDocument): Result => document
  const back = (document: Result): ResultDocument => document
  const found = (document: Search): Found => document
  const foundBack = (document: Found): Search => document
  const golden = JSON.parse(readFileSync(join(GOLDEN, 'two-speed-travel.json'), 'utf8')) as ResultDocument
  expect(resultDocument.safeParse(back(there(golden))).success).toBe(true)
  expect(search.safeParse(foundBack(found({} as Search))).success).toBe(false)
})

const goldens = readdirSync(GOLDEN).filter((name) => name.endsWith('.json'))
const golden = (name: string): unknown => JSON.parse(readFileSync(join(GOLDEN, name), 'utf8'))

type Place = readonly (string | number)[]

/** Groups of a document, the first of each list only. */
const groupsIn = (value: unknown, path: Place = []): readonly Place[] => {
  if (typeof value !== 'object' || value === null) return []
  if (Array.isArray(value)) return value.length === 0 ? [] : groupsIn(value[0], [...path, 0])
  const inner = Object.entries(value).flatMap(([key, one]) => groupsIn(one, [...path, key]))
  return [path, ...inner]
}

const at = (document: unknown, path: Place): { [key: string]: unknown } =>
  path.reduce<unknown>((value, step) => (value as { [key: string]: unknown })[step], document) as {
    [key: string]: unknown
  }

/** Groups whose names are the writer's own. */
const isNamed = (path: Place): boolean => path.at(-1) === 'circuits' && path.at(-2) !== 'diagram'

describe('a result document', () => {
  test('of every demo scenario is as the schema says', () => {
    const scenarios = readdirSync(join(ROOT, 'scenarios')).filter((name) => name.endsWith('.yaml'))
    const stems = new Set(goldens.map((name) => name.split('.')[0]))
    expect([...stems].sort()).toEqual(scenarios.map((name) => name.replace(/\.yaml$/u, '')).sort())
    expect(goldens.map((name) => [name, mistakesOfResult(golden(name))])).toEqual(goldens.map((name) => [name, []]))
  })

  test('with a key more or less, anywhere, is not', () => {
    const document = golden('slower-every-season.json')
    const groups = groupsIn(document).filter((path) => !isNamed(path))
    expect(groups.length).toBeGreaterThan(100)
    for (const path of groups) {
      const group = at(document, path)
      group.surplus = 1
      expect(mistakesOfResult(document), `${path.join('.')}.surplus`).not.toEqual([])
      delete group.surplus
      for (const [key, value] of Object.entries(group)) {
        delete group[key]
        expect(mistakesOfResult(document), `without ${path.join('.')}.${key}`).not.toEqual([])
        group[key] = value
      }
    }
    expect(mistakesOfResult(document)).toEqual([])
  })

  test('with a value of another kind is not', () => {
    for (const [path, value] of [
      [['format'], 2],
      [['baseline', 'oilC'], null],
      [['baseline', 'heat', 'risk'], 'none'],
      [
        ['baseline', 'heat', 'curve', 0],
        [1, 2, 3],
      ],
      [['options', 0, 'answer', 'answer'], 'perhaps'],
      [['recommendation', 'reasons', 0, 'code'], 'because'],
      [['calibration', 'notes'], 'none'],
    ] as const) {
      const document = golden('slower-every-season.json')
      at(document, path.slice(0, -1))[path.at(-1) ?? ''] = value
      expect(mistakesOfResult(document), path.join('.')).not.toEqual([])
    }
  })
})

describe('what the command prints', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'contract-'))
    cpSync(FERNHILL, folder, { recursive: true })
  })
  afterEach(() => rmSync(folder, { recursive: true }))

  test('check --json, with a test after the work', async () => {
    const after = 'after: {date: 2026-04-20, oil: 52 °C, runs: [{direction: forward, distance: 20 m, time: 31 s}]}\n'
    const file = join(folder, 'twice-as-fast.yaml')
    writeFileSync(file, readFileSync(file, 'utf8') + after)
    const { code, stdout } = await runCommand(['check', '--json', 'twice-as-fast.yaml'], folder)
    expect(code).toBe(0)
    const document = JSON.parse(stdout) as ResultDocument
    expect(document.acceptance?.runs.length).toBe(1)
    expect(mistakesOfResult(document)).toEqual([])
  })

  test.each(['1 km/h', '40 km/h'])('reach --json, of %s', async (speed) => {
    const file = join(folder, 'twice-as-fast.yaml')
    writeFileSync(file, readFileSync(file, 'utf8').replace(/^wants:.*$/mu, `wants: {travel-speed: ${speed}}`))
    const { code, stdout } = await runCommand(['reach', '--json', '--budget', '2000', 'twice-as-fast.yaml'], folder)
    expect(code).toBe(0)
    const document = JSON.parse(stdout) as Search
    expect(document.cheapest === null).toBe(speed === '40 km/h')
    expect(mistakesOfSearch(document)).toEqual([])
    expect(mistakesOfSearch({ ...document, more: 1 })).not.toEqual([])
    const { counts: _, ...less } = document
    expect(mistakesOfSearch({ ...less, count: document.counts })).not.toEqual([])
  })
})
