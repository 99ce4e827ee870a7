/** The answer as the terminal shows it. Renders the result document; calculates nothing. */
import type { Cost, Evaluation, OptionResult, ResultDocument } from '../evaluation.ts'
import { quantity, retold, type Units } from '../report/format.ts'
import { moneySpan } from '../report/prices.ts'
import { acceptanceView } from '../report/view-model/acceptance.ts'
import { en } from '../report/wording.ts'
import { answerLine } from './answer-line.ts'
import { askedAboutLines, assumptionLines } from './check-assumptions.ts'
import { findingLine } from './check-findings.ts'
import { type Line, table, terminalText } from './terminal-text.ts'
import type { World } from './world.ts'

const oilOf = ({ heat }: Evaluation, units: Units): string =>
  heat.steadyOilC === null ? 'does not settle' : quantity(heat.steadyOilC, '°C', units)

const row = (name: string, evaluation: Evaluation, cost: string, answer: string, units: Units): readonly string[] => [
  name,
  quantity(evaluation.travel.level.speedKmh, 'km/h', units),
  quantity(evaluation.travel.grade.speedKmh, 'km/h', units),
  oilOf(evaluation, units),
  cost,
  answer,
]

const price = ({ low, high, currency, unpriced }: Cost): string => moneySpan(low, high, currency, unpriced.length > 0)

const optionLines = (option: OptionResult, told: (text: string) => string): readonly string[] => [
  ...(option.sameAs === null ? [] : [`    ${en.ways.sameAs(en.quoted(option.sameAs))}`]),
  ...option.answer.reasons.map((reason) => `    ${reason.code}: ${told(reason.text)}`),
  ...option.answer.conditions
    .filter((c) => !option.answer.reasons.some((r) => r.text === c))
    .map((c) => `    condition: ${told(c)}`),
  ...option.consequences.map(
    (c) =>
      `    ${c.action} ${c.component}: ${c.part ?? (c.specialOrder ? 'special order' : 'not to be had')}${c.quantity === 1 ? '' : ` × ${c.quantity}`}`,
  ),
]

/** Of the test after the work; nothing until there was one. */
const acceptanceLines = (result: ResultDocument, units: Units): readonly string[] => {
  const { shown, words, rows, verdict } = acceptanceView(result, units)
  if (!shown) return []
  const lines = rows.map(
    (r) =>
      `  ${r.result.padEnd(8)} ${r.what}: ${words.promised.toLowerCase()} ${r.promised}, ${words.measured.toLowerCase()} ${r.measured}${r.note === '' ? '' : ` (${r.note})`}`,
  )
  return [`${words.heading}:`, ...lines, `  ${verdict}`, '']
}

/** Whole view of one result. */
export const checkView = (result: ResultDocument, units: Units, world: World): string => {
  const told = (text: string) => retold(text, units)
  const line = findingLine(units)
  const { baseline, restored, options, recommendation } = result
  const rows = [
    ['', 'level', 'up the grade', 'oil settles', 'price', 'answer'],
    row('as it stands', baseline, '', '', units),
    ...(restored === null
      ? []
      : [row('restored', restored, result.restoration === null ? '' : price(result.restoration.cost), '', units)]),
    ...options.map((o) => row(o.name, o.evaluation, price(o.cost), o.answer.answer, units)),
  ]
  const open = baseline.findings.filter((f) => f.severity !== 'ok')
  // What is asked about has a heading of its own.
  const notes = result.calibration.notes.filter((note) => !result.askedAbout.some(({ text }) => text === note))
  const heading = (text: string): Line => ({ heading: text })
  const lines: readonly Line[] = [
    heading(answerLine(result)),
    ...recommendation.reasons.map((reason) => `  ${told(reason.text)}`),
    '',
    ...table(rows),
    '',
    ...(open.length === 0 ? [] : ['The machine as it stands:', ...open.map(line), '']),
    ...options.flatMap((option) => {
      const found = option.evaluation.findings.filter((f) => f.severity !== 'ok' && !f.existing)
      const more = optionLines(option, told)
      return more.length + found.length === 0 ? [] : [heading(option.name), ...more, ...found.map(line), '']
    }),
    ...acceptanceLines(result, units),
    ...(notes.length === 0 ? [] : ['Readings:', ...notes.map((note) => `  ${told(note)}`), '']),
    ...assumptionLines(result, units),
    ...askedAboutLines(result).map(told),
  ]
  return terminalText(lines, world)
}
