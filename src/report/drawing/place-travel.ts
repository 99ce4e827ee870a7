/** Above the valves: the lines of each track through swivel and block to its motors, cylinders, the attachment. */
import { AUXILIARY_PITCH, type Column, type Columns, type Slot } from './columns.ts'
import type { Rows, Span } from './rows.ts'
import { type Item, junction, label, line, type Place, symbol } from './scene.ts'
import { blockFor, idIf, motorBlock, partId, plainBlock, type Sheet } from './sheet.ts'
import {
  body,
  CYLINDER_PORTS,
  cylinder,
  joint,
  MOTOR_RADIUS,
  motor,
  quickCoupling,
  throttle,
  VALVE_PORT,
} from './symbols.ts'

const upright = (of: string | null, x: number, { top, bottom }: Span): Item =>
  line(of, [
    [x, bottom],
    [x, top],
  ])

/** From a section's work ports out to where its two lines go up. */
const spreadOut = (x: number, half: number, rows: Rows): readonly Item[] =>
  [-1, 1].map((side) => {
    const ports: readonly Place[] = [
      [x + side * VALVE_PORT, rows.sections - 8],
      [x + side * VALVE_PORT, rows.valve.top + 5],
      [x + side * half, rows.valve.top + 5],
      [x + side * half, rows.valve.top],
    ]
    return line(null, ports)
  })

/** A label in the middle between the two lines of a track. */
const between = (sheet: Sheet, id: string, x: number, { top, bottom }: Span): readonly Item[] => {
  const block = blockFor(sheet, id)
  return label(id, block, x - block.width / 2, (top + bottom - block.height) / 2)
}

const trackLines = (sheet: Sheet, columns: Columns, rows: Rows, slot: Slot): readonly Item[] => {
  const half = columns.pitch / 2
  const lowest = rows.motors[0] ?? rows.valve.top
  const reach = Math.min(
    rows.valve.top,
    ...[rows.block, rows.swivel, ...rows.lines].flatMap((span) => (span === null ? [] : [span.top])),
  )
  const hoses = rows.lines.flatMap(({ line: hose, ...span }) => [
    upright(hose.id, slot.x - half, span),
    upright(hose.id, slot.x + half, span),
    ...between(sheet, hose.id, slot.x, span),
  ])
  // Where one hose ends at the next: a short bar.
  const joints = rows.lines.slice(1).flatMap(({ bottom }, index) =>
    rows.lines[index]?.top === bottom
      ? [-half, half].map((off) =>
          line(null, [
            [slot.x + off - 3, bottom],
            [slot.x + off + 3, bottom],
          ]),
        )
      : [],
  )
  const bare: readonly Span[] = [
    ...(rows.lines[0]?.bottom === rows.valve.top
      ? []
      : [{ top: rows.swivel?.bottom ?? rows.block?.bottom ?? reach, bottom: rows.valve.top }]),
    { top: rows.motors.at(-1) ?? lowest, bottom: reach },
  ]
  return [
    ...spreadOut(slot.x, half, rows),
    ...hoses,
    ...joints,
    ...bare.flatMap((span) => [upright(null, slot.x - half, span), upright(null, slot.x + half, span)]),
  ]
}

const motorsOf = (sheet: Sheet, columns: Columns, rows: Rows, slot: Slot): readonly Item[] => {
  const { motor: kind } = sheet.diagram.travel
  const half = columns.pitch / 2
  const side = slot.kind === 'left' ? 'left' : 'right'
  const head = motorBlock(sheet, side)
  return [
    ...rows.motors.flatMap((y, index) => [
      ...[-1, 1].flatMap((sign) => [
        line(null, [
          [slot.x + sign * half, y],
          [slot.x + sign * MOTOR_RADIUS, y],
        ]),
        ...(index < rows.motors.length - 1 ? [junction(slot.x + sign * half, y)] : []),
      ]),
      symbol(kind.id, motor(slot.x, y, kind.secondDisplacementCm3 !== null)),
    ]),
    ...label(kind.id, head, slot.x - head.width / 2, rows.motorLabel),
  ]
}

const blockOn = (sheet: Sheet, columns: Columns, span: Span, slot: Slot): readonly Item[] => {
  const id = sheet.diagram.travel.block?.id ?? null
  const half = columns.pitch / 2
  const middle = (span.top + span.bottom) / 2
  const box = { left: slot.x - half - 9, right: slot.x + half + 9, top: span.top + 1, bottom: span.bottom - 1 }
  return id === null
    ? []
    : [
        symbol(id, body(box)),
        ...[-half, half].flatMap((off) => [
          upright(id, slot.x + off, span),
          symbol(id, throttle(slot.x + off, middle)),
        ]),
        ...between(sheet, id, slot.x, span),
      ]
}

const swivelOver = (sheet: Sheet, columns: Columns, span: Span, slots: readonly Slot[]): readonly Item[] => {
  const id = sheet.diagram.travel.swivel?.id ?? null
  const half = columns.pitch / 2
  const xs = slots.map(({ x }) => x)
  if (id === null || xs.length === 0) return []
  const box = {
    left: Math.min(...xs) - half - 9,
    right: Math.max(...xs) + half + 9,
    top: span.top + 1,
    bottom: span.bottom - 1,
  }
  const passages = xs.flatMap((x) => [x - half, x + half])
  return [
    symbol(id, body(box)),
    ...passages.map((x) => upright(id, x, span)),
    ...passages.map((x) => symbol(id, joint(x, (span.top + span.bottom) / 2))),
    ...between(sheet, id, xs[0] ?? 0, span),
  ]
}

const implement = (sheet: Sheet, rows: Rows, slot: Slot): readonly Item[] => {
  const y = rows.valve.top - 14
  const block = plainBlock(sheet, [sheet.words.cylinders])
  const ports = CYLINDER_PORTS.map((off) => upright(null, slot.x + off, { top: y + 6, bottom: rows.valve.top }))
  return [
    ...spreadOut(slot.x, CYLINDER_PORTS[1], rows),
    ...ports,
    symbol(null, cylinder(slot.x, y)),
    ...label(null, block, slot.x - block.width / 2, y - 10 - block.height),
  ]
}

const attachment = (sheet: Sheet, rows: Rows, column: Column, slot: Slot): readonly Item[] => {
  const { auxiliary } = column.circuit
  const half = AUXILIARY_PITCH / 2
  const id = (part: string, isThere: boolean) => idIf(sheet, isThere, partId(column.circuit, part))
  const out = id('auxiliary.lines.out', auxiliary !== null && auxiliary.out !== null)
  const back = id('auxiliary.lines.back', auxiliary !== null && auxiliary.back !== null)
  const coupler = id('auxiliary.coupler', auxiliary !== null && auxiliary.coupler !== null)
  const { top, bottom } = rows.attachment
  const name = plainBlock(sheet, [sheet.words.attachment])
  const width = name.width / 2 + 5
  const lower: Span = { top: coupler === null ? bottom : rows.coupler + 10, bottom: rows.valve.top }
  const tags = (of: string | null) => blockFor(sheet, of ?? '')
  const middle = (rows.auxiliary.top + rows.auxiliary.bottom) / 2
  return [
    ...spreadOut(slot.x, half, rows),
    upright(out, slot.x - half, lower),
    upright(back, slot.x + half, lower),
    ...label(out, tags(out), slot.x - half - 6 - tags(out).width, middle - tags(out).height / 2),
    ...label(back, tags(back), slot.x + half + 6, middle - tags(back).height / 2),
    ...(coupler === null
      ? []
      : [
          ...[-half, half].flatMap((off) => [
            upright(null, slot.x + off, { top: bottom, bottom: rows.coupler - 10 }),
            symbol(coupler, quickCoupling(slot.x + off, rows.coupler)),
          ]),
          ...label(coupler, tags(coupler), slot.x + half + 10, rows.coupler - tags(coupler).height / 2),
        ]),
    line(
      null,
      [
        [slot.x - width, top],
        [slot.x + width, top],
        [slot.x + width, bottom],
        [slot.x - width, bottom],
        [slot.x - width, top],
      ],
      'outline',
    ),
    ...label(null, name, slot.x - name.width / 2, (top + bottom - name.height) / 2),
  ]
}

/** Everything above the control valves. */
export const placeTravel = (sheet: Sheet, columns: Columns, rows: Rows): readonly Item[] => {
  const all = columns.columns.flatMap((column) => column.slots.map((slot) => ({ column, slot })))
  const tracks = all.filter(({ slot }) => slot.kind === 'left' || slot.kind === 'right').map(({ slot }) => slot)
  const { swivel, block } = rows
  return [
    ...tracks.flatMap((slot) => trackLines(sheet, columns, rows, slot)),
    ...tracks.flatMap((slot) => motorsOf(sheet, columns, rows, slot)),
    ...(block === null ? [] : tracks.flatMap((slot) => blockOn(sheet, columns, block, slot))),
    ...(swivel === null ? [] : swivelOver(sheet, columns, swivel, tracks)),
    ...all.filter(({ slot }) => slot.kind === 'implements').flatMap(({ slot }) => implement(sheet, rows, slot)),
    ...all
      .filter(({ slot }) => slot.kind === 'attachment')
      .flatMap(({ column, slot }) => attachment(sheet, rows, column, slot)),
  ]
}
