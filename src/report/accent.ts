/**
 * The palette of a report, made from the one colour of the shop's letterhead. The accent is darkened until white text on
 * it, and it on white, can be read (contrast 4.5 to 1, WCAG 2.1 success criterion 1.4.3).
 */

export interface Palette {
  /** Headings, bars, rules. */
  readonly accent: string
  /** A very light wash of it, behind boxes. */
  readonly wash: string
  /** Between the two, for lines. */
  readonly line: string
}

/** Slate, where the shop names no colour or something that is none. */
export const DEFAULT_ACCENT = '#27566b'

type Rgb = readonly [number, number, number]

const parse = (text: string | null): Rgb | null => {
  const short = text === null ? null : /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(text.trim())
  const hex = short === null ? text?.trim() : `#${short[1]}${short[1]}${short[2]}${short[2]}${short[3]}${short[3]}`
  const long = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex ?? '')
  return long === null ? null : [parseInt(long[1] ?? '', 16), parseInt(long[2] ?? '', 16), parseInt(long[3] ?? '', 16)]
}

const hexOf = (colour: Rgb): string =>
  `#${colour.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`
const mix = (a: Rgb, b: Rgb, share: number): Rgb => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
  a[2] + (b[2] - a[2]) * share,
]

/** Relative luminance, WCAG 2.1 (sRGB). */
const luminance = (colour: Rgb): number => {
  const [r, g, b] = colour.map((part) => {
    const share = part / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0)
}

/** Contrast of two colours, 1 to 21: (L1 + 0.05) / (L2 + 0.05), WCAG 2.1. Anything that is no colour counts as black. */
export const contrast = (one: string, other: string): number => {
  const [a, b] = [luminance(parse(one) ?? [0, 0, 0]), luminance(parse(other) ?? [0, 0, 0])]
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)
}

/**
 * @param accent "#0b5d4e" or "#0be"; null or anything else takes the default
 * @returns colours that can be read on white and in grey
 */
export const palette = (accent: string | null): Palette => {
  let colour = parse(accent) ?? parse(DEFAULT_ACCENT) ?? [0, 0, 0]
  while (contrast(hexOf(colour), '#ffffff') < 5) colour = mix(colour, [0, 0, 0], 0.08)
  const white: Rgb = [255, 255, 255]
  return { accent: hexOf(colour), wash: hexOf(mix(white, colour, 0.06)), line: hexOf(mix(white, colour, 0.28)) }
}
