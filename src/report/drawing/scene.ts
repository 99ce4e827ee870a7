/** What the layout hands to the pen: symbols, lines, junctions and labels with their places, plain data. Types only. */
import type { Block } from './text.ts'

export type Place = readonly [x: number, y: number]

/** Around a symbol or a label. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** A symbol: SVG with nothing in it but shapes. */
export interface Sign {
  readonly svg: string
  readonly box: Box
}

/** `of` is the component's id; null for what is drawn and is no component of the machine file. */
export type Item =
  | { readonly kind: 'line'; readonly of: string | null; readonly points: readonly Place[]; readonly look: LineLook }
  | { readonly kind: 'symbol'; readonly of: string | null; readonly symbol: Sign }
  | { readonly kind: 'junction'; readonly at: Place }
  | { readonly kind: 'label'; readonly of: string | null; readonly block: Block; readonly box: Box }

/** Working and return lines are solid; what is one piece has an outline of long and short dashes. */
export type LineLook = 'working' | 'outline' | 'shaft' | 'wall'

export interface Scene {
  readonly width: number
  readonly height: number
  readonly textSize: number
  readonly items: readonly Item[]
}

export const line = (of: string | null, points: readonly Place[], look: LineLook = 'working'): Item => ({
  kind: 'line',
  of,
  points,
  look,
})

export const symbol = (of: string | null, drawn: Sign): Item => ({ kind: 'symbol', of, symbol: drawn })

export const junction = (x: number, y: number): Item => ({ kind: 'junction', at: [x, y] })

/** A label by its left upper corner; none where there is nothing to say. */
export const label = (of: string | null, block: Block, left: number, top: number): readonly Item[] =>
  block.lines.length + block.numbers.length === 0
    ? []
    : [{ kind: 'label', of, block, box: { left, top, right: left + block.width, bottom: top + block.height } }]
