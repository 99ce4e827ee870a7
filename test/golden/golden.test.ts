/**
 * The whole result of every demo scenario, to be read as a diff when it moves: no truth, but a tripwire. Change it only by
 * `npm run golden:update`, and name in CHANGELOG.md each figure that a customer would see move.
 */
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { loadQuestions } from '../../src/shell/load.ts'

const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url))

/** Six significant digits: what another processor rounds otherwise is no change. Of the curves, a point an hour. */
const rounded = (value: unknown, key = ''): unknown => {
  if (typeof value === 'number') return Number(value.toPrecision(6))
  if (Array.isArray(value)) {
    const kept = key === 'curve' ? value.filter((_, i) => i % 12 === 0) : value
    return kept.map((item) => rounded(item))
  }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, rounded(inner, name)]))
}

for (const name of readdirSync(SCENARIOS).filter((file) => file.endsWith('.yaml')))
  for (const { unit, read } of loadQuestions(name, SCENARIOS))
    test(unit === null ? name : `${name}, ${unit}`, async () => {
      if ('problems' in read) throw new Error(`${name} is not read without a mistake`)
      const text = `${JSON.stringify(rounded(evaluate(read.loaded)), null, 1)}\n`
      const suffix = unit === null ? '' : `.${unit.replaceAll(' ', '-').toLowerCase()}`
      await expect(text).toMatchFileSnapshot(`./${name.replace(/\.yaml$/u, '')}${suffix}.json`)
    })
