/** A sign that the embedded fonts lack prints as whatever the machine has, or as an empty box, and nothing says so. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { customerView } from '../../src/report/customer-view.ts'
import { en } from '../../src/report/wording.ts'
import { names } from '../../src/report/wording-names.ts'
import { reach } from '../../src/report/wording-reach.ts'
import { everyText } from './every-text.ts'
import { STORIES } from './stories.ts'
import { codePoints } from './woff2-cmap.ts'

const folder = dirname(createRequire(import.meta.url).resolve('@fontsource/inter/package.json'))
const fontOf = (subset: string, weight: number) =>
  codePoints(readFileSync(join(folder, 'files', `inter-${subset}-${weight}-normal.woff2`)))
const SUBSETS = ['latin', 'latin-ext', 'greek']

/** What every one of the three weights has. */
const has = (code: number): boolean =>
  [400, 600, 700].every((weight) => SUBSETS.some((subset) => fonts.get(`${subset}-${weight}`)?.has(code)))
const fonts = new Map(
  SUBSETS.flatMap((subset) =>
    [400, 600, 700].map((weight) => [`${subset}-${weight}`, fontOf(subset, weight)] as const),
  ),
)

const missing = (texts: readonly string[]) =>
  [...new Set(texts.join('').replace(/[\n\r\t]/g, ''))].filter((sign) => !has(sign.codePointAt(0) ?? 0))

describe('the embedded fonts', () => {
  it('are read right: letters are there, known gaps are not', () => {
    expect(missing(['abc ÅÖ ½ ¼ ° µ · × ² ³ – — € − Ωč “”’…'])).toEqual([])
    expect(missing(['≤≥≈→✓⚠⅝'])).toEqual(['≤', '≥', '≈', '→', '✓', '⚠', '⅝'])
  })
  it.each(STORIES)('have every sign of the customer’s copy: %s', (_, result) => {
    for (const units of ['metric', 'us', 'both'] as const)
      expect(missing(everyText(customerView(result, { units, paper: 'a4' })))).toEqual([])
  })
  it('have every sign of the catalogue, its functions included', () => {
    const source = ['wording.ts', 'wording-names.ts', 'wording-reach.ts'].map((file) =>
      readFileSync(new URL(`../../src/report/${file}`, import.meta.url), 'utf8'),
    )
    expect(missing([...everyText(en), ...everyText(names), ...everyText(reach), ...source])).toEqual([])
  })
})
