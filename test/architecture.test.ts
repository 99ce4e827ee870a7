/** Direction of imports, size of files, and what the core may not touch; read from the text of the files. */
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../src/', import.meta.url))

/** Earlier ones may not import later ones. Files directly under src/ are named. */
const ORDER: readonly (readonly string[])[] = [
  ['units'],
  ['machine.ts', 'question.ts', 'shop.ts', 'evaluation.ts', 'tool.ts', 'diagram.ts'],
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
  ['survey'],
  ['diagram-of.ts', 'option.ts', 'restore.ts'],
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

const importsOf = (file: string): readonly string[] =>
  [...textOf(file).matchAll(/(?:from|import\()\s*'([^']+)'/gu)].map((match) => match[1] ?? '')

const ownImports = (file: string): readonly string[] =>
  importsOf(file)
    .filter((name) => name.startsWith('.'))
    .map((name) =>
      normalize(join(dirname(file), name))
        .split('\\')
        .join('/'),
    )

describe('direction of imports', () => {
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
    const core = new Set([
      'circuit',
      'calibration',
      'findings',
      'consequences',
      'costing',
      'answer',
      'ranges',
      'scenario',
      'formulas',
    ])
    const wrong = files
      .filter((file) => roomOf(file) === 'report')
      .flatMap((file) => ownImports(file).filter((target) => core.has(roomOf(target))))
    expect(wrong).toEqual([])
  })

  test('formulas take values: no machine, no table', () => {
    const wrong = files
      .filter((file) => roomOf(file) === 'formulas')
      .flatMap((file) => ownImports(file).filter((target) => roomOf(target) !== 'units'))
    expect(wrong).toEqual([])
  })
})

const packagesIn = (rooms: readonly string[], packages: readonly string[]) =>
  files
    .filter((file) => !rooms.includes(roomOf(file)))
    .flatMap((file) =>
      importsOf(file)
        .filter((name) => packages.includes(name))
        .map((name) => `${file}: ${name}`),
    )

describe('packages', () => {
  test('zod and yaml only where files are read', () => {
    expect(packagesIn(['scenario'], ['zod', 'yaml'])).toEqual([])
  })
  test('handlebars, puppeteer and commander only in the shell', () => {
    expect(packagesIn(['shell'], ['handlebars', 'puppeteer', 'commander'])).toEqual([])
  })
})

describe('core', () => {
  test('touches no file, process, clock, chance or console', () => {
    const forbidden = /(?:'node:|\bprocess\.|\bDate\.now|new Date\(\)|Math\.random|\bperformance\.|\bconsole\.)/u
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
    const head = (file: string) => textOf(file).slice(0, 800)
    expect(
      long.filter((file) => !/\bone (?:place|file|contract|document|catalogue)|Long because/iu.test(head(file))),
    ).toEqual([])
  })

  test('the median file has at most 120 lines', () => {
    const sizes = files.map(lines).sort((a, b) => a - b)
    expect(sizes[Math.floor(sizes.length / 2)]).toBeLessThanOrEqual(120)
  })
})
