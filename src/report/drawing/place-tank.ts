/** The way back through cooler and filter, the tank, and what stands in it or on it. */
import type { Columns } from './columns.ts'
import { isShared } from './marks.ts'
import type { Rows } from './rows.ts'
import { type Item, junction, label, line, symbol } from './scene.ts'
import { blockFor, idIf, isMarked, type Sheet } from './sheet.ts'
import { bypass, cooler, DIAMOND, filter } from './symbols.ts'

/** A diamond in the way back, with the bypass beside it that lets cold oil past. */
const treated = (sheet: Sheet, { tankX, bypassX }: Columns, rows: Rows, id: 'cooler' | 'filter'): readonly Item[] => {
  const y = rows[id]
  const drawn = id === 'cooler' ? cooler(tankX, y) : filter(tankX, y)
  const past = id === 'cooler' && isMarked(sheet, 'cooler-bypass') ? 'cooler-bypass' : null
  const [top, bottom] = [y - rows.treated / 2 + 4, y + rows.treated / 2 - 4]
  const tag = blockFor(sheet, id)
  const mark = blockFor(sheet, past ?? '')
  return [
    line(null, [
      [tankX, top],
      [bypassX, top],
      [bypassX, bottom],
      [tankX, bottom],
    ]),
    junction(tankX, top),
    junction(tankX, bottom),
    symbol(past, bypass(bypassX, y - 3)),
    symbol(id, drawn),
    ...label(id, tag, tankX + DIAMOND + 5, y - tag.height / 2),
    ...label(past, mark, bypassX - 10 - mark.width, y - mark.height / 2),
  ]
}

const breather = (sheet: Sheet, { tankX }: Columns, rows: Rows): readonly Item[] => {
  if (!isMarked(sheet, 'breather')) return []
  const tag = blockFor(sheet, 'breather')
  const [x, y] = [tankX + 14, rows.tank.top - 8 - Math.max(8, tag.height / 2)]
  return [
    line(null, [
      [x, rows.tank.top + 6],
      [x, y],
    ]),
    symbol('breather', {
      svg: `<path class="body" d="M${x} ${y - 8}L${x + 8} ${y}L${x} ${y + 8}L${x - 8} ${y}Z"/><path class="fine pilot" d="M${x - 8} ${y}H${x + 8}"/>`,
      box: { left: x - 8, right: x + 8, top: y - 8, bottom: y + 8 },
    }),
    ...label('breather', tag, x + 12, y - tag.height / 2),
  ]
}

const intake = (sheet: Sheet, { columns }: Columns, rows: Rows): readonly Item[] => {
  const of = idIf(sheet, sheet.diagram.strainer !== null, 'strainer')
  const xs = columns
    .filter(({ circuit }) => !isShared(sheet.diagram, circuit.suctionSharedWith))
    .map(({ pumpX }) => pumpX)
  const [first = 0, last = 0] = [xs[0], xs.at(-1)]
  if (of === null)
    return xs.map((x) =>
      line(null, [
        [x, rows.collector],
        [x, rows.collector + 14],
      ]),
    )
  const tag = blockFor(sheet, of)
  return [
    line(null, [
      [last, rows.collector],
      [first, rows.collector],
      [first, rows.strainer + DIAMOND + 6],
    ]),
    ...xs.slice(0, -1).map((x) => junction(x, rows.collector)),
    symbol(of, filter(first, rows.strainer)),
    ...label(of, tag, first + DIAMOND + 5, rows.strainer - tag.height / 2 + 2),
  ]
}

/** From the first return line to the bottom of the tank. */
export const placeTank = (sheet: Sheet, columns: Columns, rows: Rows): readonly Item[] => {
  const { tankX, left, right } = columns
  const tag = blockFor(sheet, 'reservoir')
  const has = (id: 'cooler' | 'filter') => sheet.diagram[id] !== null || isMarked(sheet, id)
  return [
    line(null, [
      [columns.columns[0]?.returnX ?? tankX, rows.header],
      [tankX, rows.header],
      [tankX, rows.tank.top + 22],
    ]),
    ...(has('cooler') ? treated(sheet, columns, rows, 'cooler') : []),
    ...(has('filter') ? treated(sheet, columns, rows, 'filter') : []),
    ...breather(sheet, columns, rows),
    ...intake(sheet, columns, rows),
    line(
      'reservoir',
      [
        [left, rows.tank.top],
        [left, rows.tank.bottom],
        [right, rows.tank.bottom],
        [right, rows.tank.top],
      ],
      'wall',
    ),
    ...label('reservoir', tag, left + 6, rows.tank.bottom - 5 - tag.height),
  ]
}
