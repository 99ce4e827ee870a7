/** The command `reach`: exit codes and streams, with a search made by hand in place of the real one. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Writable } from 'node:stream'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { WANTS_LINES } from '../../src/scenario/nothing-wanted.ts'
import type { Search } from '../../src/search.ts'
import { makerHere } from '../../src/shell/making/maker.ts'
import { type ReachOptions, runReach, type Searcher } from '../../src/shell/reach-run.ts'
import { found } from '../report/search-stories.ts'
import { runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility reach '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const edit = (find: RegExp, put: string): void => {
  const path = join(folder, SCENARIO)
  const text = readFileSync(path, 'utf8')
  expect(text).toMatch(find)
  writeFileSync(path, text.replace(find, put))
}

class Memory extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

const reach = async (
  scenarios: readonly string[],
  over: Partial<ReachOptions> = {},
  searcher: Searcher = () => found,
  interrupt = new AbortController().signal,
) => {
  const [stdout, stderr] = [new Memory(), new Memory()]
  const openPrinter = () => Promise.reject(new Error('not asked for'))
  const world = {
    args: [],
    cwd: folder,
    env: {},
    stdout,
    stderr,
    now: () => 0,
    interrupt,
    openMaker: makerHere,
    openPrinter,
  }
  const options = { budget: null, json: false, units: null, quiet: false, ...over }
  const code = await runReach(world, scenarios, options, async () => searcher)
  return { code, stdout: stdout.text, stderr: stderr.text }
}

describe('reach', () => {
  test('answers in words, with title and customer before it', async () => {
    const { code, stdout, stderr } = await reach([SCENARIO])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(stdout.split('\n')[0]).toMatch(/^Twice as fast to the far paddock \(.+\)$/u)
    expect(stdout).toContain('The cheapest way there')
  })

  test('--json prints the search and nothing else', async () => {
    const { code, stdout, stderr } = await reach([SCENARIO], { json: true })
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(found)))
  })

  test('the budget reaches the search', async () => {
    const asked: (number | null)[] = []
    const searcher: Searcher = (_, { budget }) => {
      asked.push(budget)
      return found
    }
    await reach([SCENARIO], { budget: 1999.5 }, searcher)
    await reach([SCENARIO], {}, searcher)
    expect(asked).toEqual([1999.5, null])
  })

  test('of several scenarios a list; a wrong one does not stop the others', async () => {
    writeFileSync(join(folder, 'wrong.yaml'), 'format: 1\ntitle: no more\n')
    const { code, stdout, stderr } = await reach(['wrong.yaml', SCENARIO], { json: true })
    expect(code).toBe(3)
    expect(JSON.parse(stdout)).toHaveLength(1)
    expect(stderr).toMatch(/^wrong\.yaml:\d+:\d+: /u)
    expect(stderr).toContain(`1 of 2: ${SCENARIO}`)
    expect((await reach(['wrong.yaml', SCENARIO], { json: true, quiet: true })).stderr).not.toContain('1 of 2')
  })

  test('a search that fails is exit code 1 with the reason, no trace', async () => {
    const { code, stdout, stderr } = await reach([SCENARIO], {}, () => {
      throw new Error('no bracket')
    })
    expect({ code, stdout, stderr }).toEqual({ code: 1, stdout: '', stderr: `${SCENARIO}: no bracket\n` })
  })

  test('interrupted: exit code 130, no half answer', async () => {
    const stop = new AbortController()
    stop.abort()
    expect(await reach([SCENARIO], { json: true }, () => found, stop.signal)).toMatchObject({ code: 130, stdout: '' })
  })
})

describe('the real search', () => {
  test('--json prints one document, twice the same bytes', async () => {
    // The timed run of the sample is 2.3 km/h: nothing has to be done.
    edit(/^wants:.*$/mu, 'wants: {travel-speed: 1 km/h}')
    const first = await runCommand(['reach', SCENARIO, '--json', '--budget', '2000.00'], folder)
    const second = await runCommand(['reach', SCENARIO, '--json', '--budget', '2000'], folder)
    expect(first).toMatchObject({ code: 0, stderr: '' })
    expect(second.stdout).toBe(first.stdout)
    const search: Search = JSON.parse(first.stdout)
    expect(search.goal.travelSpeedKmh).toBeCloseTo(1, 12)
    expect(search.withinBudget?.budget).toBe(2000)
    expect(search.cheapest).toMatchObject({ changes: {}, meets: true })
  })

  test('in words, in US units', async () => {
    edit(/^wants:.*$/mu, 'wants: {travel-speed: 1 km/h}')
    const { code, stdout } = await runCommand(['reach', SCENARIO, '--units', 'us'], folder)
    expect(code).toBe(0)
    // 1 km/h / 1.609344 = 0.62 mph.
    expect(stdout).toContain('Wanted: 0.6 mph on the level')
    expect(stdout).toContain('The machine does it as it is.')
    expect(stdout).not.toMatch(/km\/h|undefined|NaN|null/u)
  })
})

describe('a scenario that wants nothing', () => {
  test.each([
    ['no key', /^wants:.*\n/mu, '', 'format:'],
    ['an empty key', /^wants:.*$/mu, 'wants:', 'wants:'],
    ['an empty mapping', /^wants:.*$/mu, 'wants: {}', 'wants:'],
  ])('%s: the three things that can be wanted, as lines to write', async (_, find, put, place) => {
    edit(find, put)
    const { code, stdout, stderr } = await reach([SCENARIO])
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' })
    const lines = readFileSync(join(folder, SCENARIO), 'utf8').split('\n')
    const line = lines.findIndex((text) => text.startsWith(place)) + 1
    expect(stderr).toContain(`${SCENARIO}:${line}:1: the scenario does not say what is wanted`)
    for (const wanted of WANTS_LINES) expect(stderr).toContain(`\n  ${wanted}\n`)
    expect(stderr).toContain('[nothing-wanted]')
  })

  test('each of the lines, written as it is shown, is read as something wanted', async () => {
    for (const line of WANTS_LINES) {
      cpSync(FERNHILL, folder, { recursive: true })
      edit(/^wants:.*$/mu, line)
      expect(await reach([SCENARIO])).toMatchObject({ code: 0, stderr: '' })
    }
  })
})

describe('usage', () => {
  test.each(['-5', '0', 'much', '$2000', '2e3', '', '1,', ',5', '1.9999'])(
    '--budget "%s" is refused with what to write',
    async (text) => {
      const { code, stderr } = await runCommand(['reach', SCENARIO, `--budget=${text}`], folder)
      expect(code).toBe(2)
      expect(stderr).toContain('--budget 2000')
    },
  )

  // A comma is refused with both readings, as in the files (spec of the scenario format, "Quantities").
  test.each([
    ['1,800', 'can be read in two ways: write 1800 or 1.80'],
    ['12,50', 'can be read in two ways: write 1250 or 12.50'],
    ['1.800', 'can be read in two ways: write 1800 or 1.80'],
    ['1,800.50', 'write 1800.50'],
    ['1.999,50', 'write 1999.50'],
    ['1,234,567', 'write 1234567'],
    ['1.234.567', 'write 1234567'],
  ])('--budget "%s" is not guessed at', async (text, remedy) => {
    const { code, stdout, stderr } = await runCommand(['reach', SCENARIO, `--budget=${text}`], folder)
    expect([code, stdout]).toEqual([2, ''])
    expect(stderr).toContain(`--budget "${text}" `)
    expect(stderr.trimEnd().endsWith(remedy)).toBe(true)
  })

  test('without a scenario it is exit code 2', async () => {
    expect((await runCommand(['reach'], folder)).code).toBe(2)
  })
})
