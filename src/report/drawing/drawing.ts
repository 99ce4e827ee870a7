/**
 * The circuit drawing as SVG. One group for each component, with its id; what must change has a thick outline and its
 * numbers in white discs. Every text is escaped.
 */
import type { Diagram } from '../../diagram.ts'
import { at, escapeText } from '../charts/svg.ts'
import { layoutOf } from './layout.ts'
import type { Marks } from './marks.ts'
import { frame, path, ring } from './pen.ts'
import type { Item, Scene } from './scene.ts'
import type { DrawingWords, Texts } from './sheet.ts'
import { discGap, discOf, discStep, leading } from './text.ts'

export interface CircuitDrawing {
  /** Before every id in the drawing. */
  readonly id: string
  readonly title: string
  readonly description: string
  readonly diagram: Diagram
  readonly marks: Marks
  /** Ready lines of text by component id. */
  readonly texts: Texts
  readonly words: DrawingWords
}

type LabelItem = Extract<Item, { kind: 'label' }>
type LineItem = Extract<Item, { kind: 'line' }>

const labelSvg = ({ block, box }: LabelItem): string => {
  const { size, lines, numbers, arrangement } = block
  const isWide = arrangement === 'wide'
  const radius = discOf(size) / 2
  const row = isWide ? (box.top + box.bottom) / 2 : box.top + radius
  const discs = numbers
    .map((number, index) => {
      const x = box.left + radius + index * discStep(size)
      return `${ring('disc', x, row, radius)}<text class="number" x="${at(x)}" y="${at(row + size * 0.36)}" text-anchor="middle">${escapeText(number)}</text>`
    })
    .join('')
  const left = box.left + (isWide && numbers.length > 0 ? numbers.length * discStep(size) + discGap(size) : 0)
  const tall = lines.length * leading(size)
  const top = isWide ? (box.top + box.bottom - tall) / 2 : box.bottom - tall
  const texts = lines
    .map((line, index) => {
      const y = top + size * 0.93 + index * leading(size)
      return `<text x="${at(left)}" y="${at(y)}">${escapeText(line)}</text>`
    })
    .join('')
  return discs + texts
}

const lineSvg = ({ points, look }: LineItem): string => {
  const moved = (down: number) => path(look, ...points.flatMap(([x, y]) => [x, y + down]))
  return look === 'shaft' ? moved(-1.7) + moved(1.7) : moved(0)
}

const itemSvg = (item: Item): string => {
  if (item.kind === 'line') return lineSvg(item)
  if (item.kind === 'symbol') return item.symbol.svg
  if (item.kind === 'junction') return ring('junction', item.at[0], item.at[1], 2.1)
  return labelSvg(item)
}

/** Lines lie under symbols: first the groups of lines alone, then the others; each component is one group. */
const groups = (scene: Scene, marks: Marks): string => {
  const byId = new Map<string, Item[]>()
  const plain: Item[] = []
  for (const item of scene.items) {
    const of = item.kind === 'junction' ? null : item.of
    if (of === null) plain.push(item)
    else byId.set(of, [...(byId.get(of) ?? []), item])
  }
  const group = (id: string, items: readonly Item[]) =>
    `<g class="part${marks.at.has(id) ? ' marked' : ''}" data-component="${escapeText(id)}">${items.map(itemSvg).join('')}</g>`
  const isLine = (items: readonly Item[]) => items.every(({ kind }) => kind !== 'symbol')
  const all = [...byId]
  const under = all.filter(([, items]) => isLine(items)).map(([id, items]) => group(id, items))
  const over = all.filter(([, items]) => !isLine(items)).map(([id, items]) => group(id, items))
  const only = (kinds: readonly Item['kind'][]) =>
    `<g class="part">${plain
      .filter(({ kind }) => kinds.includes(kind))
      .map(itemSvg)
      .join('')}</g>`
  return only(['line']) + under.join('') + only(['junction', 'symbol', 'label']) + over.join('')
}

/** @returns the drawing as one SVG element */
export const circuitDrawing = (drawing: CircuitDrawing): string => {
  const scene = layoutOf(drawing.diagram, drawing.marks, drawing.texts, drawing.words)
  const id = escapeText(drawing.id)
  const ground = frame('ground', { left: 0, top: 0, right: scene.width, bottom: scene.height })
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="circuit" width="100%" viewBox="0 0 ${at(scene.width)} ${at(scene.height)}" font-size="${at(scene.textSize)}" role="img" aria-labelledby="${id}-t ${id}-d">` +
    `<title id="${id}-t">${escapeText(drawing.title)}</title><desc id="${id}-d">${escapeText(drawing.description)}</desc>` +
    `${ground}${groups(scene, drawing.marks)}</svg>`
  )
}
