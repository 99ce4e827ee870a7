/** More than one scenario: folders, fleets, what failed, the overview, and what need not be made again. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { World } from '../../src/shell/world.ts'
import { fakePrinter, quickMaker, runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility batch '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const textOf = (file: string) => readFileSync(join(folder, file), 'utf8')
const edit = (file: string, find: string | RegExp, put: string): void => {
  const text = textOf(file)
  expect(text).toMatch(find)
  writeFileSync(join(folder, file), text.replace(find, put))
}
const copyAs = (file: string) => writeFileSync(join(folder, file), textOf(SCENARIO))
const run = (args: readonly string[], openPrinter: World['openPrinter'] = fakePrinter()) =>
  runCommand(['report', ...args], folder, openPrinter, new AbortController().signal, quickMaker)
const html = (...args: readonly string[]) => run([...args, '--format', 'html'])
const overview = () =>
  JSON.parse(textOf('out/summary.json')) as {
    entries: { scenario: string; unit: string | null; report: string | null; outcome: string; row: object | null }[]
  }

describe('a folder', () => {
  test('its scenarios in the order of their names; machine and shop files are none', async () => {
    copyAs('a second.yaml')
    cpSync(join(folder, 'machines', readdirSync(join(folder, 'machines'))[0] ?? ''), join(folder, 'a-machine.yaml'))
    cpSync(join(folder, 'shop', 'shop.yaml'), join(folder, 'a-shop.yaml'))
    const { code } = await html('.')
    expect(code).toBe(0)
    expect(overview().entries.map(({ scenario }) => scenario)).toEqual(['a second.yaml', SCENARIO])
  })

  test('a file that may be meant as one is told of', async () => {
    writeFileSync(join(folder, 'half.yaml'), 'format: 1\ntitle: not yet\n')
    const { code, stderr } = await html('.')
    expect(code).toBe(3)
    expect(stderr).toContain('half.yaml:')
  })

  test('without a scenario is a mistake of the input', async () => {
    mkdirSync(join(folder, 'empty'))
    const { code, stderr } = await html('empty')
    expect(code).toBe(3)
    expect(stderr).toContain('no scenario')
  })
})

describe('the overview', () => {
  test('of one scenario there is none', async () => {
    await html(SCENARIO)
    expect(readdirSync(join(folder, 'out'))).not.toContain('summary.html')
  })

  test('one row each; what failed does not stop the others and stands there too', async () => {
    writeFileSync(join(folder, 'wrong.yaml'), 'format: 1\n')
    const { code, stdout } = await html('wrong.yaml', SCENARIO)
    expect(code).toBe(3)
    expect(overview().entries).toMatchObject([
      { scenario: 'wrong.yaml', outcome: 'wrong input', report: null, row: null },
      { scenario: SCENARIO, outcome: 'answered', report: 'twice-as-fast/customer.html' },
    ])
    expect(stdout).toContain('out/summary.html')
    expect(stdout).toContain('out/summary.csv')
  })

  test('of a fleet one row a unit, each with its own report', async () => {
    writeFileSync(join(folder, 'fleet.yaml'), `${textOf(SCENARIO)}\nunits:\n  - name: Unit A\n  - name: Unit B\n`)
    expect((await html('fleet.yaml')).code).toBe(0)
    expect(overview().entries.map(({ unit, report }) => [unit, report])).toEqual([
      ['Unit A', 'fleet/unit-a/customer.html'],
      ['Unit B', 'fleet/unit-b/customer.html'],
    ])
  })

  test('names from the files are text in the page', async () => {
    edit(SCENARIO, /^title: .*$/mu, 'title: "<script>alert(1)</script>"')
    await html(SCENARIO, SCENARIO)
    const page = textOf('out/summary.html')
    expect(page).not.toContain('<script>')
    expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt;')
    expect(page).toContain('href="twice-as-fast/customer.html"')
    expect(page).not.toMatch(/undefined|NaN|\[object/u)
  })
})

describe('files that are named', () => {
  const namedIn = (stdout: string) => stdout.split('\n').flatMap((line) => line.match(/^ *(out\/\S+)/u)?.[1] ?? [])

  test.each([
    ['customer', ['customer.html', 'customer.pdf']],
    ['shop', ['shop.html', 'shop.pdf']],
    ['technician', ['technician.html', 'technician.pdf']],
    ['all', ['customer', 'shop', 'technician'].flatMap((copy) => [`${copy}.html`, `${copy}.pdf`])],
  ])('--copy %s: on the terminal and in the overview those that were written, and no others', async (copy, names) => {
    copyAs('second.yaml')
    const { stdout } = await run([SCENARIO, 'second.yaml', '--copy', copy])
    const reports = ['twice-as-fast', 'second'].flatMap((name) => names.map((file) => `out/${name}/${file}`))
    const overviews = ['html', 'csv', 'json'].map((kind) => `out/summary.${kind}`)
    expect(namedIn(stdout)).toEqual([...reports, ...overviews])
    const written = readdirSync(join(folder, 'out'), { recursive: true, withFileTypes: true })
      .filter((found) => found.isFile())
      .map(({ parentPath, name }) => join(parentPath, name).slice(folder.length + 1))
      .filter((path) => !path.includes('/.made-from/')) // what the next run compares
    expect(written.sort()).toEqual([...reports, ...overviews].sort())
    const linked = overview().entries.map(({ report }) => report)
    expect(linked).toEqual(['twice-as-fast', 'second'].map((name) => `${name}/${names[0]}`))
    for (const link of linked) {
      expect(textOf('out/summary.html')).toContain(`href="${link}"`)
      expect(textOf('out/summary.csv')).toContain(`,${link}\r\n`)
    }
  })

  test('two scenarios of one name, and one that is named as the second would be: a folder each', async () => {
    for (const name of ['x', 'y']) {
      mkdirSync(join(folder, name))
      cpSync(join(folder, 'machines'), join(folder, name, 'machines'), { recursive: true })
      copyAs(`${name}/far.yaml`)
    }
    copyAs('far-2.yaml')
    copyAs('FAR.yaml')
    const { stdout } = await html('x/far.yaml', 'y/far.yaml', 'far-2.yaml', 'FAR.yaml')
    expect(namedIn(stdout).slice(0, 4)).toEqual([
      'out/far/customer.html',
      'out/far-2/customer.html',
      'out/far-2-2/customer.html',
      'out/FAR-3/customer.html',
    ])
  })
})

describe('unchanged', () => {
  const counted = async (...args: readonly string[]) => {
    const prints: { html: string; date: string }[] = []
    const ran = await run([SCENARIO, ...args], fakePrinter(prints))
    return { ...ran, prints: prints.length }
  }

  test('is not printed again, and says so; the answer is the same', async () => {
    const first = await counted()
    const second = await counted()
    expect([first.prints, second.prints]).toEqual([1, 0])
    expect(second.stderr).toContain('unchanged')
    expect(second.stdout.split('\n')[0]).toBe(first.stdout.split('\n')[0])
    expect(second.stdout).toContain('out/twice-as-fast/customer.pdf (unchanged)')
  })

  test('asks for no browser', async () => {
    await counted()
    const never = async () => {
      throw new Error('asked for a browser')
    }
    expect((await run([SCENARIO], never)).code).toBe(0)
  })

  test('--force prints it all the same', async () => {
    await counted()
    expect((await counted('--force')).prints).toBe(1)
  })

  test.each([
    ['the scenario', SCENARIO],
    ['its machine', `machines/${readdirSync(join(FERNHILL, 'machines'))[0]}`],
    ['a file of the shop', 'shop/shop.yaml'],
  ])('%s has changed: printed again', async (_, file) => {
    await counted()
    writeFileSync(join(folder, file), `${textOf(file)}\n# a note\n`)
    expect((await counted()).prints).toBe(1)
  })

  test('a mark was put beside the shop file: printed again', async () => {
    await counted()
    writeFileSync(join(folder, 'shop', 'mark.svg'), '<svg xmlns="http://www.w3.org/2000/svg"></svg>')
    expect((await counted()).prints).toBe(1)
  })

  test.each([
    ['other options', ['--units', 'us']],
    ['another paper', ['--paper', 'letter']],
    ['another copy', ['--copy', 'technician']],
  ])('%s: printed again', async (_, args) => {
    await counted()
    expect((await counted(...args)).prints).toBe(1)
    expect((await counted(...args)).prints).toBe(0)
  })

  test.each(['customer.html', 'customer.pdf'])('%s was changed by hand or is gone: printed again', async (file) => {
    await counted()
    writeFileSync(join(folder, 'out', 'twice-as-fast', file), 'other')
    expect((await counted()).prints).toBe(1)
    rmSync(join(folder, 'out', 'twice-as-fast', file))
    expect((await counted()).prints).toBe(1)
  })

  test('notes that cannot be read count for nothing', async () => {
    await counted()
    const note = 'out/.made-from/twice-as-fast.json'
    for (const text of ['', '{', 'null', '{"version":1,"files":{"customer.pdf":{}}}', '{"version":1,"files":[1]}']) {
      writeFileSync(join(folder, note), text)
      expect((await counted()).prints).toBe(1)
    }
  })

  test('a print that failed is tried again', async () => {
    const dying = async () => ({
      print: async () => {
        throw new Error('no paper')
      },
      close: async () => {},
    })
    expect((await run([SCENARIO], dying)).code).toBe(4)
    expect((await counted()).prints).toBe(1)
  })

  test('of a fleet only the unit that changed is printed again', async () => {
    const fleet = (name: string) =>
      writeFileSync(
        join(folder, SCENARIO),
        `${readFileSync(join(FERNHILL, SCENARIO), 'utf8')}\nunits:\n  - name: Unit A\n  - name: ${name}\n`,
      )
    fleet('Unit B')
    expect((await counted()).prints).toBe(2)
    fleet('Unit C')
    expect((await counted()).prints).toBe(1)
  })
})
