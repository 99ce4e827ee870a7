/** Where the texts of a chart lie, worked out from the SVG itself, to see whether two meet or one leaves the picture. */
import { textWidth } from '../../../src/report/charts/svg.ts'

export interface TextBox {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const unescaped = (text: string) =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')

/** Sizes as templates/sections/ways.css sets them. */
const sizeOf = (kind: string) => (/\b(small|mark)\b/.test(kind) ? 10 : 10.5)

export const textBoxes = (svg: string): readonly TextBox[] =>
  [...svg.matchAll(/<text class="([^"]*)" x="([^"]*)" y="([^"]*)" text-anchor="([^"]*)">([^<]*)<\/text>/g)].map(
    ([, kind = '', x, y, anchor, raw = '']) => {
      const text = unescaped(raw)
      const size = sizeOf(kind)
      // The estimate is on the wide side; nine tenths of it is still no less than what Inter takes.
      const width = textWidth(text, size) * 0.9
      const left = anchor === 'end' ? Number(x) - width : anchor === 'middle' ? Number(x) - width / 2 : Number(x)
      return { text, left, right: left + width, top: Number(y) - size * 0.74, bottom: Number(y) + size * 0.2 }
    },
  )

/** Pairs of texts that overlap. */
export const collisions = (boxes: readonly TextBox[]): readonly string[] =>
  boxes.flatMap((one, index) =>
    boxes
      .slice(index + 1)
      .filter(
        (other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom,
      )
      .map((other) => `${one.text} / ${other.text}`),
  )

/** Texts that leave the picture. */
export const outside = (svg: string): readonly string[] => {
  const [, width = '0', height = '0'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []
  return textBoxes(svg)
    .filter(
      (box) =>
        box.left < -0.5 || box.right > Number(width) + 0.5 || box.top < -0.5 || box.bottom > Number(height) + 0.5,
    )
    .map((box) => box.text)
}
