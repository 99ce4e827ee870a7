/** View to HTML: Handlebars in strict mode, a frame a copy, sections as partials, styles and fonts inside the page. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Handlebars from 'handlebars'
import type { CustomerView } from '../report/customer-view.ts'
import type { ShopView } from '../report/shop-view.ts'
import type { TechnicianView } from '../report/technician-view.ts'

export const TEMPLATES = fileURLToPath(new URL('../../templates/', import.meta.url))
const WEIGHTS = [400, 600, 700]
const SUBSETS = ['latin', 'latin-ext', 'greek']

/** `unicode-range` of a font file, as the font's own style sheet gives it. */
const rangeOf = (css: string, file: string): string => {
  const block = css.split('@font-face').find((face) => face.includes(`/${file}`))
  const range = /unicode-range:\s*([^;}]+)/u.exec(block ?? '')?.[1]?.trim()
  if (range === undefined) throw new Error(`the font package has no ${file}`)
  return range
}

interface Face {
  readonly css: string
  /** First and last code point of each stretch that the file covers. */
  readonly ranges: readonly (readonly [number, number])[]
}

/** `U+0100-02BA` and `U+2074`, in a list. */
const stretches = (range: string): Face['ranges'] =>
  range.split(',').flatMap((part) => {
    const [from, to] = part.trim().replace(/^U\+/iu, '').split('-')
    if (from === undefined) return []
    return [[Number.parseInt(from, 16), Number.parseInt(to ?? from, 16)] as const]
  })

const faces = (): readonly Face[] => {
  const require = createRequire(import.meta.url)
  const folder = join(require.resolve('@fontsource/inter/package.json'), '..')
  return WEIGHTS.flatMap((weight) => {
    const css = readFileSync(join(folder, `${weight}.css`), 'utf8')
    return SUBSETS.map((subset) => {
      const file = `inter-${subset}-${weight}-normal.woff2`
      const font = readFileSync(join(folder, 'files', file)).toString('base64')
      const range = rangeOf(css, file)
      return {
        css: `@font-face{font-family:Inter;font-style:normal;font-weight:${weight};src:url(data:font/woff2;base64,${font}) format('woff2');unicode-range:${range}}`,
        ranges: stretches(range),
      }
    })
  })
}

const cssOf = (some: readonly Face[]): string => some.map(({ css }) => css).join('\n')

/** Style rules of the embedded fonts. */
export const fontFaces = (): string => cssOf(faces())

/** Those that a text has a sign in: a page without a Greek or a Polish letter need not carry them. */
const facesFor = (text: string, all: readonly Face[]): readonly Face[] => {
  const codes = [...new Set(text)].map((sign) => sign.codePointAt(0) ?? 0)
  return all.filter(({ ranges }) => codes.some((code) => ranges.some(([from, to]) => code >= from && code <= to)))
}

/** Style rules of the fonts that a text has a sign in. */
export const fontsFor = (text: string): string => cssOf(facesFor(text, faces()))

/** What each copy is made from. */
export interface Views {
  readonly customer: CustomerView
  readonly shop: ShopView
  readonly technician: TechnicianView
}

export type Copy = keyof Views

/** Sections that every copy may use, and those of one copy, which are called by its name: `shop/money`. */
const FOLDERS: { readonly [copy in Copy]: readonly (readonly [folder: string, prefix: string])[] } = {
  customer: [['sections', '']],
  shop: [
    ['sections', ''],
    ['shop', 'shop/'],
  ],
  technician: [
    ['sections', ''],
    ['technician', 'technician/'],
  ],
}

const filesOf = (folder: string, ending: string): readonly string[] =>
  readdirSync(join(TEMPLATES, folder))
    .filter((file) => file.endsWith(ending))
    .sort()

/** The page's own style, then that of every section. */
const stylesOf = (copy: Copy): string =>
  [
    join(TEMPLATES, 'customer.css'),
    ...FOLDERS[copy].flatMap(([folder]) => filesOf(folder, '.css').map((file) => join(TEMPLATES, folder, file))),
  ]
    .map((path) => readFileSync(path, 'utf8'))
    .join('\n')

/** Renders views with the templates as they stand now; a batch makes one and keeps it. */
export const htmlRenderer = <C extends Copy>(copy: C): ((view: Views[C]) => string) => {
  const handlebars = Handlebars.create()
  for (const [folder, prefix] of FOLDERS[copy])
    for (const file of filesOf(folder, '.hbs'))
      handlebars.registerPartial(
        `${prefix}${file.replace(/\.hbs$/u, '')}`,
        readFileSync(join(TEMPLATES, folder, file), 'utf8'),
      )
  const template = handlebars.compile(readFileSync(join(TEMPLATES, `${copy}.hbs`), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
  const styles = stylesOf(copy)
  const all = faces()
  return (view) => {
    // Once without fonts to see which letters it has, style rules and their texts included.
    const bare = template({ view, styles, fontFaces: '' })
    return template({ view, styles, fontFaces: cssOf(facesFor(bare, all)) })
  }
}
