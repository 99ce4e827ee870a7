/**
 * Who stands how high, from the motors at the top to the tank at the bottom. Each row is as high as the highest of what
 * stands in it, labels included.
 */
import type { DiagramLine } from '../../diagram.ts'
import type { Columns } from './columns.ts'
import { blockFor, isMarked, motorBlock, partId, plainBlock, type Sheet } from './sheet.ts'
import { DIAMOND, PUMP_RADIUS, RELIEF_HALF, VALVE_BOX } from './symbols.ts'
import { leading } from './text.ts'

export interface Span {
  readonly top: number
  readonly bottom: number
}

export interface Rows {
  readonly attachment: Span
  readonly coupler: number
  /** Of the labels of the attachment's lines. */
  readonly auxiliary: Span
  readonly motorLabel: number
  readonly motors: readonly number[]
  readonly block: Span | null
  readonly swivel: Span | null
  /** From the valve upward; none of them where no line is described. */
  readonly lines: readonly (Span & { readonly line: DiagramLine })[]
  /** Outline of the control valves. */
  readonly valve: Span
  readonly sections: number
  readonly gallery: number
  readonly valveLabel: number
  readonly relief: number
  readonly reliefLabel: number
  readonly header: number
  /** Room of cooler and of filter with their bypass, along the way back. */
  readonly treated: number
  readonly cooler: number
  readonly filter: number
  readonly pump: number
  readonly pumpLabel: number
  readonly branch: number
  readonly suctionLabel: number
  readonly tank: Span
  readonly collector: number
  readonly strainer: number
  readonly height: number
}

const TOP = 5
const MOTOR_STEP = 37
const TREATED = 52

/** The lines of a track below the swivel and above it, from the valve upward. */
export const partedLines = (sheet: Sheet): readonly [readonly DiagramLine[], readonly DiagramLine[]] => {
  const { lines, swivel } = sheet.diagram.travel
  if (swivel === null) return [lines, []]
  const last = (id: string) => id.split('.').at(-1) ?? ''
  const upTo = lines.findIndex(({ id }) => last(id).endsWith('to-swivel'))
  const from = lines.findIndex(({ id }) => last(id).startsWith('swivel-to'))
  const below = upTo >= 0 ? upTo + 1 : from >= 0 ? from : Math.min(1, lines.length)
  return [lines.slice(0, below), lines.slice(below)]
}

/** Heights of a track's rows are found from the valve upward, so that the lines reach down to it whatever else needs room. */
export const rowsOf = (sheet: Sheet, { columns }: Columns): Rows => {
  const { travel } = sheet.diagram
  const height = (id: string) => blockFor(sheet, id).height
  const most = (part: string) => Math.max(0, ...columns.map(({ circuit }) => height(partId(circuit, part))))
  const has = (kind: string) => columns.some(({ slots }) => slots.some((slot) => slot.kind === kind))

  // Distances upward from the valve's outline.
  const [below, above] = partedLines(sheet)
  const lineHeight = (line: DiagramLine) => Math.max(22, height(line.id) + 8)
  const sum = (of: readonly DiagramLine[]) => of.reduce((total, line) => total + lineHeight(line), 0)
  const cylinderRoom = has('implements') ? plainBlock(sheet, [sheet.words.cylinders]).height + 36 : 26
  const stretch = below.length === 0 ? 0 : Math.max(0, cylinderRoom - sum(below)) / below.length
  let up = 0
  const stacked = (of: readonly DiagramLine[], more: number) =>
    of.map((line) => {
      const bottom = up
      up += lineHeight(line) + more
      return { line, bottom, top: up }
    })
  const lowLines = stacked(below, stretch)
  if (below.length === 0) up += cylinderRoom
  const swivelUp = travel.swivel === null ? null : { bottom: up, top: up + Math.max(18, height(travel.swivel.id) + 6) }
  up = swivelUp?.top ?? up
  const highLines = stacked(above, 0)
  const blockUp = travel.block === null ? null : { bottom: up, top: up + Math.max(20, height(travel.block.id) + 6) }
  up = blockUp?.top ?? up
  const side = Math.max(1, Math.min(4, Math.ceil(travel.motors / 2)))
  const motorsUp = Array.from({ length: side }, (_, index) => up + 20 + index * MOTOR_STEP)
  const motorLabelUp =
    (motorsUp.at(-1) ?? up) + 20 + Math.max(motorBlock(sheet, 'left').height, motorBlock(sheet, 'right').height)
  const boxRoom = plainBlock(sheet, [sheet.words.attachment]).height + 10
  const couplerRoom = Math.max(24, most('auxiliary.coupler'))
  const linesRoom = Math.max(most('auxiliary.lines.out'), most('auxiliary.lines.back'), leading(sheet.size))
  const attachmentUp = has('attachment') ? linesRoom + 16 + couplerRoom + 12 + boxRoom : 0
  const valveTop = TOP + Math.max(motorLabelUp, attachmentUp)
  const down = (distance: number) => valveTop - distance
  const span = (distances: Span): Span => ({ top: down(distances.top), bottom: down(distances.bottom) })

  const sections = valveTop + 12 + VALVE_BOX / 2
  const gallery = sections + VALVE_BOX / 2 + 8
  const valveBottom = gallery + 6
  const valveLabel = valveBottom + 4
  const unread = columns.some(({ circuit }) => circuit.valve === null)
  const valveLabelHeight = Math.max(most('valve'), unread ? plainBlock(sheet, sheet.words.valveUnread).height : 0)
  const relief = valveLabel + valveLabelHeight + 6 + RELIEF_HALF + 12
  const reliefLabel = relief + RELIEF_HALF + 10
  const header = reliefLabel + Math.max(most('relief'), most('lines.pressure'), most('lines.return')) + 8
  const pump = header + Math.max(12 + PUMP_RADIUS, most('coupling') + PUMP_RADIUS + 6)
  const pumpLabel = pump + 6
  const pumpBottom = Math.max(pump + PUMP_RADIUS + 4, pumpLabel + most('pump'), pump + 20 + height('engine'))
  const shares = columns.some(({ circuit }) => circuit.suctionSharedWith !== null)
  const branch = pumpBottom + (shares ? 8 : 0)
  const suctionLabel = branch + 6
  const treatments = [
    sheet.diagram.cooler !== null || isMarked(sheet, 'cooler'),
    sheet.diagram.filter !== null || isMarked(sheet, 'filter'),
  ]
  const room = Math.max(TREATED, height('cooler') + 8, height('filter') + 8, height('cooler-bypass') + 8)
  const cooler = header + 6 + room / 2
  const filter = cooler + (treatments[0] ? room : 0)
  const treated = header + 6 + room * treatments.filter(Boolean).length
  const breather = isMarked(sheet, 'breather') ? height('breather') + 26 : 0
  const tankTop = Math.max(suctionLabel + most('lines.suction') + 8, treated + breather + 6)
  const collector = tankTop + 10
  const hasStrainer = sheet.diagram.strainer !== null || isMarked(sheet, 'strainer')
  const strainerHalf = Math.max(DIAMOND, height('strainer') / 2)
  const strainer = collector + 6 + strainerHalf
  const tankBottom = Math.max(
    tankTop + 14 + height('reservoir'),
    hasStrainer ? strainer + strainerHalf + 12 : collector + 26,
  )
  return {
    attachment: { top: TOP, bottom: TOP + boxRoom },
    coupler: TOP + boxRoom + 8 + couplerRoom / 2,
    auxiliary: { top: TOP + boxRoom + 8 + couplerRoom, bottom: valveTop },
    motorLabel: down(motorLabelUp),
    motors: motorsUp.map(down),
    block: blockUp === null ? null : span(blockUp),
    swivel: swivelUp === null ? null : span(swivelUp),
    lines: [...lowLines, ...highLines].map(({ line, ...distances }) => ({ line, ...span(distances) })),
    valve: { top: valveTop, bottom: valveBottom },
    sections,
    gallery,
    valveLabel,
    relief,
    reliefLabel,
    header,
    treated: room,
    cooler,
    filter,
    pump,
    pumpLabel,
    branch,
    suctionLabel,
    tank: { top: tankTop, bottom: tankBottom },
    collector,
    strainer,
    height: tankBottom + 5,
  }
}
