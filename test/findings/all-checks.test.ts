import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../src/findings/all-checks.ts'

const folder = (path: string): readonly string[] => readdirSync(new URL(path, import.meta.url)).toSorted()

describe('all-checks', () => {
  it('lists every file of the folder once, by its id', () => {
    const ids = allChecks.map(({ id }) => `${id}.ts`)
    expect(ids.toSorted()).toEqual(folder('../../src/findings/checks/'))
  })

  it('has a test for each', () => {
    const ids = allChecks.map(({ id }) => `${id}.test.ts`)
    expect(folder('./checks/')).toEqual(ids.toSorted())
  })

  it('has words of its own for each, and never says safe', () => {
    const words = allChecks.flatMap(({ wording }) => [wording.within, wording.over, wording.why])
    expect(new Set(words).size).toBe(words.length)
    for (const text of words) {
      expect(text).not.toMatch(/\bsafe/i)
      expect(text.length).toBeGreaterThan(10)
    }
  })

  it('ends each sentence for the customer, and no heading', () => {
    for (const { wording } of allChecks) {
      expect(wording.why).toMatch(/\.$/)
      expect(`${wording.within}${wording.over}`).not.toContain('.')
    }
  })
})
