/**
 * Damaged demo files: every one is either read or answered with located problems; what is read is evaluated without a throw
 * and without a figure that is none. One that hangs runs into the limit of its test. 500 cases here and 20 with an option that is searched
 * for, `npm run fuzz` takes 20,000 and 800.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parse, parseDocument } from 'yaml'
import { evaluate } from '../../src/evaluate.ts'
import type { Loaded } from '../../src/loaded.ts'
import { MOST_EVALUATIONS } from '../../src/reach/branch.ts'
import type { Problem } from '../../src/scenario/problems.ts'
import { machinePathIn, readAll, type SourceText } from '../../src/scenario/read.ts'
import { parseQuantity } from '../../src/units/quantity.ts'
import { damaged } from './mutations.ts'

/** For what hangs: far longer than any machine takes [ms]. */
const LIMIT = 3_600_000
const CASES = Number(process.env.FUZZ_CASES ?? 500)
const FOLDER = fileURLToPath(new URL('../../scenarios/', import.meta.url))

const source = (path: string): SourceText => ({ file: path, text: readFileSync(join(FOLDER, path), 'utf8') })
const scenarios = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map(source)
  .filter((file) => machinePathIn(file) !== null)
const shop = readdirSync(join(FOLDER, 'shop'))
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => source(join('shop', name)))

const unfit = (value: unknown, path = ''): string | null => {
  if (typeof value === 'number') return Number.isFinite(value) ? null : path
  if (typeof value !== 'object' || value === null) return null
  for (const [key, inner] of Object.entries(value)) {
    const found = unfit(inner, `${path}.${key}`)
    if (found !== null) return found
  }
  return null
}

const hurt = (file: SourceText, seed: number): SourceText => ({ file: file.file, text: damaged(file.text ?? '', seed) })

/** A search may take seconds: it has cases of its own. */
const withoutSearch = (loaded: Loaded): Loaded => {
  const options = loaded.scenario.options.filter(({ reach }) => reach === null)
  return { ...loaded, scenario: { ...loaded.scenario, options } }
}

const WISHES = [
  '{travel-speed: 2.6 km/h}',
  '{oil-below: 65 °C}',
  '{travel-speed: 2.4 km/h, oil-below: 70 °C}',
  '{attachment: {flow: 30 L/min, pressure: 140 bar}}',
]

/** The first option of a scenario says what is to be reached in place of its changes; the others are left out. */
const withSearch = ({ file, text }: SourceText, seed: number): SourceText => {
  const document = parseDocument(text ?? '')
  const kept = {
    name: 'What is to be reached',
    reach: parse(WISHES[Math.floor(seed / 4) % WISHES.length] ?? '') as unknown,
  }
  document.set('options', document.createNode([kept]))
  return { file, text: String(document) }
}

/** Damage from one line on: of the wish, not of everything before it. */
const hurtIn = ({ file, text }: SourceText, from: RegExp, seed: number): SourceText => {
  const lines = (text ?? '').split('\n')
  const first = lines.findIndex((line) => from.test(line))
  return { file, text: [...lines.slice(0, first), damaged(lines.slice(first).join('\n'), seed)].join('\n') }
}

const expectLocated = (problems: readonly Problem[], seed: number): void => {
  expect(problems.length, `seed ${seed}`).toBeGreaterThan(0)
  for (const { line, column, file } of problems) {
    expect(file, `seed ${seed}`).not.toBe('')
    expect(line, `seed ${seed}`).toBeGreaterThan(0)
    expect(column, `seed ${seed}`).toBeGreaterThan(0)
  }
}

describe('damaged files', () => {
  test(`${CASES} of them`, { timeout: LIMIT }, () => {
    let read = 0
    for (let seed = 0; seed < CASES; seed++) {
      const which = seed % 3
      const whole = scenarios[seed % scenarios.length] as SourceText
      const scenario = which === 0 ? hurt(whole, seed) : whole
      const path = machinePathIn(scenario)
      const named = path === null ? null : { file: path, text: readSafely(join(FOLDER, dirname(scenario.file), path)) }
      const machine = named !== null && which === 1 ? hurt(named, seed) : named
      const files = which === 2 ? shop.map((file, i) => (i === seed % shop.length ? hurt(file, seed) : file)) : shop
      const result = readAll(scenario, machine, files, 'shop')
      if ('problems' in result) expectLocated(result.problems, seed)
      else {
        read++
        expect(unfit(evaluate(withoutSearch(result.loaded), { ranges: false })), `seed ${seed}`).toBeNull()
      }
    }
    expect(read).toBeGreaterThan(CASES / 20)
  })

  const searches = Math.max(8, Math.floor(CASES / 25))
  test(`${searches} with an option that is searched for`, { timeout: LIMIT }, () => {
    let searched = 0
    for (let seed = 0; seed < searches; seed++) {
      const asking = withSearch(scenarios[seed % scenarios.length] as SourceText, seed)
      // Of four one is damaged in the wish itself, one anywhere in the question, one in its machine, one in the list.
      const which = seed % 4
      const scenario = which === 0 ? hurtIn(asking, /reach:/u, seed) : which === 1 ? hurt(asking, seed) : asking
      const path = machinePathIn(scenario)
      const named = path === null ? null : { file: path, text: readSafely(join(FOLDER, dirname(scenario.file), path)) }
      const machine = named !== null && which === 2 ? hurt(named, seed) : named
      const files = which === 3 ? shop.map((file, i) => (i === seed % shop.length ? hurt(file, seed) : file)) : shop
      const result = readAll(scenario, machine, files, 'shop')
      if ('problems' in result) {
        expectLocated(result.problems, seed)
        continue
      }
      const document = evaluate(result.loaded, { ranges: false })
      expect(unfit(document), `seed ${seed}`).toBeNull()
      for (const { found } of document.options) {
        if (found === null) continue
        searched++
        // However the files are damaged, a search ends by its own bound of steps.
        expect(found.counts.evaluated, `seed ${seed}`).toBeLessThanOrEqual(MOST_EVALUATIONS)
        expect(found.meets || found.cheaper === null, `seed ${seed}`).toBe(true)
      }
    }
    expect(searched).toBeGreaterThan(searches / 8)
  })
})

/** Places of plain data, groups and lists included. */
const placesOf = (data: unknown, path: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] =>
  typeof data !== 'object' || data === null
    ? [path]
    : [path, ...Object.entries(data).flatMap(([key, value]) => placesOf(value, [...path, key]))]

describe('wrong structure', () => {
  const [scenario] = scenarios as [SourceText]
  const named = machinePathIn(scenario) ?? ''
  const machine = { file: named, text: readFileSync(join(FOLDER, named), 'utf8') }
  const runs = Math.max(100, Math.floor(CASES / 10))

  test(`anything in the place of anything, ${runs} times`, { timeout: LIMIT }, () => {
    const files = [scenario, machine, shop[0] as SourceText]
    const trees = files.map(({ text }) => parse(text ?? '') as unknown)
    const places = trees.map((tree) => placesOf(tree).filter((path) => path.length > 0))
    fc.assert(
      fc.property(fc.nat(2), fc.nat(), fc.jsonValue({ maxDepth: 3 }), (which, at, value) => {
        const all = places[which] ?? []
        const document = parseDocument(files[which]?.text ?? '')
        document.setIn(all[at % all.length] as (string | number)[], document.createNode(value))
        const changed = { file: files[which]?.file ?? '', text: String(document) }
        const [first, second, third] = files.map((file, i) => (i === which ? changed : file)) as [
          SourceText,
          SourceText,
          SourceText,
        ]
        const result = readAll(first, second, [third, ...shop.slice(1)], 'shop')
        if ('problems' in result) return result.problems.every(({ line, column }) => line >= 1 && column >= 1)
        return unfit(evaluate(result.loaded, { ranges: false })) === null
      }),
      { numRuns: runs },
    )
  })
})

/** A machine that the damaged scenario names may not be there, or be a folder. */
const readSafely = (path: string): string | null => {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}

test('no text makes the reader of quantities throw, and what it takes is finite', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 80, unit: 'binary' }), (text) => {
      const read = parseQuantity(text, 'pressure')
      if (read.ok) expect(Number.isFinite(read.quantity.si)).toBe(true)
    }),
    { numRuns: 1000 },
  )
})
