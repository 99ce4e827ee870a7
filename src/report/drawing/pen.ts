/** Strokes that symbols are made of, as SVG. Coordinates come in pairs: x, y, x, y ... Classes are those of drawing.css. */
import { at } from '../charts/svg.ts'
import type { Box } from './scene.ts'

/** "x,y x,y" from coordinates in pairs. */
const pairs = (xy: readonly number[]): string =>
  xy
    .map((value, index) => at(value) + (index % 2 === 0 ? ',' : ' '))
    .join('')
    .trimEnd()

export const path = (kind: string, ...xy: readonly number[]): string =>
  `<polyline class="${kind}" points="${pairs(xy)}"/>`

export const area = (kind: string, ...xy: readonly number[]): string =>
  `<polygon class="${kind}" points="${pairs(xy)}"/>`

export const ring = (kind: string, x: number, y: number, r: number): string =>
  `<circle class="${kind}" cx="${at(x)}" cy="${at(y)}" r="${at(r)}"/>`

export const frame = (kind: string, { left, top, right, bottom }: Box): string =>
  `<rect class="${kind}" x="${at(left)}" y="${at(top)}" width="${at(right - left)}" height="${at(bottom - top)}"/>`

export const around = (x: number, y: number, halfWidth: number, halfHeight: number): Box => ({
  left: x - halfWidth,
  top: y - halfHeight,
  right: x + halfWidth,
  bottom: y + halfHeight,
})

/** A straight arrow with a filled head at its end. */
export const arrow = (x1: number, y1: number, x2: number, y2: number, head = 4): string => {
  const length = Math.hypot(x2 - x1, y2 - y1)
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length]
  const [bx, by] = [x2 - ux * head, y2 - uy * head]
  const half = head * 0.42
  return (
    path('fine', x1, y1, bx, by) + area('solid', x2, y2, bx - uy * half, by + ux * half, bx + uy * half, by - ux * half)
  )
}

/** A spring as a zigzag, along x or along y. */
export const spring = (x1: number, y1: number, x2: number, y2: number, half: number): string => {
  const turns = 5
  const xy = Array.from({ length: turns + 1 }, (_, index) => {
    const side = index === 0 || index === turns ? 0 : index % 2 === 0 ? half : -half
    const [x, y] = [x1 + ((x2 - x1) * index) / turns, y1 + ((y2 - y1) * index) / turns]
    return x1 === x2 ? [x + side, y] : [x, y + side]
  })
  return path('fine', ...xy.flat())
}
