/**
 * One mistake a file: an edit of the sample files (NAME.yaml), and what the reader must say about it. `line` and `marks`
 * (the text under the carets) come from where the edit stands in the text, never from the tool. NAME.out beside it is the
 * whole message as a person sees it, so that a change of words shows in a review.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import type { Problem } from '../../src/scenario/problems.ts'
import { machinePathIn, readAll } from '../../src/scenario/read.ts'
import { showProblems } from '../../src/shell/show-problems.ts'

const SAMPLE = new URL('../fixtures/fernhill/', import.meta.url)
const FILES = ['twice-as-fast.yaml', 'machines/wren-09.yaml', 'shop/parts.yaml', 'shop/shop.yaml'] as const

interface Expected {
  readonly code: string
  readonly in?: string
  readonly line?: number
  readonly marks?: string
}

interface Fixture {
  readonly in: string
  readonly find?: string
  readonly put?: string
  readonly whole?: string
  /** `put` so many times over. */
  readonly times?: number
  /** What the first option of the scenario changes in place of what the sample has it change. */
  readonly change?: string
  readonly expect: readonly Expected[]
}

const original = (file: string): string => readFileSync(new URL(file, SAMPLE), 'utf8')

const edited = ({ find, put, whole, times }: Fixture, text: string): string => {
  if (whole !== undefined) return whole
  if (find === undefined || put === undefined || !text.includes(find)) throw new Error(`nothing to edit: ${find}`)
  return text.replace(find, () => put.repeat(times ?? 1))
}

const ASKED = 'circuits: { main: { pump: { part: pump-a-158 } } }'
const changed = ({ change }: Fixture, text: string): string =>
  change === undefined ? text : text.replace(ASKED, () => change)

const problemsOf = (fixture: Fixture): readonly Problem[] => {
  const text = (file: string) => ({
    file,
    text: file === fixture.in ? edited(fixture, original(file)) : changed(fixture, original(file)),
  })
  const [scenario, machine, parts, shop] = FILES
  const named = machinePathIn(text(scenario))
  const lost = named === null ? null : { file: named, text: null }
  const machineSource = named === machine ? text(machine) : lost
  const read = readAll(text(scenario), machineSource, [text(parts), text(shop)], 'shop')
  return 'problems' in read ? read.problems : []
}

const marked = ({ excerpt, column, width }: Problem): string => excerpt.slice(column - 1, column - 1 + width)

test('the unedited sample has no mistake', () => {
  expect(problemsOf({ in: 'none', expect: [] })).toEqual([])
})

const fixtures = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.yaml'))

describe('one mistake, one place', () => {
  test.each(fixtures)('%s', async (name) => {
    const fixture = parse(readFileSync(new URL(name, import.meta.url), 'utf8')) as Fixture
    const problems = problemsOf(fixture)
    const seen = problems.map((problem, i) => {
      const wanted = fixture.expect[i]
      const place = wanted?.marks === undefined ? {} : { line: problem.line, marks: marked(problem) }
      return { code: problem.code, in: problem.file, ...place }
    })
    expect(seen).toEqual(
      fixture.expect.map(({ code, in: file, line, marks }) => ({
        code,
        in: file ?? fixture.in,
        ...(marks === undefined ? {} : { line, marks }),
      })),
    )
    await expect(showProblems(problems)).toMatchFileSnapshot(`./${name.replace(/yaml$/u, 'out')}`)
  })

  test('no message is left without its file', () => {
    const outs = readdirSync(new URL('.', import.meta.url)).filter((name) => name.endsWith('.out'))
    expect(outs).toEqual(fixtures.map((name) => name.replace(/yaml$/u, 'out')))
  })
})
