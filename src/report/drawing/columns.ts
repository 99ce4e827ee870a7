/**
 * Who stands where from left to right: the engine, a column for each circuit with a slot for each section of its valve, the
 * way back to the tank. Widths come from what stands there, labels included, so that nothing can meet.
 */
import type { DiagramCircuit } from '../../diagram.ts'
import { blockFor, isMarked, motorBlock, partId, plainBlock, type Sheet } from './sheet.ts'
import { MOTOR_RADIUS, VALVE_HALF_WIDTH, VALVE_PORT } from './symbols.ts'

export type SlotKind = 'left' | 'right' | 'implements' | 'attachment' | 'none'

export interface Slot {
  readonly kind: SlotKind
  /** Middle of the valve section. */
  readonly x: number
}

export interface Column {
  readonly circuit: DiagramCircuit
  readonly slots: readonly Slot[]
  /** Of pump and pressure line. */
  readonly pumpX: number
  /** Of the return line. */
  readonly returnX: number
}

export interface Columns {
  readonly columns: readonly Column[]
  readonly engineX: number
  /** Of the way back to the tank. */
  readonly tankX: number
  /** Of what bypasses cooler and filter, left of the way back. */
  readonly bypassX: number
  readonly left: number
  readonly right: number
  /** Between the two lines of a track. */
  readonly pitch: number
  readonly width: number
}

/** Half the outline of a valve beyond its last section: wide enough that no line of a track runs along its edge. */
export const outlineHalf = (pitch: number): number => Math.max(VALVE_HALF_WIDTH + 3, pitch / 2 + 8)

/** Between the two lines of the attachment. */
export const AUXILIARY_PITCH = 30
export const RELIEF_AWAY = 26
export const COUPLING_AWAY = 30
const GAP = 6
const MARGIN = 4
/** A narrower circuit is spread, so that the text keeps its size on the page. */
const LEAST_WIDTH = 640
const MOST_SPREAD = 48

const kindsOf = ({ drives, works }: DiagramCircuit): readonly SlotKind[] => {
  const implement: readonly SlotKind[] = works.includes('implements') ? ['implements'] : []
  const attachment: readonly SlotKind[] = works.includes('attachment') ? ['attachment'] : []
  // The tracks of two circuits stand next to each other, under one swivel.
  if (drives === 'left track') return [...attachment, ...implement, 'left']
  const tracks: readonly SlotKind[] =
    drives === 'both tracks' ? ['left', 'right'] : drives === 'right track' ? ['right'] : []
  const all = [...tracks, ...implement, ...attachment]
  return all.length === 0 ? ['none'] : all
}

/** Tracks first, left before right; circuits that drive none after them, as the file has them. */
const DRIVES: readonly string[] = ['left track', 'both tracks', 'right track']
const inOrder = (circuits: readonly DiagramCircuit[]) => {
  const rank = ({ drives }: DiagramCircuit) => (DRIVES.includes(drives) ? DRIVES.indexOf(drives) : DRIVES.length)
  return [...circuits].sort((one, other) => rank(one) - rank(other))
}

const pitchOf = (sheet: Sheet): number => {
  const { block, swivel, lines } = sheet.diagram.travel
  const inside = [
    ...lines.map(({ id }) => blockFor(sheet, id).width + 10),
    ...(block === null ? [] : [blockFor(sheet, block.id).width + 16]),
    ...(swivel === null ? [] : [blockFor(sheet, swivel.id).width + 16]),
  ]
  return Math.max(2 * MOTOR_RADIUS + 16, ...inside)
}

/** Room left and right of a section's middle. */
const roomOf = (sheet: Sheet, circuit: DiagramCircuit, kind: SlotKind, pitch: number): readonly [number, number] => {
  const least = outlineHalf(pitch) + 3
  const both = (half: number): readonly [number, number] => [Math.max(least, half), Math.max(least, half)]
  if (kind === 'left' || kind === 'right') {
    return both(Math.max(motorBlock(sheet, kind).width / 2 + GAP, pitch / 2 + 14))
  }
  if (kind === 'implements') return both(Math.max(34, plainBlock(sheet, [sheet.words.cylinders]).width / 2 + GAP))
  if (kind === 'none') return both(0)
  const width = (part: string) => blockFor(sheet, partId(circuit, part)).width
  const half = AUXILIARY_PITCH / 2
  const box = plainBlock(sheet, [sheet.words.attachment]).width / 2 + 10
  return [
    Math.max(least, box, half + 2 * GAP + width('auxiliary.lines.out')),
    Math.max(least, box, half + 2 * GAP + Math.max(width('auxiliary.lines.back'), width('auxiliary.coupler') + 4)),
  ]
}

interface Sizes {
  readonly circuit: DiagramCircuit
  readonly slots: readonly Slot[]
  readonly returnX: number
  /** From the pump's line to both edges. */
  readonly before: number
  readonly after: number
}

/** Sizes of one column, its pump's line at 0. */
const sizesOf = (sheet: Sheet, circuit: DiagramCircuit, pitch: number): Sizes => {
  const width = (part: string) => blockFor(sheet, partId(circuit, part)).width
  const rooms = kindsOf(circuit).map((kind) => ({ kind, room: roomOf(sheet, circuit, kind, pitch) }))
  let edge = VALVE_PORT - (rooms[0]?.room[0] ?? 0)
  const slots = rooms.map(({ kind, room }): Slot => {
    const x = edge + room[0]
    edge = x + room[1]
    return { kind, x }
  })
  const valve =
    circuit.valve === null && !isMarked(sheet, partId(circuit, 'valve'))
      ? plainBlock(sheet, sheet.words.valveUnread).width
      : width('valve')
  const outline = (slots.at(-1)?.x ?? 0) + outlineHalf(pitch)
  const wanted = Math.max(
    (slots.at(-1)?.x ?? 0) + VALVE_PORT,
    RELIEF_AWAY + 9 + 2 * GAP,
    Math.max(valve, width('relief') + 4) + 2 * GAP,
  )
  const returnX = Math.abs(wanted - outline) < GAP ? outline + GAP : wanted
  const coupling = width('coupling')
  return {
    circuit,
    slots,
    returnX,
    before: Math.max(
      (rooms[0]?.room[0] ?? 0) - VALVE_PORT,
      width('lines.pressure') + 2 * GAP,
      COUPLING_AWAY + 14,
      coupling + 2 * GAP,
    ),
    after: Math.max(
      edge,
      returnX + width('lines.return') + 2 * GAP,
      width('pump') + 20 + GAP,
      width('lines.suction') + 2 * GAP,
      width('strainer') + 20 + GAP,
    ),
  }
}

/** Places everything from left to right. */
export const columnsOf = (sheet: Sheet): Columns => {
  const pitch = pitchOf(sheet)
  const sizes = inOrder(sheet.diagram.circuits).map((circuit) => sizesOf(sheet, circuit, pitch))
  const width = (id: string) => blockFor(sheet, id).width
  const engineRoom = Math.max(30, width('engine'), width('reservoir') - 20) + 3 * GAP
  const bypassRoom = Math.max(width('cooler-bypass') + 14, 10) + 22
  const tankRoom = Math.max(width('cooler'), width('filter'), width('breather') + 10, 0) + 20 + 2 * GAP
  const least =
    2 * MARGIN + engineRoom + sizes.reduce((sum, { before, after }) => sum + before + after, 0) + bypassRoom + tankRoom
  const spare = Math.max(0, LEAST_WIDTH - least)
  const spread = Math.min(MOST_SPREAD, spare / (sizes.length + 1))
  const total = Math.max(LEAST_WIDTH, least)
  const left = MARGIN + (total - least - spread * sizes.length) / 2
  let edge = left + engineRoom
  const columns = sizes.map(({ circuit, slots, returnX, before, after }): Column => {
    const pumpX = edge + before
    edge = pumpX + after + spread
    return {
      circuit,
      slots: slots.map((slot) => ({ ...slot, x: slot.x + pumpX })),
      pumpX,
      returnX: returnX + pumpX,
    }
  })
  const tankX = edge + bypassRoom
  return {
    columns,
    engineX: left + Math.max(30, width('engine')) / 2,
    tankX,
    bypassX: tankX - 24,
    left,
    right: tankX + tankRoom,
    pitch,
    width: total,
  }
}
