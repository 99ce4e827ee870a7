/** Whether anything in a drawing meets what it should keep clear of; told in words, none where all is well. */
import type { Box, Item, Scene } from '../../../src/report/drawing/scene.ts'
import type { Ink } from './read-svg.ts'

const overlap = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom

const pairs = <T>(items: readonly T[]): readonly (readonly [T, T])[] =>
  items.flatMap((one, index) => items.slice(index + 1).map((other) => [one, other] as const))

interface Stroke {
  readonly of: string | null
  readonly box: Box
}

/** The straight pieces of every line; all run along x or y, so that each is a box without width or height. */
const strokes = (scene: Scene): readonly Stroke[] =>
  scene.items.flatMap((item) =>
    item.kind !== 'line'
      ? []
      : item.points.slice(1).map(([x2, y2], index) => {
          const [x1 = 0, y1 = 0] = item.points[index] ?? []
          return {
            of: item.of,
            box: { left: Math.min(x1, x2), right: Math.max(x1, x2), top: Math.min(y1, y2), bottom: Math.max(y1, y2) },
          }
        }),
  )

/** A line takes as much room as its thickest stroke. */
const HALF_STROKE = 1.4
const widened = ({ left, right, top, bottom }: Box): Box => ({
  left: left - HALF_STROKE,
  right: right + HALF_STROKE,
  top: top - HALF_STROKE,
  bottom: bottom + HALF_STROKE,
})

const isSymbol = (item: Item): item is Extract<Item, { kind: 'symbol' }> => item.kind === 'symbol'
const within = (one: Box, other: Box) =>
  one.left >= other.left && one.right <= other.right && one.top >= other.top && one.bottom <= other.bottom

/** Texts and discs on each other, on symbols (but for those whose name stands inside them), on lines, outside the picture. */
export const meetings = (scene: Scene, ink: readonly Ink[]): readonly string[] => {
  const symbols = scene.items.filter(isSymbol)
  const bodies = symbols.filter(({ symbol }) =>
    symbols.some((other) => other.symbol !== symbol && within(other.symbol.box, symbol.box)),
  )
  const solid = symbols.filter((one) => !bodies.includes(one))
  return [
    ...pairs(ink)
      .filter(([one, other]) => overlap(one.box, other.box))
      .map(([one, other]) => `${one.what} on ${other.what}`),
    ...ink.flatMap(({ what, box }) => [
      ...solid.filter(({ symbol }) => overlap(box, symbol.box)).map(({ of }) => `${what} on the symbol of ${of}`),
      ...bodies
        .filter(({ symbol }) => overlap(box, symbol.box) && !within(box, symbol.box))
        .map(({ of }) => `${what} on the edge of ${of}`),
      ...strokes(scene)
        .filter((stroke) => overlap(box, widened(stroke.box)))
        .map(({ of }) => `${what} on a line of ${of}`),
      ...(box.left < 0 || box.top < 0 || box.right > scene.width || box.bottom > scene.height
        ? [`${what} outside`]
        : []),
    ]),
    ...pairs(solid)
      .filter(([one, other]) => overlap(one.symbol.box, other.symbol.box))
      .map(([one, other]) => `${one.of} on ${other.of}`),
  ]
}

/** Pieces of two lines that run along each other, so that one hides the other. */
export const hidden = (scene: Scene): readonly string[] => {
  const all = strokes(scene)
  const isUpright = ({ box }: Stroke) => box.left === box.right
  const along = (one: Stroke, other: Stroke) =>
    isUpright(one)
      ? isUpright(other) &&
        Math.abs(one.box.left - other.box.left) < 1.5 &&
        Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top) > 1
      : !isUpright(other) &&
        Math.abs(one.box.top - other.box.top) < 1.5 &&
        Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left) > 1
  return all.flatMap((one, index) =>
    all
      .filter((other, position) => position > index && along(one, other))
      .map((other) => `${one.of} along ${other.of}`),
  )
}

/** Lines that run along neither axis: the boxes above would be wrong about them. */
export const slanting = (scene: Scene): readonly string[] =>
  strokes(scene)
    .filter(({ box }) => box.left !== box.right && box.top !== box.bottom)
    .map(({ of }) => `a line of ${of} is slanting`)
