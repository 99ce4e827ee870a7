/** Valves, reliefs and pumps: what one circuit has of its own, and the shaft and suction that circuits may share. */
import { COUPLING_AWAY, type Column, type Columns, outlineHalf, RELIEF_AWAY } from './columns.ts'
import { isShared } from './marks.ts'
import type { Rows } from './rows.ts'
import { type Item, junction, label, line, type Place, symbol } from './scene.ts'
import { blockFor, idIf, partId, plainBlock, type Sheet } from './sheet.ts'
import {
  coupling,
  engine,
  PUMP_RADIUS,
  pump,
  RELIEF_HALF,
  relief,
  VALVE_BOX,
  VALVE_PORT,
  valveSection,
} from './symbols.ts'

const valve = (sheet: Sheet, rows: Rows, { circuit, slots, pumpX }: Column, pitch: number): readonly Item[] => {
  const id = partId(circuit, 'valve')
  const of = idIf(sheet, circuit.valve !== null, id)
  const bottom = rows.sections + VALVE_BOX / 2
  const [first, last] = [slots[0]?.x ?? 0, slots.at(-1)?.x ?? 0]
  const half = outlineHalf(pitch)
  const [left, right] = [first - half, last + half]
  const { top, bottom: floor } = rows.valve
  const outline: readonly Place[] = [
    [left, top],
    [right, top],
    [right, floor],
    [left, floor],
    [left, top],
  ]
  // The open centre leads from each section's tank port to the next one's pump port.
  const links = slots.slice(1).map((slot, index) =>
    line(of, [
      [(slots[index]?.x ?? 0) + VALVE_PORT, bottom],
      [(slots[index]?.x ?? 0) + VALVE_PORT, rows.gallery],
      [slot.x - VALVE_PORT, rows.gallery],
      [slot.x - VALVE_PORT, bottom],
    ]),
  )
  const block = of === null ? plainBlock(sheet, sheet.words.valveUnread) : blockFor(sheet, id)
  return [
    line(of, outline, 'outline'),
    ...links,
    ...slots.map((slot) => symbol(of, valveSection(slot.x, rows.sections, of !== null))),
    ...label(of, block, pumpX + 6, rows.valveLabel),
  ]
}

const pressureAndReturn = (sheet: Sheet, rows: Rows, column: Column, isFirst: boolean): readonly Item[] => {
  const { circuit, pumpX, returnX, slots } = column
  const bottom = rows.sections + VALVE_BOX / 2
  const pressure = idIf(sheet, circuit.pressure !== null, partId(circuit, 'lines.pressure'))
  const back = idIf(sheet, circuit.return !== null, partId(circuit, 'lines.return'))
  const lastX = (slots.at(-1)?.x ?? 0) + VALVE_PORT
  const reliefX = pumpX + RELIEF_AWAY
  const tag = (of: string | null) => blockFor(sheet, of ?? '')
  return [
    line(pressure, [
      [pumpX, rows.pump - PUMP_RADIUS],
      [pumpX, bottom],
    ]),
    line(back, [
      [lastX, bottom],
      [lastX, rows.gallery],
      [returnX, rows.gallery],
      [returnX, rows.header],
    ]),
    line(null, [
      [pumpX, rows.relief],
      [reliefX - RELIEF_HALF, rows.relief],
    ]),
    line(null, [
      [reliefX + RELIEF_HALF, rows.relief],
      [returnX, rows.relief],
    ]),
    junction(pumpX, rows.relief),
    junction(returnX, rows.relief),
    ...(isFirst ? [] : [junction(returnX, rows.header)]),
    symbol(circuit.relief.id, relief(reliefX, rows.relief)),
    ...label(circuit.relief.id, blockFor(sheet, circuit.relief.id), pumpX + 6, rows.reliefLabel),
    ...label(pressure, tag(pressure), pumpX - 6 - tag(pressure).width, rows.reliefLabel),
    ...label(back, tag(back), returnX + 6, rows.reliefLabel),
  ]
}

const pumpOf = (sheet: Sheet, rows: Rows, { circuit, pumpX }: Column): readonly Item[] => {
  const id = idIf(sheet, circuit.coupling !== null, partId(circuit, 'coupling'))
  const tag = blockFor(sheet, id ?? '')
  return [
    symbol(circuit.pump.id, pump(pumpX, rows.pump)),
    ...label(circuit.pump.id, blockFor(sheet, circuit.pump.id), pumpX + 19, rows.pumpLabel),
    ...(id === null
      ? []
      : [
          symbol(id, coupling(pumpX - COUPLING_AWAY, rows.pump)),
          ...label(id, tag, pumpX - 6 - tag.width, rows.pump - PUMP_RADIUS - 2 - tag.height),
        ]),
  ]
}

const driven = (sheet: Sheet, rows: Rows, { columns, engineX }: Columns): readonly Item[] => {
  const tag = blockFor(sheet, 'engine')
  const stops = [engineX + 15, ...columns.flatMap(({ pumpX }) => [pumpX - PUMP_RADIUS, pumpX + PUMP_RADIUS])]
  const shafts = columns.map((_, index) =>
    line(
      null,
      [
        [stops[2 * index] ?? 0, rows.pump],
        [stops[2 * index + 1] ?? 0, rows.pump],
      ],
      'shaft',
    ),
  )
  return [
    ...shafts,
    symbol('engine', engine(engineX, rows.pump)),
    ...label('engine', tag, engineX - tag.width / 2, rows.pump + 19),
  ]
}

/** Suction lines down to where the oil is taken in, with branches to the pumps that share them. */
const suctions = (sheet: Sheet, rows: Rows, { columns }: Columns): readonly Item[] => {
  const owners = columns.filter(({ circuit }) => !isShared(sheet.diagram, circuit.suctionSharedWith))
  return owners.flatMap(({ circuit, pumpX }) => {
    const id = idIf(sheet, circuit.suction !== null, partId(circuit, 'lines.suction'))
    const sharers = columns.filter(
      (other) => other.circuit !== circuit && other.circuit.suctionSharedWith === circuit.name,
    )
    const ends = [
      Math.min(pumpX, ...sharers.map((other) => other.pumpX)),
      Math.max(pumpX, ...sharers.map((other) => other.pumpX)),
    ]
    // The farthest on each side brings the branch, those before it only join.
    const branches = sharers.flatMap(({ pumpX: x }) => {
      const down: readonly Place[] = [
        [x, rows.pump + PUMP_RADIUS],
        [x, rows.branch],
      ]
      return ends.includes(x) ? [line(id, [...down, [pumpX, rows.branch]])] : [line(id, down), junction(x, rows.branch)]
    })
    return [
      line(id, [
        [pumpX, rows.pump + PUMP_RADIUS],
        [pumpX, rows.collector],
      ]),
      ...branches,
      ...(sharers.length > 0 ? [junction(pumpX, rows.branch)] : []),
      ...label(id, blockFor(sheet, id ?? ''), pumpX + 6, rows.suctionLabel),
    ]
  })
}

/** Valves, reliefs, pumps, their lines and what drives them. */
export const placeSupply = (sheet: Sheet, columns: Columns, rows: Rows): readonly Item[] => [
  ...columns.columns.flatMap((column, index) => [
    ...valve(sheet, rows, column, columns.pitch),
    ...pressureAndReturn(sheet, rows, column, index === 0),
    ...pumpOf(sheet, rows, column),
  ]),
  ...driven(sheet, rows, columns),
  ...suctions(sheet, rows, columns),
]
