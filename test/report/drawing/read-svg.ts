/** What stands in a drawing, read back from its SVG: texts and discs with the room that they take, components, numbers. */
import type { Box } from '../../../src/report/drawing/scene.ts'
import { inkWidth } from './advance-widths.ts'

export interface Ink {
  readonly what: string
  readonly box: Box
}

const unescaped = (text: string) =>
  text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')

const attribute = (tag: string, name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? ''

export const sizeOf = (svg: string): { width: number; height: number; text: number } => {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []
  return { width: Number(width), height: Number(height), text: Number(attribute(svg.slice(0, 500), 'font-size')) }
}

/** Texts that are not numbers in a disc; the discs, each with its number. */
export const inkOf = (svg: string): readonly Ink[] => {
  const { text: size } = sizeOf(svg)
  const texts = [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].flatMap(
    ([, tag = '', raw = '']): readonly Ink[] => {
      if (attribute(tag, 'class') === 'number') return []
      const [left, base] = [Number(attribute(tag, 'x')), Number(attribute(tag, 'y'))]
      const what = unescaped(raw)
      return [
        { what, box: { left, right: left + inkWidth(what, size), top: base - size * 0.74, bottom: base + size * 0.2 } },
      ]
    },
  )
  const discs = [...svg.matchAll(/<circle class="disc" ([^>]*)\/>/g)].map(([, tag = '']): Ink => {
    const [x, y, r] = ['cx', 'cy', 'r'].map((name) => Number(attribute(tag, name))) as [number, number, number]
    return { what: 'disc', box: { left: x - r, right: x + r, top: y - r, bottom: y + r } }
  })
  return [...texts, ...discs]
}

/** Ids of the groups, in order, each as often as it stands there. */
export const componentsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/data-component="([^"]*)"/g)].map(([, id = '']) => unescaped(id))

/** Numbers in discs, each once. */
export const numbersOf = (svg: string): readonly string[] => [
  ...new Set([...svg.matchAll(/<text class="number"[^>]*>([^<]*)</g)].map(([, number = '']) => number)),
]

/** Widest text inside its disc: bold figures against the disc's diameter. */
export const numberRooms = (svg: string): readonly { readonly width: number; readonly room: number }[] => {
  const { text: size } = sizeOf(svg)
  return [...svg.matchAll(/<circle class="disc"[^>]* r="([\d.]+)"\/><text class="number"[^>]*>([^<]*)</g)].map(
    ([, r, number = '']) => ({ width: inkWidth(number, size), room: 2 * Number(r) }),
  )
}
