/**
 * The pages of each copy of two scenarios against approved pictures in test/pictures/. `npm run pictures:update` approves
 * what is printed now: look at the pictures before they are committed.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import pixelmatch from 'pixelmatch'
import { PNG } from 'pngjs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser, type TestBrowser } from './browser.ts'
import { type Picture, packed, renderPages, unpacked } from './render-pages.ts'
import { copiesOf, type WrittenCopy } from './written.ts'

const APPROVED = fileURLToPath(new URL('../pictures/', import.meta.url))
const MADE_WITH = join(APPROVED, 'made-with.json')
/** Not part of the repository. */
const SEEN = fileURLToPath(new URL('../../out/pictures/', import.meta.url))
const UPDATE = process.env.PICTURES === 'update'

const SHOWN = ['two-speed-travel', 'slower-every-season']

/** All of the customer's and the technician's copies; of the shop's what it has beyond the customer's, which comes first. */
const MOST_PAGES = 9

/**
 * Share of a page's pixels that may differ: a tenth of what the smallest block makes that moves by 2 mm (see below). The
 * same browser prints the same bytes; what is left is the arithmetic of another processor.
 */
const TOLERANCE = 0.0002

/** A pixel counts where it differs by more than the steps in which pictures are stored. */
const THRESHOLD = 0.1

let browser: TestBrowser
const copies = new Map<string, readonly WrittenCopy[]>()
beforeAll(async () => {
  browser = await openBrowser()
  for (const scenario of SHOWN) copies.set(scenario, (await copiesOf(scenario)).copies)
  if (!UPDATE) return
  rmSync(APPROVED, { recursive: true, force: true })
  for (const scenario of SHOWN) mkdirSync(join(APPROVED, scenario), { recursive: true })
  writeFileSync(MADE_WITH, `${JSON.stringify({ browser: browser.version, platform: platform() }, null, 2)}\n`)
})
afterAll(() => browser?.close())

const platform = (): string => `${process.platform} ${process.arch}`

const difference = (one: Picture, other: Picture, diff: Buffer | undefined = undefined): number => {
  if (one.width !== other.width || one.height !== other.height) return 1
  const options = { threshold: THRESHOLD, includeAA: true }
  return pixelmatch(one.data, other.data, diff, one.width, one.height, options) / (one.width * one.height)
}

/** Keeps what was seen and where it differs; says so. */
const report = (name: string, seen: Picture, approved: Picture): string => {
  const base = join(SEEN, name)
  mkdirSync(join(base, '..'), { recursive: true })
  writeFileSync(`${base}.png`, packed(seen))
  if (seen.width !== approved.width || seen.height !== approved.height) return `${name}: another size; see ${base}.png`
  const diff = new PNG({ width: seen.width, height: seen.height })
  const share = difference(seen, approved, diff.data)
  writeFileSync(`${base}.diff.png`, PNG.sync.write(diff))
  return `${name}: ${(share * 100).toFixed(2)} % of the pixels differ; see ${base}.png and ${base}.diff.png`
}

const SAY = 'If that is meant, "npm run pictures:update" approves it.'

const htmlOf = (scenario: string, copy: string): string =>
  copies.get(scenario)?.find(({ name }) => name === `${scenario}/${copy}`)?.html ?? ''

/** Why the pictures say nothing here: another version of the browser breaks lines in other places. */
const otherBrowser = (): string | null => {
  if (!existsSync(MADE_WITH)) return null
  const made = JSON.parse(readFileSync(MADE_WITH, 'utf8')) as { browser: string; platform: string }
  if (made.browser === browser.version && made.platform === platform()) return null
  return `the approved pictures were printed by ${made.browser} on ${made.platform}, here is ${browser.version} on ${platform()}`
}

describe.each(SHOWN)('%s', (scenario) => {
  test.for(['customer', 'shop', 'technician'])('the %s copy looks as approved', async (copy, { skip }) => {
    const why = otherBrowser()
    skip(why !== null, why ?? '')
    const pages = await renderPages(await browser.print(htmlOf(scenario, copy)), MOST_PAGES)
    const nameOf = (page: number) => `${scenario}/${copy}-${page}`
    if (UPDATE)
      pages.forEach((page, i) => {
        writeFileSync(join(APPROVED, `${nameOf(i + 1)}.png`), packed(page))
      })
    const approved = readdirSync(join(APPROVED, scenario)).filter((file) => file.startsWith(`${copy}-`))
    expect(approved.sort(), `other pages than approved. ${SAY}`).toEqual(
      pages.map((_, i) => `${copy}-${i + 1}.png`).sort(),
    )
    const moved = pages.flatMap((page, i) => {
      const picture = unpacked(readFileSync(join(APPROVED, `${nameOf(i + 1)}.png`)))
      return difference(page, picture) > TOLERANCE ? [report(nameOf(i + 1), page, picture)] : []
    })
    expect(moved, SAY).toEqual([])
  })
})

describe('the comparison', () => {
  const HTML = () => htmlOf('two-speed-travel', 'customer')
  const firstPage = async (style: string): Promise<Picture> => {
    const html = HTML().replace('</style>', `${style}</style>`)
    const [page] = await renderPages(await browser.print(html), 1)
    if (page === undefined) throw new Error('no page')
    return page
  }

  test('sees any block that moves by 2 mm, the smallest ten times over the tolerance', async () => {
    const as = unpacked(packed(await firstPage('')))
    expect(difference(await firstPage(''), as)).toBe(0)
    for (const block of ['.headline', '.card', '.block h3', '.asked'])
      for (const way of ['2mm 0', '0 2mm']) {
        const share = difference(await firstPage(`${block}{position:relative;translate:${way}}`), as)
        expect({ block, way, seen: share > 10 * TOLERANCE, share }).toMatchObject({ seen: true })
      }
  })

  test('sees another colour and a letter that is gone', async () => {
    const as = unpacked(packed(await firstPage('')))
    expect(difference(await firstPage(':root{--accent:#7a1f2f!important}'), as)).toBeGreaterThan(TOLERANCE)
    expect(difference(await firstPage('.asked{color:transparent}'), as)).toBeGreaterThan(TOLERANCE)
  })

  test('does not see what no eye sees', async () => {
    const page = await firstPage('')
    const noisy = { ...page, data: Buffer.from(page.data.map((value, i) => Math.max(0, value - ((i >> 2) % 3) * 2))) }
    expect(difference(noisy, unpacked(packed(page)))).toBe(0)
  })
})
