/** Third page: each component that must change because of the first one, with the value and the limit that ask for it. */
import type {
  Change,
  Consequence,
  Cost,
  CostLine,
  Evaluation,
  Finding,
  OptionResult,
  ResultDocument,
} from '../../evaluation.ts'
import { count, typeset, type Units } from '../format.ts'
import { componentName, plainName } from '../names.ts'
import { money, moneySaid } from '../prices.ts'
import { en } from '../wording.ts'
import { type DrawingView, drawingView } from './drawing.ts'
import { type FindingRow, findingRow, findingValues } from './finding-text.ts'
import { workRows } from './repair-rows.ts'
import { isInRepair, type Subject } from './subject.ts'
import { hotterNote } from './ways.ts'

export interface PartRow {
  readonly number: string
  /** Id, for the drawing. */
  readonly component: string
  /** Asked for itself, not brought by something else. */
  readonly isAsked: boolean
  readonly what: string
  readonly gloss: string
  readonly because: string
  readonly values: readonly { readonly text: string; readonly source: string }[]
  readonly part: string
  readonly joints: readonly string[]
  readonly price: string
  readonly missing: boolean
}

export interface PartsGroup {
  readonly heading: string
  readonly intro: string
  readonly rows: readonly PartRow[]
  readonly hasRows: boolean
  readonly stops: readonly FindingRow[]
  readonly hasStops: boolean
  /** null where nothing of the table has a place in the circuit. */
  readonly drawing: DrawingView | null
  readonly hasDrawing: boolean
}

/** What a group says, before it is drawn. */
interface Told extends Omit<PartsGroup, 'drawing' | 'hasDrawing'> {
  /** Names in its sentence what follows, without a table. */
  readonly takes: boolean
}

export interface PartsView {
  readonly words: typeof en.parts
  /** Says that one part is not enough only where something follows. */
  readonly heading: string
  /** Nothing to show where the machine has to be measured first. */
  readonly shown: boolean
  readonly groups: readonly PartsGroup[]
  readonly hasGroups: boolean
  readonly existing: readonly FindingRow[]
  readonly existingNote: string
  readonly hasExisting: boolean
}

const valueText = (finding: Finding, units: Units) => {
  const { value, limit } = findingValues(finding, units)
  return finding.limit === null ? value : en.parts.limitIs(value, limit)
}

/** Line of the cost that is this part, or what is ordered for it. */
const costLine = (consequence: Consequence, cost: Cost): CostLine | undefined =>
  consequence.part === null
    ? cost.lines.find((line) => line.part === null && line.what.toLowerCase().startsWith(consequence.kind))
    : cost.lines.find((line) => line.part === consequence.part)

/** What the customer pays for one part, where a cost line is that part and nothing else; hoses are priced by the metre. */
const priceText = (consequence: Consequence, cost: Cost): string => {
  if (!consequence.available && !consequence.specialOrder) return en.parts.notToBeHad
  const line = costLine(consequence, cost)
  const price =
    line === undefined || line.amount === null || line.quantity !== consequence.quantity
      ? en.parts.inPrice
      : money(line.amount, cost.currency)
  return consequence.specialOrder ? en.parts.specialOrder(price) : price
}

const partText = (consequence: Consequence, cost: Cost): string => {
  const line = consequence.part === null ? undefined : costLine(consequence, cost)
  const ordered = consequence.specialOrder
    ? (costLine(consequence, cost)?.what ?? consequence.kind)
    : en.parts.noPartFits
  const name =
    line?.what.replace(/, metre$/, '') ?? (consequence.part === null ? ordered : en.capital(consequence.kind))
  return typeset(en.parts.times(count(consequence.quantity), en.capital(name)))
}

/** The finding is about this component itself, not about one that brought it. */
const about = (finding: Finding, component: string) =>
  finding.component === component ||
  component.startsWith(`${finding.component}.`) ||
  finding.component.startsWith(`${component}.`)

/** Rows of a table; `told` are the links of the chain that a row above has told already. */
const consequenceRows = (
  consequences: readonly Consequence[],
  start: number,
  findings: readonly Finding[],
  cost: Cost,
  told: readonly string[],
  units: Units,
): readonly PartRow[] => {
  const seen = new Set(told)
  return consequences.map((consequence, index) => {
    const asking = consequence.because
      .map((id) => findings.find((finding) => finding.id === id && finding.severity !== 'ok'))
      .filter((finding) => finding !== undefined)
      .filter((finding) => about(finding, consequence.component))
    const fresh = consequence.chain.filter((link) => !seen.has(link))
    for (const link of consequence.chain) seen.add(link)
    const { name, gloss } = plainName(consequence.component)
    return {
      number: String(start + index),
      component: consequence.component,
      isAsked: false,
      what: en.capital(name),
      gloss,
      because: typeset(
        asking[0]?.because ??
          en.parts.purposes[consequence.component] ??
          (fresh.length > 0 ? fresh : consequence.chain.slice(-1)).map(en.sentence).join(' '),
      ),
      values: asking
        .slice(0, 3)
        .map((finding) => ({ text: valueText(finding, units), source: typeset(finding.source) })),
      part: partText(consequence, cost),
      joints: consequence.connections
        .filter(({ adapter }) => adapter !== null && consequence.kind !== 'adapter')
        .map(({ from, to }) => en.parts.adapter(from, to)),
      price: priceText(consequence, cost),
      missing: !consequence.available && !consequence.specialOrder,
    }
  })
}

/** What a change says where there was nothing to take the place of. */
const NOTHING: ReadonlySet<string> = new Set(['', 'none', 'as it is'])

/** Price of what was asked for, where a cost line is that very thing. */
const askedPrice = (change: Change, cost: Cost): string => {
  const line = cost.lines.find((candidate) => candidate.what === change.to)
  return line === undefined ? en.parts.inPrice : money(line.amount, cost.currency)
}

const changeRow = (change: Change, position: number, cost: Cost): PartRow => {
  const { name, gloss } = plainName(change.component)
  return {
    number: String(position),
    component: change.component,
    isAsked: true,
    what: en.capital(name),
    gloss,
    because: en.parts.asked,
    values: [],
    part: en.capital(typeset(en.parts.change(NOTHING.has(change.from) ? '' : change.from, change.to))),
    joints: [],
    price: askedPrice(change, cost),
    missing: false,
  }
}

/** Findings of an option from before anything followed, and after: the first tells what asked, the second what is left. */
const allFindings = (option: OptionResult): readonly Finding[] => [
  ...option.asAskedOnly.findings,
  ...option.evaluation.findings,
]

const stopsOf = (evaluation: Evaluation, units: Units): readonly FindingRow[] =>
  evaluation.findings.filter((finding) => finding.severity === 'stop').map((finding) => findingRow(finding, units))

const price = (cost: Cost) => en.parts.wayPrice(moneySaid(cost.low, cost.high, cost.currency, cost.unpriced.length > 0))

const optionGroup = (option: OptionResult, declined: boolean, units: Units): Told => {
  const rows = [
    ...option.changes.map((change, index) => changeRow(change, index + 1, option.cost)),
    ...consequenceRows(
      option.consequences,
      option.changes.length + 1,
      allFindings(option),
      option.cost,
      option.consequences.flatMap(({ chain }) => chain.slice(0, 1)),
      units,
    ),
  ]
  const stops = stopsOf(option.evaluation, units)
  const intro = en.parts.intro(option.changes.length, option.consequences.length)
  return {
    heading: en.parts.groupOption(option.name),
    intro: [intro, ...(declined ? [en.parts.introDeclined] : []), price(option.cost)].join(' '),
    rows,
    hasRows: rows.length > 0,
    stops,
    hasStops: stops.length > 0,
    takes: false,
  }
}

/** A way advised against beside a recommendation: what it would take in one sentence, and what no part cures. */
const briefGroup = (option: OptionResult, units: Units): Told => {
  const names = [...new Set(option.consequences.map(({ component }) => componentName(component)))]
  const stops = stopsOf(option.evaluation, units)
  const takes = names.length === 0 ? [] : [en.parts.introBrief(en.list(names))]
  return {
    heading: en.parts.groupOption(option.name),
    intro: [en.parts.introDeclined, ...takes, price(option.cost)].join(' '),
    rows: [],
    hasRows: false,
    stops,
    hasStops: stops.length > 0,
    takes: names.length > 0,
  }
}

const restoreGroup = (result: ResultDocument, units: Units): readonly Told[] => {
  const { restoration } = result
  if (restoration === null) return []
  const worked = workRows(result, restoration)
  const { findings } = result.baseline
  const parts = consequenceRows(restoration.consequences, worked.length + 1, findings, restoration.cost, [], units)
  const rows = [...worked, ...parts]
  const intro = [en.parts.introRestore, price(restoration.cost), ...hotterNote(result, units)].join(' ')
  return [
    { heading: en.parts.groupRestore, intro, rows, hasRows: rows.length > 0, stops: [], hasStops: false, takes: false },
  ]
}

/** It says what would change, or what stands in the way; a bare "we advise against it" is on the page before. */
const tells = ({ hasRows, hasStops, takes }: Told): boolean => hasRows || hasStops || takes

/** The first table has the circuit above it; a later one has it where one part brings another. */
const drawn = (result: ResultDocument, told: Told, position: number, units: Units): PartsGroup => {
  const isDrawn = position === 1 || told.rows.some(({ isAsked }) => !isAsked)
  const { takes: _, ...shown } = told
  const drawing = isDrawn ? drawingView(result, `circuit-${position}`, told.rows, units) : null
  return { ...shown, drawing, hasDrawing: drawing !== null }
}

/** @param follows something must change because of another */
const headingOf = (groups: readonly PartsGroup[], follows: boolean): string => {
  if (groups.length === 0) return en.parts.existing
  return follows ? en.parts.heading : en.parts.headingPlain
}

export const partsView = (result: ResultDocument, subject: Subject, units: Units): PartsView => {
  const beside = subject.recommended ?? subject.offered
  const told = [
    ...(subject.kind === 'restore' ? restoreGroup(result, units) : []),
    ...(subject.asked === null || subject.kind !== 'decline' ? [] : [optionGroup(subject.asked, true, units)]),
    ...(beside === null || isInRepair(result, beside.name) ? [] : [optionGroup(beside, false, units)]),
    ...(subject.asked === null || subject.kind === 'decline' ? [] : [briefGroup(subject.asked, units)]),
  ]
  const groups =
    subject.kind === 'measure-first' ? [] : told.filter(tells).map((one, index) => drawn(result, one, index + 1, units))
  const existing = result.baseline.findings
    .filter((finding) => finding.severity === 'change' || finding.severity === 'stop')
    .map((finding) => findingRow(finding, units))
  return {
    words: en.parts,
    heading: headingOf(
      groups,
      [beside, subject.asked].some((option) => (option?.consequences.length ?? 0) > 0),
    ),
    shown: subject.kind !== 'measure-first' && groups.length + existing.length > 0,
    groups,
    hasGroups: groups.length > 0,
    existing,
    existingNote: groups.length > 0 ? en.parts.existingNote : en.parts.existingAlone,
    hasExisting: existing.length > 0,
  }
}
