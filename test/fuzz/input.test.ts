/**
 * Damaged demo files: every one is either read or answered with located problems; what is read is evaluated without a throw,
 * without a figure that is none, in less than two seconds (an option that is searched for aside). 500 cases here, `npm run fuzz` takes 20,000.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parse, parseDocument } from 'yaml'
import { evaluate } from '../../src/evaluate.ts'
import type { Loaded } from '../../src/loaded.ts'
import { machinePathIn, readAll, type SourceText } from '../../src/scenario/read.ts'
import { parseQuantity } from '../../src/units/quantity.ts'
import { damaged } from './mutations.ts'

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

/** A search may take seconds, and ends by a bound of its own (test/reach/); what is asked here is that nothing hangs. */
const withoutSearch = (loaded: Loaded): Loaded => {
  const options = loaded.scenario.options.filter(({ reach }) => reach === null)
  return { ...loaded, scenario: { ...loaded.scenario, options } }
}

describe('damaged files', () => {
  test(`${CASES} of them`, { timeout: 3_600_000 }, () => {
    let read = 0
    for (let seed = 0; seed < CASES; seed++) {
      const which = seed % 3
      const whole = scenarios[seed % scenarios.length] as SourceText
      const scenario = which === 0 ? hurt(whole, seed) : whole
      const path = machinePathIn(scenario)
      const named = path === null ? null : { file: path, text: readSafely(join(FOLDER, dirname(scenario.file), path)) }
      const machine = named !== null && which === 1 ? hurt(named, seed) : named
      const files = which === 2 ? shop.map((file, i) => (i === seed % shop.length ? hurt(file, seed) : file)) : shop
      const began = performance.now()
      const result = readAll(scenario, machine, files, 'shop')
      if ('problems' in result) {
        expect(result.problems.length, `seed ${seed}`).toBeGreaterThan(0)
        for (const { line, column, file } of result.problems) {
          expect(file, `seed ${seed}`).not.toBe('')
          expect(line, `seed ${seed}`).toBeGreaterThan(0)
          expect(column, `seed ${seed}`).toBeGreaterThan(0)
        }
      } else {
        read++
        expect(unfit(evaluate(withoutSearch(result.loaded), { ranges: false })), `seed ${seed}`).toBeNull()
      }
      expect(performance.now() - began, `seed ${seed}`).toBeLessThan(2000)
    }
    expect(read).toBeGreaterThan(CASES / 20)
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

  test(`anything in the place of anything, ${runs} times`, { timeout: 3_600_000 }, () => {
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
