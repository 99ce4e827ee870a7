/** The commissioning record: what is read after the work, when it is accepted, and a place to write. */
import type { Evaluation, Range, ResultDocument } from '../../evaluation.ts'
import type { WorkOrder } from '../../work-order.ts'
import { decimal, quantity, span, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { kindWords } from '../wording-machine-kind.ts'
import { technician } from '../wording-technician.ts'
import { engineFault } from './steps.ts'

export interface RecordRow {
  readonly reading: string
  readonly accepted: string
}

export interface RecordView {
  readonly words: typeof technician.record
  readonly heading: string
  readonly note: string
  /** Head of the second column. */
  readonly second: string
  readonly rows: readonly RecordRow[]
}

/** Acceptance figures: common practice, no source. */
const COURSE_M = 20
const DRIFT_MM = 300
const OIL_AT_MOST_C = 80
/** Gauge pressure at the inlet. */
const INLET_BAR = -0.25
/** Pressures at which a pump is metered; the share it may lose is in the words. */
const FLOW_LOW_BAR = 7
const FLOW_HIGH_BAR = 69

const words = technician.record

/** A figure of the method, whole where it is whole. */
const whole = (value: number, unit: string, units: Units): string =>
  quantity(value, unit, units).replace('.0\u00a0', '\u00a0')

/** A speed told as seconds over the measured course: t = 3.6 s / v. */
const seconds = (speedKmh: number): string => decimal((3.6 * COURSE_M) / speedKmh, 0)

const travelAccepted = (after: Evaluation, range: Range | null, units: Units): string => {
  const { speedKmh, stalled } = after.travel.level
  const { p10, p90 } = range?.speedKmh ?? { p10: null, p90: null }
  if (stalled || speedKmh <= 0) return words.noted
  if (p10 === null || p90 === null || p10 <= 0)
    return words.travelAbout(quantity(speedKmh, 'km/h', units), `${seconds(speedKmh)}\u00a0s`)
  const [fast, slow] = [seconds(p90), seconds(p10)]
  return words.travelOk(span(p10, p90, 'km/h', units), `${fast === slow ? fast : `${fast}–${slow}`}\u00a0s`)
}

const attachmentRows = (after: Evaluation, units: Units): readonly RecordRow[] => {
  const found = after.findings.find(({ check }) => check === 'attachment-flow')
  if (found === undefined || typeof found.value !== 'number') return []
  const pump = after.findings.find(({ check }) => check === 'attachment-pressure')?.value
  const pressure = typeof pump === 'number' ? quantity(pump, 'bar', units) : ''
  return [
    {
      reading: words.attachment(pressure),
      accepted: words.attachmentOk(quantity(found.value, found.unit, units)),
    },
  ]
}

/** @param after what the machine should do then  @param faster whether any travel speed rises */
export const recordOf = (
  result: ResultDocument,
  order: WorkOrder,
  after: Evaluation,
  range: Range | null,
  faster: boolean,
  units: Units,
): RecordView => {
  const text = (value: number, unit: string) => whole(value, unit, units)
  const row = (reading: string, accepted: string = words.noted): RecordRow => ({ reading, accepted })
  const tracks = result.diagram.travel.running === 'tracks'
  const hasFan = order.pulls.some(({ kind }) => kind === 'cooler' || kind === 'thermostat')
  const course = text(COURSE_M, 'm')
  const [low, high] = [text(FLOW_LOW_BAR, 'bar'), text(FLOW_HIGH_BAR, 'bar')]
  const settled = after.heat.steadyOilC
  const oilAccepted = [
    words.oilOk(text(OIL_AT_MOST_C, '°C'), text(result.sheet.site.ambientC, '°C')),
    ...(settled === null ? [] : [words.oilForecast(text(settled, '°C'))]),
  ].join('; ')
  return {
    words,
    heading: words.heading,
    note: words.note,
    second: words.accepted,
    rows: [
      row(words.oilStart),
      row(words.air),
      row(words.idle, engineFault(result, order) === null ? words.idleOk : words.idleRepaired),
      ...order.reliefs.map(({ circuit, settingBar }) =>
        row(words.relief(componentName(`circuits.${circuit}`)), words.reliefOk(text(settingBar, 'bar'))),
      ),
      row(words.inlet, words.inletOk(text(INLET_BAR, 'bar'))),
      row(words.flow(low, high), words.flowOk(low, high)),
      row(words.travel(course), travelAccepted(after, range, units)),
      ...(tracks
        ? [row(words.sides, words.sidesOk), row(words.drift(course), words.driftOk(text(DRIFT_MM, 'mm')))]
        : []),
      row(words.pressure),
      row(words.drain, words.drainOk),
      ...attachmentRows(after, units),
      row(words.oil, oilAccepted),
      ...(hasFan ? [row(words.fan)] : []),
      row(words.charge, words.chargeOk),
      row(words.brake, words.brakeOk),
      ...(faster ? [row(words.stop, words.stopOk)] : []),
      row(kindWords(result.sheet.machine.type).stops, words.armOk),
      row(words.leak, words.leakOk),
      row(words.papers),
    ],
  }
}

/** Readings for a machine that has to be measured first: no forecast, nothing to accept but that they agree. */
export const readingsOf = (result: ResultDocument, units: Units): RecordView => {
  const { heading, note, how, list } = technician.readings
  const row = (reading: string, accepted: string): RecordRow => ({ reading, accepted })
  const tracks = result.diagram.travel.running === 'tracks'
  const course = whole(COURSE_M, 'm', units)
  return {
    words,
    heading,
    note,
    second: how,
    rows: [
      row(words.oilStart, list.oilStart),
      row(words.air, list.air),
      row(words.idle, list.idle),
      ...result.diagram.circuits.map(({ name }) => row(words.relief(componentName(`circuits.${name}`)), list.relief)),
      row(words.inlet, list.inlet),
      row(words.flow(whole(FLOW_LOW_BAR, 'bar', units), whole(FLOW_HIGH_BAR, 'bar', units)), list.flow),
      row(words.travel(course), list.travel),
      ...(tracks ? [row(words.sides, list.sides), row(words.drift(course), list.drift)] : []),
      row(words.pressure, list.pressure),
      row(words.drain, list.drain),
      row(words.oil, list.oil),
    ],
  }
}
