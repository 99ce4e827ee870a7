/** View to HTML: Handlebars in strict mode, sections as partials, styles and fonts inside the page. */
import { readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Handlebars from 'handlebars'
import type { CustomerView } from '../report/customer-view.ts'

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

/** Style rules of the embedded fonts. */
export const fontFaces = (): string => {
  const require = createRequire(import.meta.url)
  const folder = join(require.resolve('@fontsource/inter/package.json'), '..')
  return WEIGHTS.flatMap((weight) => {
    const css = readFileSync(join(folder, `${weight}.css`), 'utf8')
    return SUBSETS.map((subset) => {
      const file = `inter-${subset}-${weight}-normal.woff2`
      const font = readFileSync(join(folder, 'files', file)).toString('base64')
      return `@font-face{font-family:Inter;font-style:normal;font-weight:${weight};src:url(data:font/woff2;base64,${font}) format('woff2');unicode-range:${rangeOf(css, file)}}`
    })
  }).join('\n')
}

const stylesOf = (name: string): string => {
  const sections = readdirSync(join(TEMPLATES, 'sections'))
    .filter((file) => file.endsWith('.css'))
    .sort()
  return [join(TEMPLATES, `${name}.css`), ...sections.map((file) => join(TEMPLATES, 'sections', file))]
    .map((path) => readFileSync(path, 'utf8'))
    .join('\n')
}

/** Renders views with the templates as they stand now; a batch makes one and keeps it. */
export const htmlRenderer = (): ((view: CustomerView) => string) => {
  const handlebars = Handlebars.create()
  for (const file of readdirSync(join(TEMPLATES, 'sections')).filter((name) => name.endsWith('.hbs')))
    handlebars.registerPartial(file.replace(/\.hbs$/u, ''), readFileSync(join(TEMPLATES, 'sections', file), 'utf8'))
  const template = handlebars.compile(readFileSync(join(TEMPLATES, 'customer.hbs'), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
  const fixed = { styles: stylesOf('customer'), fontFaces: fontFaces() }
  return (view) => template({ view, ...fixed })
}
