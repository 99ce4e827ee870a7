/**
 * From the circuit to a scene: columns left to right, rows top to bottom, then every symbol, line and label into its place.
 * The text keeps its size on the page. A circuit that is too wide for the page at 7 pt is laid out again: with
 * larger text, which leaves smaller symbols, with labels that are narrower, at last without the sizes of what stays.
 */
import type { Diagram } from '../../diagram.ts'
import { columnsOf } from './columns.ts'
import type { Marks } from './marks.ts'
import { placeSupply } from './place-supply.ts'
import { placeTank } from './place-tank.ts'
import { placeTravel } from './place-travel.ts'
import { rowsOf } from './rows.ts'
import type { Scene } from './scene.ts'
import type { DrawingWords, Sheet, Texts } from './sheet.ts'
import type { Arrangement } from './text.ts'

/** Millimetres that the drawing has on the narrowest page, and the least size of its text there: 7 pt and what rounding takes. */
export const PAGE_WIDTH = 170
export const LEAST_TEXT = (7.02 * 25.4) / 72

const TEXT = 10.3
const GROWTH = 1.06

/** What is tried in turn, each with this many steps of larger text. */
const TRIES: readonly { readonly arrangement: Arrangement; readonly isSparse: boolean; readonly steps: number }[] = [
  { arrangement: 'wide', isSparse: false, steps: 2 },
  { arrangement: 'stacked', isSparse: false, steps: 3 },
  { arrangement: 'narrow', isSparse: false, steps: 10 },
  { arrangement: 'narrow', isSparse: true, steps: 13 },
]

const sceneAt = (sheet: Sheet): Scene => {
  const columns = columnsOf(sheet)
  const rows = rowsOf(sheet, columns)
  const items = [
    ...placeTravel(sheet, columns, rows),
    ...placeSupply(sheet, columns, rows),
    ...placeTank(sheet, columns, rows),
  ]
  return { width: columns.width, height: rows.height, textSize: sheet.size, items }
}

/** Without hose sizes and ratings; numbers stay, and so do pumps, motors and what they are for. */
const sparse = (diagram: Diagram, texts: Texts): Texts => {
  const { engine, reservoir, travel, circuits } = diagram
  const kept = new Set([
    engine.id,
    reservoir.id,
    travel.motor.id,
    'filter',
    'cooler',
    ...circuits.map(({ pump }) => pump.id),
  ])
  return Object.fromEntries(Object.entries(texts).filter(([id]) => kept.has(id)))
}

/**
 * Lays a circuit out.
 * @param diagram what is there  @param marks numbers of what must change
 * @param texts ready lines by component id  @param words of what is no component
 */
export const layoutOf = (diagram: Diagram, marks: Marks, texts: Texts, words: DrawingWords): Scene => {
  const fits = ({ width, textSize }: Scene) => textSize * PAGE_WIDTH >= LEAST_TEXT * width
  const bare = { texts: sparse(diagram, texts), words: { ...words, valveUnread: [] } }
  const tries = TRIES.flatMap(({ arrangement, isSparse, steps }) =>
    Array.from({ length: steps }, (_, step): Sheet => {
      const shown = isSparse ? bare : { texts, words }
      return { diagram, marks, ...shown, size: TEXT * GROWTH ** step, arrangement }
    }),
  )
  let scene: Scene | null = null
  for (const sheet of tries) {
    scene = sceneAt(sheet)
    if (fits(scene)) break
  }
  return scene ?? sceneAt({ diagram, marks, texts, words, size: TEXT, arrangement: 'wide' })
}
