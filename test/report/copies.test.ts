/** The shop's and the technician's copies through their templates: strict, with hostile text, and apart from the customer's. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import Handlebars from 'handlebars'
import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../src/evaluation.ts'
import { customerView } from '../../src/report/customer-view.ts'
import { shopView } from '../../src/report/shop-view.ts'
import { technicianView } from '../../src/report/technician-view.ts'
import { shop } from '../../src/report/wording-shop.ts'
import { technician } from '../../src/report/wording-technician.ts'
import { resultOf } from '../fixtures/result.ts'
import { everyText } from './every-text.ts'
import { codePoints } from './woff2-cmap.ts'
import { COST_FIGURES, WORK_STORIES, withWork } from './work-stories.ts'

const TEMPLATES = new URL('../../templates/', import.meta.url)

type Copy = 'customer' | 'shop' | 'technician'

/** As the shell compiles them. */
const compiled = (copy: Copy) => {
  const handlebars = Handlebars.create()
  const folders: readonly (readonly [string, string])[] = [
    ['sections', ''],
    ...(copy === 'customer' ? [] : [[copy, `${copy}/`] as const]),
  ]
  for (const [folder, prefix] of folders)
    for (const file of readdirSync(new URL(`${folder}/`, TEMPLATES)).filter((name) => name.endsWith('.hbs')))
      handlebars.registerPartial(
        `${prefix}${file.slice(0, -4)}`,
        readFileSync(new URL(`${folder}/${file}`, TEMPLATES), 'utf8'),
      )
  return handlebars.compile(readFileSync(new URL(`${copy}.hbs`, TEMPLATES), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
}
const templates = { customer: compiled('customer'), shop: compiled('shop'), technician: compiled('technician') }

/** Throws on a name that the view does not have, where Handlebars would take it for a no. */
const watched = <T extends object>(value: T): T =>
  new Proxy(value, {
    get: (target, key) => {
      const member: unknown = Reflect.get(target, key)
      if (
        member === undefined &&
        typeof key === 'string' &&
        !Array.isArray(target) &&
        !['toHTML', 'toJSON'].includes(key)
      )
        throw new Error(`the template asks for "${key}", which is not in the view`)
      return typeof member === 'object' && member !== null ? watched(member) : member
    },
  })

const OPTIONS = { units: 'metric', paper: 'a4' } as const
const viewOf = {
  customer: (result: ResultDocument) => customerView(result, OPTIONS),
  shop: (result: ResultDocument) => shopView(result, OPTIONS),
  technician: (result: ResultDocument) => technicianView(result, { ...OPTIONS, everyOption: true }),
}
const htmlOf = (copy: Copy, result: ResultDocument): string =>
  templates[copy]({ view: viewOf[copy](result), styles: '', fontFaces: '' })
const textOf = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/gu, '')
    .replace(/<svg[\s\S]*?<\/svg>/gu, '')
    .replace(/<[^>]+>/gu, ' ')

const COPIES = ['shop', 'technician'] as const
const CASES = COPIES.flatMap((copy) => WORK_STORIES.map(([name, result]) => [copy, name, result] as const))

describe.each(CASES)('%s: %s', (copy, _, result) => {
  const html = htmlOf(copy, result)
  it('asks for nothing that the view does not have', () => {
    const view = watched(viewOf[copy](result) as object)
    expect(() => templates[copy]({ view, styles: '', fontFaces: '' })).not.toThrow()
  })
  it('has one title, headings in order, table heads with scope, ids once', () => {
    expect(html.match(/<h1/gu)).toHaveLength(1)
    const levels = [...html.matchAll(/<h([1-6])/gu)].map(([, level]) => Number(level))
    levels.forEach((level, index) => {
      expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1)
    })
    for (const [head] of html.matchAll(/<th[ >][^>]*/gu)) expect(head).toContain('scope=')
    const ids = [...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })
  it('prints no gap of ours and never calls anything safe', () => {
    expect(textOf(html).match(/undefined|NaN|\[object|\bnull\b/u)).toBeNull()
    expect(textOf(html).match(/\bsafe(ly|ty)?\b/iu)).toBeNull()
  })
})

describe('apart from each other', () => {
  it.each(WORK_STORIES)('what parts cost and earn is not on the customer’s copy: %s', (_, result) => {
    const customer = htmlOf('customer', result)
    for (const figure of COST_FIGURES) expect(customer).not.toContain(figure)
    expect(textOf(customer).match(/\b(?:margin|mark-?up|profit|our cost|cost each)\b/iu)).toBeNull()
  })
  it.each(WORK_STORIES)('no price is on the technician’s copy: %s', (_, result) => {
    const text = textOf(htmlOf('technician', result))
    expect(text.match(/\$\s?\d/u)).toBeNull()
    for (const figure of COST_FIGURES) expect(text).not.toContain(figure)
  })
  it('the shop’s copy says on every page that it stays in the shop', () => {
    const { style } = viewOf.shop(withWork(resultOf('decline')))
    expect(style).toContain('not for the customer')
  })
  it('the shop’s copy has all that the customer’s has', () => {
    const result = withWork(resultOf('upgrade-on-conditions'))
    const [customer, ours] = [everyText(viewOf.customer(result)), new Set(everyText(viewOf.shop(result)))]
    const page = viewOf.customer(result)
    const left = customer.filter((text) => !ours.has(text) && ![page.title, page.style].includes(text))
    expect(left).toEqual([])
  })
})

describe('hostile text', () => {
  const hostile = `<script>alert("x")</script>&'"\`={{view}}<img src=x onerror=1></style>`
  const KEPT = new Set([
    'kind',
    'answer',
    'severity',
    'code',
    'check',
    'id',
    'risk',
    'mode',
    'from',
    'unit',
    'format',
    'currency',
    'action',
    'limitedBy',
    'option',
    'offerInstead',
    'type',
    'measure',
    'place',
    'job',
    'running',
    'drives',
  ])
  const poisoned = (value: unknown, key = ''): unknown => {
    if (typeof value === 'string') return KEPT.has(key) || value === '' ? value : hostile
    if (Array.isArray(value)) return value.map((member) => poisoned(member, key))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(Object.entries(value).map(([name, member]) => [name, poisoned(member, name)]))
  }
  it.each(CASES)('%s: %s: stays text everywhere', (copy, _, result) => {
    const html = htmlOf(copy, poisoned(result) as ResultDocument)
    expect(html.match(/<script|<img|onerror=1>/u)).toBeNull()
    expect(html.match(/<\/style>/gu)).toHaveLength(1)
  })
  it.each(COPIES)('%s: gets through', (copy) => {
    const html = htmlOf(copy, poisoned(withWork(resultOf('upgrade'))) as ResultDocument)
    expect(html.match(/&lt;script&gt;/gu)?.length ?? 0).toBeGreaterThan(10)
  })
})

describe('the embedded fonts', () => {
  const folder = dirname(createRequire(import.meta.url).resolve('@fontsource/inter/package.json'))
  const fonts = [400, 600, 700].map((weight) =>
    ['latin', 'latin-ext', 'greek'].map((subset) =>
      codePoints(readFileSync(join(folder, 'files', `inter-${subset}-${weight}-normal.woff2`))),
    ),
  )
  const missing = (texts: readonly string[]) =>
    [...new Set(texts.join('').replace(/[\n\r\t]/gu, ''))].filter(
      (sign) => !fonts.every((subsets) => subsets.some((codes) => codes.has(sign.codePointAt(0) ?? 0))),
    )
  it.each(CASES)('have every sign of %s: %s', (copy, _, result) =>
    expect(missing(everyText(viewOf[copy](result)))).toEqual([]),
  )
  it('have every sign of both catalogues', () => {
    const source = ['wording-shop.ts', 'wording-technician.ts'].map((file) =>
      readFileSync(new URL(`../../src/report/${file}`, import.meta.url), 'utf8'),
    )
    expect(missing([...everyText(shop), ...everyText(technician), ...source])).toEqual([])
  })
})
