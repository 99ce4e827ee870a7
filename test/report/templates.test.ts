import { readdirSync, readFileSync } from 'node:fs'
import Handlebars from 'handlebars'
import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../src/evaluation.ts'
import { type CustomerOptions, type CustomerView, customerView } from '../../src/report/customer-view.ts'
import { resultOf } from '../fixtures/result.ts'
import { everyFlag } from './every-text.ts'
import { STORIES } from './stories.ts'

const TEMPLATES = new URL('../../templates/', import.meta.url)
const SECTIONS = new URL('sections/', TEMPLATES)
const MARK = `data:image/png;base64,${Buffer.from('mark').toString('base64')}`

/** As the shell compiles them; every name that a template asks for must be there, in conditions too. */
const compiled = (() => {
  const handlebars = Handlebars.create()
  for (const file of readdirSync(SECTIONS).filter((name) => name.endsWith('.hbs')))
    handlebars.registerPartial(file.slice(0, -4), readFileSync(new URL(file, SECTIONS), 'utf8'))
  return handlebars.compile(readFileSync(new URL('customer.hbs', TEMPLATES), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
})()

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

const render = (view: CustomerView): string => compiled({ view, styles: '/* styles */', fontFaces: '/* fonts */' })
const htmlOf = (result: ResultDocument, options: Partial<CustomerOptions> = {}) =>
  render(customerView(result, { units: 'metric', paper: 'a4', ...options }))
const textOf = (html: string) => html.replace(/<style>[\s\S]*?<\/style>/g, '').replace(/<[^>]+>/g, ' ')

describe.each(STORIES)('the customer’s copy: %s', (_, result) => {
  it('asks for nothing that the view does not have', () => {
    const view = customerView(result, { units: 'both', paper: 'letter' })
    expect(() => compiled({ view: watched(view), styles: '', fontFaces: '' })).not.toThrow()
  })
  it('has one title, headings in order, table heads with scope', () => {
    const html = htmlOf(result)
    expect(html.match(/<h1/g)).toHaveLength(1)
    const levels = [...html.matchAll(/<h([1-6])/g)].map(([, level]) => Number(level))
    levels.forEach((level, index) => {
      expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1)
    })
    for (const [head] of html.matchAll(/<th[ >][^>]*/g)) expect(head).toContain('scope=')
  })
  it('never promises more than was checked', () => {
    expect(textOf(htmlOf(result)).match(/\bsafe(ly|ty)?\b/i)).toBeNull()
    expect(textOf(htmlOf(result)).match(/undefined|NaN|\[object|null\b/)).toBeNull()
  })
  it('prints no cost price', () => expect(htmlOf(result).includes('$288')).toBe(false))
})

describe('the page', () => {
  const html = htmlOf(resultOf('decline'))
  it('names its language and title and fetches nothing', () => {
    expect(html).toContain('<html lang="en">')
    expect(html).toContain('<title>Quote 2041: Wren 09, for T. Marlowe</title>')
    expect(html).toContain('default-src &#x27;none&#x27;'.length > 0 ? "default-src 'none'" : '')
    expect(html).not.toMatch(/<script|<link|https?:(?!\/\/www\.w3\.org\/2000\/svg)/)
  })
  it('shows a mark only where there is one, and only a picture inside the page', () => {
    expect(html).not.toContain('<img')
    expect(htmlOf(resultOf('decline'), { mark: MARK })).toContain(
      `<img src="${MARK.replaceAll('=', '&#x3D;')}" alt="">`,
    )
    for (const mark of ['https://example.org/mark.png', 'data:text/html;base64,PGI+', `${MARK}" onload="x`])
      expect(htmlOf(resultOf('decline'), { mark })).not.toContain('<img')
  })
  it('has every flag of the view both ways somewhere in the stories', () => {
    const seen = new Map<string, Set<boolean>>()
    const flags = STORIES.flatMap(([, result]) =>
      everyFlag(customerView(result, { units: 'metric', paper: 'a4', mark: result.restored === null ? MARK : null })),
    )
    for (const [path, value] of flags) seen.set(path, (seen.get(path) ?? new Set()).add(value))
    expect([...seen].filter(([, values]) => values.size < 2).map(([path]) => path)).toEqual([])
  })
})

describe('hostile text', () => {
  const hostile = `<script>alert("x")</script>&'"\`={{view}}<img src=x onerror=1></style>`
  const poisoned = (value: unknown, key = ''): unknown => {
    const kept = new Set([
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
    ])
    if (typeof value === 'string') return kept.has(key) || value === '' ? value : hostile
    if (Array.isArray(value)) return value.map((member) => poisoned(member, key))
    if (typeof value !== 'object' || value === null) return value
    return Object.fromEntries(Object.entries(value).map(([name, member]) => [name, poisoned(member, name)]))
  }
  it.each(STORIES)('%s: stays text everywhere', (_, result) => {
    const html = htmlOf(poisoned(result) as ResultDocument)
    expect(html.match(/<script|<img|onerror=1>/)).toBeNull()
    expect(html.match(/<\/style>/g)).toHaveLength(1)
  })
  it('gets through from each file that a person writes', () => {
    const html = htmlOf(poisoned(resultOf('decline')) as ResultDocument)
    expect(html.match(/&lt;script&gt;/g)?.length ?? 0).toBeGreaterThan(20)
  })
})
