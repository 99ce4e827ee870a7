/** Direction of imports, size of files, and what the core may not touch; read from the text of the files. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../src/', import.meta.url))

/** Earlier ones may not import later ones. Files directly under src/ are named. */
const ORDER: readonly (readonly string[])[] = [
  ['units'],
  ['machine.ts', 'question.ts', 'shop.ts', 'evaluation.ts', 'search.ts', 'tool.ts', 'diagram.ts', 'work-order.ts'],
  ['contract'],
  ['loaded.ts'],
  ['formulas'],
  ['tables'],
  ['scenario'],
  ['circuit'],
  ['calibration'],
  ['findings'],
  ['consequences'],
  ['costing'],
  ['answer'],
  ['ranges'],
  ['work-orders'],
  ['survey'],
  ['diagram-of.ts', 'option.ts', 'restore.ts'],
  ['start.ts'],
  ['reach'],
  ['reach.ts'],
  ['evaluate.ts'],
  ['report'],
  ['shell'],
]

const files = readdirSync(ROOT, { recursive: true })
  .map(String)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => name.split('\\').join('/'))

const textOf = (file: string): string => readFileSync(join(ROOT, file), 'utf8')
const roomOf = (file: string): string => file.split('/')[0] ?? file
const rankOf = (file: string): number => ORDER.findIndex((rooms) => rooms.includes(roomOf(file)))

const STATEMENT = /^(?:import|export)\s(?:[^'=;]*?\sfrom\s)?'([^']+)'|\bimport\('([^']+)'\)/gmu

const importsOf = (file: string, text = textOf(file)): readonly string[] =>
  [...text.matchAll(STATEMENT)].map((match) => match[1] ?? match[2] ?? '')

const ownImports = (file: string, text = textOf(file)): readonly string[] =>
  importsOf(file, text)
    .filter((name) => name.startsWith('.'))
    .map((name) =>
      normalize(join(dirname(file), name))
        .split('\\')
        .join('/'),
    )

/** Without the imports that are gone once it is compiled. */
const atRunTime = (file: string): string => textOf(file).replace(/^(?:import|export) type [^']*'[^']+'/gmu, '')

describe('direction of imports', () => {
  test('the imports are found', () => {
    const text =
      "import { a } from 'x'\nimport type {\n  B,\n} from './b.ts'\nimport 'c'\nexport { d } from 'd'\nexport const e = row.from === 'no'\n"
    expect(importsOf('', text)).toEqual(['x', './b.ts', 'c', 'd'])
    expect(files.flatMap((file) => ownImports(file)).length).toBeGreaterThan(500)
    expect(files.flatMap((file) => ownImports(file)).filter((target) => !files.includes(target))).toEqual([])
  })

  test('every room has its place', () => {
    expect(files.filter((file) => rankOf(file) < 0)).toEqual([])
  })

  test('nobody imports a later room', () => {
    const wrong = files.flatMap((file) =>
      ownImports(file).flatMap((target) => (rankOf(target) > rankOf(file) ? [`${file} -> ${target}`] : [])),
    )
    expect(wrong).toEqual([])
  })

  test('the report reads the result document and never the core', () => {
    const nouns = (ORDER[1] ?? []).filter((noun) => noun !== 'machine.ts')
    // The sheet of a survey is made from the table of its entries, which nothing is worked out from.
    const allowed = ['report', 'units', ...nouns, 'survey']
    const wrong = files
      .filter((file) => roomOf(file) === 'report')
      .flatMap((file) => ownImports(file).filter((target) => !allowed.includes(roomOf(target))))
    expect(wrong).toEqual([])
  })

  test('formulas take values: no machine, no table', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'formulas')
      .flatMap((file) => ownImports(file).filter((target) => roomOf(target) !== 'units'))
    expect(wrong).toEqual([])
  })
})

/** What a room may take from outside; all others take nothing. */
const PACKAGES: { readonly [room: string]: readonly string[] } = {
  contract: ['zod'],
  scenario: ['zod', 'yaml'],
  report: ['d3-scale', 'd3-shape'],
  shell: ['handlebars', 'puppeteer', '@sparticuz/chromium', 'commander', 'zod', 'yaml'],
}

describe('packages', () => {
  test('each only in its room; Node itself only in the shell', () => {
    const wrong = files.flatMap((file) =>
      importsOf(file)
        .filter((name) => !name.startsWith('.'))
        .filter((name) => !(PACKAGES[roomOf(file)] ?? []).includes(name))
        .filter((name) => !(roomOf(file) === 'shell' && name.startsWith('node:')))
        .map((name) => `${file}: ${name}`),
    )
    expect(wrong).toEqual([])
  })
})

describe('cycles', () => {
  test('no file imports itself by way of others', () => {
    const done = new Set<string>()
    const cycles: string[] = []
    const visit = (file: string, way: readonly string[]): void => {
      if (way.includes(file)) cycles.push([...way.slice(way.indexOf(file)), file].join(' -> '))
      if (way.includes(file) || done.has(file)) return
      for (const target of ownImports(file, atRunTime(file))) visit(target, [...way, file])
      done.add(file)
    }
    for (const file of files) visit(file, [])
    expect(cycles).toEqual([])
  })
})

describe('core', () => {
  test('touches no file, process, clock, chance or console', () => {
    const forbidden =
      /'node:|(?<![.\w])(?:process|console|performance|globalThis|crypto)\s*[.[]|(?<![.\w])(?:fetch|setTimeout|setInterval|require)\(|Date\.now|new Date\(\)|Math\.random/u
    const wrong = files
      .filter((file) => roomOf(file) !== 'shell')
      .filter((file) => forbidden.test(textOf(file).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gmu, '')))
    expect(wrong).toEqual([])
  })

  test('no default exports', () => {
    expect(files.filter((file) => /^export default/mu.test(textOf(file)))).toEqual([])
  })
})

describe('size', () => {
  const lines = (file: string): number => textOf(file).split('\n').length
  test('300 lines need a reason at the head of the file, 500 are too many', () => {
    const long = files.filter((file) => lines(file) > 300)
    expect(long.filter((file) => lines(file) > 500)).toEqual([])
    const head = (file: string) =>
      textOf(file)
        .slice(0, 800)
        .replaceAll(/[\s*]+/gu, ' ')
    expect(long.filter((file) => !/Long because|this one is long/u.test(head(file)))).toEqual([])
  })

  test('the median file has at most 120 lines', () => {
    const sizes = files.map(lines).sort((a, b) => a - b)
    expect(sizes[Math.floor(sizes.length / 2)]).toBeLessThanOrEqual(120)
  })
})
