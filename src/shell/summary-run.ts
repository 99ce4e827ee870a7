/** The overview of a batch: one row a scenario or a unit, as HTML, CSV and JSON. */
import { existsSync } from 'node:fs'
import { join, relative, resolve, sep } from 'node:path'
import { summaryCsv } from '../report/summary-csv.ts'
import { type SummaryEntry, summaryView } from '../report/summary-view.ts'
import { TOOL } from '../tool.ts'
import { renderSummary } from './render-summary.ts'
import type { Outcome } from './report-task.ts'
import type { Task } from './report-tasks.ts'
import { shownPath } from './shown-path.ts'
import { writeWhole } from './write-file.ts'

/** One task and what became of it. */
export interface Reported {
  readonly task: Task
  readonly outcome: Outcome
}

const linkTo = (out: string, files: readonly string[]): string | null => {
  const report = files.find((path) => path.endsWith('.html')) ?? files[0]
  if (report === undefined || !existsSync(report)) return null
  return relative(out, report).split(sep).map(encodeURIComponent).join('/')
}

const entryOf = (out: string, cwd: string, { task, outcome }: Reported): SummaryEntry => ({
  scenario: shownPath(resolve(cwd, task.scenario), cwd),
  unit: task.unit?.name ?? null,
  outcome: outcome.row !== null ? 'answered' : outcome.problems !== null ? 'wrong input' : 'failed',
  report: linkTo(out, outcome.files),
  row: outcome.row,
})

/**
 * Writes the three files.
 * @param units those that were asked for; null for those of the shops, both where they differ
 * @returns their paths
 */
export const writeSummary = (
  out: string,
  cwd: string,
  reported: readonly Reported[],
  units: 'metric' | 'us' | 'both' | null,
): readonly string[] => {
  const entries = reported.map((each) => entryOf(out, cwd, each))
  const own = [...new Set(reported.flatMap(({ outcome }) => (outcome.units === null ? [] : [outcome.units])))]
  const shown = units ?? (own.length === 1 ? (own[0] ?? 'metric') : own.length === 0 ? 'metric' : 'both')
  const files = [
    ['summary.html', renderSummary(summaryView(entries, shown))],
    ['summary.csv', summaryCsv(entries, shown)],
    ['summary.json', `${JSON.stringify({ format: 1, tool: TOOL, entries }, null, 2)}\n`],
  ] as const
  return files.map(([name, content]) => {
    writeWhole(join(out, name), content)
    return join(out, name)
  })
}
