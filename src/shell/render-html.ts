/** View to HTML: Handlebars in strict mode, a frame a copy, sections as partials, styles and fonts inside the page. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Handlebars from 'handlebars'
import type { CustomerView } from '../report/customer-view.ts'
import type { ShopView } from '../report/shop-view.ts'
import type { TechnicianView } from '../report/technician-view.ts'
import { wholeRanges } from './whole-ranges.ts'

export const TEMPLATES = fileURLToPath(new URL('../../templates/', import.meta.url))
const WEIGHTS = [400, 600, 700]

/** Hebrew and Arabic with their presentation forms; signs that these fonts share with Inter stay Inter's. */
const RIGHT_TO_LEFT = ([from, to]: Face['ranges'][number]): boolean => (from >= 0x590 && to <= 0x8ff) || from >= 0xfb1d

/** Which files of which font package, and which of the signs in them are taken from there. */
const SUBSETS: readonly (readonly [
  font: string,
  subset: string,
  taken: (stretch: Face['ranges'][number]) => boolean,
])[] = [
  ...['latin', 'latin-ext', 'greek', 'greek-ext', 'cyrillic', 'cyrillic-ext', 'vietnamese'].map(
    (subset) => ['inter', subset, () => true] as const,
  ),
  ['noto-sans-hebrew', 'hebrew', RIGHT_TO_LEFT],
  ['noto-sans-arabic', 'arabic', RIGHT_TO_LEFT],
]

/** `unicode-range` of a font file, as the font's own style sheet gives it. */
const rangeOf = (css: string, file: string): string => {
  const block = css.split('@font-face').find((face) => face.includes(`/${file}`))
  const range = /unicode-range:\s*([^;}]+)/u.exec(block ?? '')?.[1]?.trim()
  if (range === undefined) throw new Error(`the font package has no ${file}`)
  return range
}

interface Face {
  /** Its style rule, with the font inside. */
  readonly css: () => string
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

const hex = (code: number): string => code.toString(16).toUpperCase()

/** All under one family: the style sheet need not know which script a name is written in. */
const readFaces = (): readonly Face[] => {
  const require = createRequire(import.meta.url)
  return SUBSETS.flatMap(([name, subset, taken]) => {
    const folder = join(require.resolve(`@fontsource/${name}/package.json`), '..')
    return WEIGHTS.map((weight) => {
      const file = `${name}-${subset}-${weight}-normal.woff2`
      const ranges = stretches(rangeOf(readFileSync(join(folder, `${weight}.css`), 'utf8'), file)).filter(taken)
      const range = ranges.map(([from, to]) => `U+${hex(from)}${from === to ? '' : `-${hex(to)}`}`).join(',')
      const css = () => {
        const font = readFileSync(join(folder, 'files', file)).toString('base64')
        return `@font-face{font-family:Inter;font-style:normal;font-weight:${weight};src:url(data:font/woff2;base64,${font}) format('woff2');unicode-range:${range}}`
      }
      return { css, ranges }
    })
  })
}

let read: readonly Face[] | null = null
const faces = (): readonly Face[] => {
  read ??= readFaces()
  return read
}

const covers = ({ ranges }: Face, code: number): boolean => ranges.some(([from, to]) => code >= from && code <= to)

/** Letters and digits of a page that none of the fonts has: they print in whatever the machine has, or as empty boxes. */
export const lettersWithoutFont = (html: string): readonly string[] =>
  [...new Set(html)].filter(
    (sign) => /[\p{Letter}\p{Number}]/u.test(sign) && !faces().some((face) => covers(face, sign.codePointAt(0) ?? 0)),
  )

/** Those that a text has a sign in: a page without a Greek or a Polish letter need not carry them. */
const facesFor = (text: string, all: readonly Face[]): readonly Face[] => {
  const codes = [...new Set(text)].map((sign) => sign.codePointAt(0) ?? 0)
  return all.filter((face) => codes.some((code) => covers(face, code)))
}

/**
 * A page with the fonts that it has letters of.
 * @param render the page with these rules of its fonts; called once without any, to see its letters
 */
export const withFonts = (): ((render: (fontFaces: string) => string) => string) => {
  const all = faces()
  const made = new Map<Face, string>()
  const cssOf = (face: Face): string => {
    const css = made.get(face) ?? face.css()
    made.set(face, css)
    return css
  }
  return (render) => render(facesFor(render(''), all).map(cssOf).join('\n'))
}

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
  const dressed = withFonts()
  return (view) => dressed((fontFaces) => wholeRanges(template({ view, styles, fontFaces })))
}
