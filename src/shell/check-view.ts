/** The answer as the terminal shows it. Renders the result document; calculates nothing. */
import { styleText } from 'node:util'
import type { Evaluation, Finding, OptionResult, ResultDocument } from '../evaluation.ts'
import { quantity, type Units } from '../report/format.ts'
import { answerLine } from './report-run.ts'
import type { World } from './world.ts'

type Style = Parameters<typeof styleText>[0]

/** Colour only where the terminal takes it; NO_COLOR and FORCE_COLOR are kept. */
const painter = (world: World) => {
  const colour = world.env.NO_COLOR ? false : world.env.FORCE_COLOR ? true : world.stdout.isTTY === true
  return (style: Style, text: string) => (colour ? styleText(style, text, { validateStream: false }) : text)
}

const pad = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - [...text].length))

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

const money = (amount: number, currency: string): string => `${amount.toFixed(2)} ${currency}`

const table = (rows: readonly (readonly string[])[]): string => {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((r) => [...(r[column] ?? '')].length)))
  return rows.map((r) => `  ${r.map((cell, i) => pad(cell, widths[i] ?? 0)).join('  ')}`.trimEnd()).join('\n')
}

const valueText = (value: Finding['value'], unit: string): string =>
  typeof value === 'number'
    ? `${Number(value.toPrecision(3))}${unit === '' ? '' : ` ${unit}`}`
    : (value ?? 'not worked out')

const findingLine = (finding: Finding): string =>
  `  ${finding.severity.padEnd(6)} ${finding.heading}: ${finding.component} ${valueText(finding.value, finding.unit)} against ${valueText(finding.limit, finding.unit)}${finding.existing ? ' (was there before)' : ''}  [${finding.check}]`

const optionLines = (option: OptionResult): readonly string[] => [
  ...option.answer.reasons.map((reason) => `    ${reason.code}: ${reason.text}`),
  ...option.answer.conditions
    .filter((c) => !option.answer.reasons.some((r) => r.text === c))
    .map((c) => `    condition: ${c}`),
  ...option.consequences.map(
    (c) =>
      `    ${c.action} ${c.component}: ${c.part ?? (c.specialOrder ? 'special order' : 'not to be had')}${c.quantity === 1 ? '' : ` × ${c.quantity}`}`,
  ),
]

/** Whole view of one result. */
export const checkView = (result: ResultDocument, units: Units, world: World): string => {
  const paint = painter(world)
  const { baseline, restored, options, recommendation } = result
  const rows = [
    ['', 'level', 'up the grade', 'oil settles', 'price, likely', 'answer'],
    row('as it stands', baseline, '', '', units),
    ...(restored === null
      ? []
      : [
          row(
            'restored',
            restored,
            result.restoration === null ? '' : money(result.restoration.cost.likely, result.restoration.cost.currency),
            '',
            units,
          ),
        ]),
    ...options.map((o) => row(o.name, o.evaluation, money(o.cost.likely, o.cost.currency), o.answer.answer, units)),
  ]
  const open = baseline.findings.filter((f) => f.severity !== 'ok')
  const lines = [
    paint('bold', answerLine(result)),
    ...recommendation.reasons.map((reason) => `  ${reason.text}`),
    '',
    table(rows),
    '',
    ...(open.length === 0 ? [] : ['The machine as it stands:', ...open.map(findingLine), '']),
    ...options.flatMap((option) => {
      const found = option.evaluation.findings.filter((f) => f.severity !== 'ok' && !f.existing)
      const more = optionLines(option)
      return more.length + found.length === 0
        ? []
        : [paint('bold', option.name), ...more, ...found.map(findingLine), '']
    }),
    ...(result.calibration.notes.length === 0
      ? []
      : ['Readings:', ...result.calibration.notes.map((note) => `  ${note}`), '']),
  ]
  return `${lines.join('\n')}\n`
}
