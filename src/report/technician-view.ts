/**
 * The technician's copy as strings and flags: a work order for what is recommended or for the restoration, for every option
 * where that is asked for. No field is optional, so that a strict template fails where it names one that is not there.
 */
import type { Evaluation, Range, ResultDocument } from '../evaluation.ts'
import type { WorkOrder } from '../work-order.ts'
import type { CustomerOptions, LetterheadView } from './customer-view.ts'
import { letterhead } from './customer-view.ts'
import type { Units } from './format.ts'
import { pageStyle } from './page-style.ts'
import { retoldResult } from './view-model/retold.ts'
import { isFaster, isInRepair, subjectOf } from './view-model/subject.ts'
import { type PullsView, pullsView } from './view-model-technician/pull-rows.ts'
import { type RecordView, readingsOf, recordOf } from './view-model-technician/record.ts'
import { deadSteps, numbered, type StepView, stepsOf } from './view-model-technician/steps.ts'
import { en } from './wording.ts'
import { technician } from './wording-technician.ts'

export interface SheetView {
  readonly id: string
  readonly heading: string
  /** Machine and job again, over a sheet that begins on a page of its own; '' over the first, below the letterhead. */
  readonly job: string
  /** It is no order yet, or never will be; '' for an ordered one. */
  readonly warning: string
  readonly conditions: readonly string[]
  readonly hasConditions: boolean
  readonly pulls: PullsView
  readonly groups: readonly StepView[]
  readonly record: RecordView
}

export interface MeasureView {
  readonly words: typeof technician.measure
  readonly why: readonly string[]
  readonly groups: readonly StepView[]
  readonly record: RecordView
}

export interface TechnicianView {
  readonly lang: string
  readonly title: string
  readonly style: string
  readonly words: typeof technician
  readonly letterhead: LetterheadView
  readonly sheets: readonly SheetView[]
  readonly hasSheets: boolean
  readonly measure: MeasureView | null
  readonly hasMeasure: boolean
  readonly nothing: string
  readonly hasNothing: boolean
}

export interface TechnicianOptions extends CustomerOptions {
  /** A work order for each option, not only for what is recommended. */
  readonly everyOption?: boolean
}

const byName = (result: ResultDocument, name: string | null) =>
  result.options.find((option) => option.name === name) ?? null

const wanted = (result: ResultDocument, everyOption: boolean): readonly WorkOrder[] => {
  const { workOrders, recommendation } = result
  const { recommended, offered, kind } = subjectOf(result)
  const repair = workOrders.find(({ option }) => option === null)
  const repairs = kind === 'restore' && repair !== undefined ? [repair] : []
  if (everyOption) return [...repairs, ...workOrders.filter(({ option }) => option !== null)]
  if (recommendation.kind === 'measure-first') return []
  const name = (kind === 'decline' ? offered : recommended)?.name ?? null
  const beside = workOrders.filter(({ option }) => option !== null && option === name)
  return [...repairs, ...beside.filter(({ option }) => !isInRepair(result, option))]
}

const warningOf = (result: ResultDocument, order: WorkOrder): string => {
  const option = byName(result, order.option)
  if (option === null) return ''
  if (result.recommendation.option === option.name) return ''
  return option.answer.answer === 'decline' ? technician.against : technician.offered
}

/** What the machine should do after the order, and how surely. */
const afterOf = (result: ResultDocument, order: WorkOrder): { after: Evaluation; range: Range | null } => {
  const option = byName(result, order.option)
  if (option !== null) return { after: option.evaluation, range: option.range }
  return { after: result.restored ?? result.baseline, range: null }
}

const sheetView = (result: ResultDocument, order: WorkOrder, index: number, units: Units): SheetView => {
  const option = byName(result, order.option)
  const conditions = option?.answer.conditions.map(en.sentence) ?? []
  const { after, range } = afterOf(result, order)
  // A repair brings back what its maker tested; only an option goes beyond.
  const faster = option !== null && isFaster(result.restored ?? result.baseline, after)
  return {
    id: `order-${index + 1}`,
    heading: option === null ? technician.sheetRestore : technician.sheetOption(option.name),
    job: index === 0 ? '' : en.letterhead.footerMachine(result.scenario.title, result.sheet.machine.name),
    warning: warningOf(result, order),
    conditions,
    hasConditions: conditions.length > 0,
    pulls: pullsView(order.pulls, units),
    groups: stepsOf(result, order, units),
    record: recordOf(result, order, after, range, faster, units),
  }
}

const measureView = (result: ResultDocument, units: Units): MeasureView => ({
  words: technician.measure,
  why: result.recommendation.reasons.map(({ text }) => en.sentence(text)),
  groups: numbered([deadSteps(result, units), technician.measure.start], units),
  record: readingsOf(result, units),
})

/**
 * The technician's copy of one result.
 * @param document the result document
 * @param options units and paper; `everyOption` for a work order of each option
 */
export const technicianView = (document: ResultDocument, options: TechnicianOptions): TechnicianView => {
  const { units, everyOption = false } = options
  const result = retoldResult(document, units)
  const { shop, quote, machine } = result.sheet
  const number = quote.number === null ? '' : en.letterhead.footerQuote(quote.number)
  const head = letterhead(result, options)
  const orders = wanted(result, everyOption)
  const measure = result.recommendation.kind === 'measure-first' ? measureView(result, units) : null
  const why = result.recommendation.reasons
    .slice(0, 1)
    .map(({ text }) => en.sentence(text))
    .join(' ')
  const hasNothing = orders.length === 0 && measure === null
  const titled = hasNothing ? technician.titleNone : measure === null ? technician.title : technician.titleMeasure
  const title = titled(machine.name, quote.number ?? '')
  return {
    lang: en.lang,
    title,
    style: pageStyle({
      paper: options.paper,
      footer: en.letterhead.footer(
        shop.name,
        number,
        `${en.letterhead.footerMachine(result.scenario.title, machine.name)} · ${technician.footer}`,
      ),
      accent: shop.accent,
    }),
    words: technician,
    letterhead: { ...head, title, job: result.scenario.title },
    sheets: orders.map((order, index) => sheetView(result, order, index, units)),
    hasSheets: orders.length > 0,
    measure,
    hasMeasure: measure !== null,
    nothing: hasNothing ? technician.nothingText(why, result.recommendation.offerInstead ?? '') : '',
    hasNothing,
  }
}
