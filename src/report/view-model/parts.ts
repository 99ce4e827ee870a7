/** Third page: each component that must change because of the first one, with the value and the limit that ask for it. */
import type { Change, Consequence, Cost, Evaluation, Finding, OptionResult, ResultDocument } from '../../evaluation.ts'
import { against, count, money, quantity, type Units } from '../format.ts'
import { componentName, plainName } from '../names.ts'
import { en } from '../wording.ts'
import type { Subject } from './subject.ts'

export interface PartRow {
  readonly number: string
  readonly what: string
  readonly gloss: string
  readonly because: string
  readonly values: readonly { readonly text: string; readonly source: string }[]
  readonly part: string
  readonly joints: readonly string[]
  readonly price: string
  readonly missing: boolean
}

export interface FindingRow {
  readonly what: string
  readonly because: string
  readonly value: string
  readonly limit: string
  readonly source: string
}

export interface PartsGroup {
  readonly heading: string
  readonly intro: string
  readonly rows: readonly PartRow[]
  readonly hasRows: boolean
  readonly stops: readonly FindingRow[]
  readonly hasStops: boolean
}

export interface PartsView {
  readonly words: typeof en.parts
  /** Nothing to show where the machine has to be measured first. */
  readonly shown: boolean
  readonly groups: readonly PartsGroup[]
  readonly existing: readonly FindingRow[]
  readonly hasExisting: boolean
}

const SPLIT = /^(.*?)[\s.]*$/

/** Value and limit of a finding as text. */
export const findingValues = (finding: Finding, units: Units): { value: string; limit: string } => {
  const { value, limit, unit } = finding
  if (typeof value === 'number' && typeof limit === 'number') return against(value, limit, unit, units)
  const text = (side: number | string | null, missing: string) =>
    typeof side === 'number' ? quantity(side, unit, units) : (side ?? missing)
  return { value: text(value, en.notRead), limit: text(limit, en.dash) }
}

export const findingRow = (finding: Finding, units: Units): FindingRow => ({
  what: `${en.capital(componentName(finding.component))}: ${SPLIT.exec(finding.heading)?.[1] ?? finding.heading}`,
  because: finding.because,
  ...findingValues(finding, units),
  source: finding.source,
})

const valueText = (finding: Finding, units: Units) => {
  const { value, limit } = findingValues(finding, units)
  return finding.limit === null ? value : en.parts.limitIs(value, limit)
}

/** What the customer pays for one part, as far as the cost lines show it on its own. */
const priceText = (consequence: Consequence, cost: Cost): string => {
  const line = cost.lines.find((candidate) => candidate.part !== null && candidate.part === consequence.part)
  if (line === undefined || line.unitPrice === null)
    return consequence.specialOrder || !consequence.available ? en.parts.specialOrder : en.parts.seeCost
  return line.quantity === consequence.quantity && line.amount !== null
    ? money(line.amount, cost.currency)
    : en.parts.times(count(consequence.quantity), money(line.unitPrice, cost.currency))
}

const partText = (consequence: Consequence, cost: Cost): string => {
  const line = cost.lines.find((candidate) => candidate.part !== null && candidate.part === consequence.part)
  const name = line?.what ?? consequence.part ?? (consequence.specialOrder ? consequence.kind : en.parts.noPartFits)
  return en.parts.times(count(consequence.quantity), name)
}

const consequenceRow = (
  consequence: Consequence,
  position: number,
  findings: readonly Finding[],
  cost: Cost,
  units: Units,
): PartRow => {
  const asking = consequence.because
    .map((id) => findings.find((finding) => finding.id === id && finding.severity !== 'ok'))
    .filter((finding) => finding !== undefined)
  const { name, gloss } = plainName(consequence.component)
  const lost = !consequence.available && !consequence.specialOrder
  return {
    number: String(position),
    what: en.capital(name),
    gloss,
    because: asking[0]?.because ?? consequence.chain.at(-1) ?? '',
    values: asking.slice(0, 3).map((finding) => ({ text: valueText(finding, units), source: finding.source })),
    part: partText(consequence, cost),
    joints: consequence.connections
      .filter(({ adapter }) => adapter !== null)
      .map(({ from, to }) => en.parts.adapter(from, to)),
    price: lost ? en.parts.notToBeHad : priceText(consequence, cost),
    missing: lost,
  }
}

const changeRow = (change: Change, position: number): PartRow => {
  const { name, gloss } = plainName(change.component)
  return {
    number: String(position),
    what: en.capital(name),
    gloss,
    because: en.parts.asked,
    values: [],
    part: en.parts.change(change.from, change.to),
    joints: [],
    price: en.parts.seeCost,
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

const optionGroup = (option: OptionResult, declined: boolean, units: Units): PartsGroup => {
  const rows = [
    ...option.changes.map((change, index) => changeRow(change, index + 1)),
    ...option.consequences.map((consequence, index) =>
      consequenceRow(consequence, option.changes.length + index + 1, allFindings(option), option.cost, units),
    ),
  ]
  const stops = stopsOf(option.evaluation, units)
  const intro = en.parts.intro(option.changes.length, option.consequences.length)
  return {
    heading: en.parts.groupOption(option.name),
    intro: declined ? `${intro} ${en.parts.introDeclined}` : intro,
    rows,
    hasRows: rows.length > 0,
    stops,
    hasStops: stops.length > 0,
  }
}

const restoreGroup = (result: ResultDocument, units: Units): readonly PartsGroup[] => {
  const { restoration } = result
  if (restoration === null) return []
  const rows = restoration.consequences.map((consequence, index) =>
    consequenceRow(consequence, index + 1, result.baseline.findings, restoration.cost, units),
  )
  return [
    {
      heading: en.parts.groupRestore,
      intro: en.parts.introRestore,
      rows,
      hasRows: rows.length > 0,
      stops: [],
      hasStops: false,
    },
  ]
}

export const partsView = (result: ResultDocument, subject: Subject, units: Units): PartsView => {
  const beside = subject.recommended ?? subject.offered
  const groups = [
    ...(subject.kind === 'restore' ? restoreGroup(result, units) : []),
    ...(subject.asked === null || subject.kind !== 'decline' ? [] : [optionGroup(subject.asked, true, units)]),
    ...(beside === null ? [] : [optionGroup(beside, false, units)]),
    ...(subject.asked === null || subject.kind === 'decline' ? [] : [optionGroup(subject.asked, true, units)]),
  ]
  const existing = result.baseline.findings
    .filter((finding) => finding.severity === 'change' || finding.severity === 'stop')
    .map((finding) => findingRow(finding, units))
  return {
    words: en.parts,
    shown: subject.kind !== 'measure-first' && groups.length + existing.length > 0,
    groups: subject.kind === 'measure-first' ? [] : groups,
    existing,
    hasExisting: existing.length > 0,
  }
}
