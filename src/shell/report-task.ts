/** One report of a run: left as it is where nothing changed, else made, written and printed. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { SummaryRow } from '../report/summary-row.ts'
import { browserMark } from './browser/launch.ts'
import { DATE_WITHOUT_QUOTE } from './browser/normalise-pdf.ts'
import type { Printer } from './browser/printer.ts'
import { type CopyOptions, wantedCopies } from './copy-options.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'
import { sourcesOf } from './load.ts'
import type { Answered } from './making/make.ts'
import type { Maker } from './making/maker.ts'
import type { Copy } from './render-html.ts'
import type { Task } from './report-tasks.ts'
import { asBefore, digestOf, readStamp, type Stamped, stampPath, writeStamp } from './unchanged/stamp.ts'
import { toolDigest, wentIn } from './unchanged/went-in.ts'
import type { World } from './world.ts'
import { writeWhole } from './write-file.ts'

export interface ReportOptions extends CopyOptions {
  readonly out: string
  readonly format: 'html' | 'pdf' | 'both'
  readonly quiet: boolean
  /** Made again though nothing changed. */
  readonly force: boolean
}

/** What became of a task; told and counted when those before it are. */
export interface Outcome {
  readonly code: ExitCode
  /** For standard error, a block each. */
  readonly notes: readonly string[]
  /** What is wrong with the files: the same text is told once. */
  readonly problems: string | null
  /** The answer on one line; null where there is none. */
  readonly line: string | null
  readonly row: SummaryRow | null
  readonly units: 'metric' | 'us' | 'both' | null
  /** Paths of its files. */
  readonly files: readonly string[]
  readonly unchanged: boolean
}

export interface Workshop {
  readonly world: World
  readonly options: ReportOptions
  /** Absolute. */
  readonly out: string
  readonly maker: Maker
  /** Starts the browser when the first report asks; an error where there is none. */
  readonly printer: () => Promise<Printer | Error>
}

const olderPdf = (folder: string): string =>
  `${folder}: the PDF there is of an earlier run and may say something else.\n`

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

const NOTHING: Outcome = {
  code: EXIT.answered,
  notes: [],
  problems: null,
  line: null,
  row: null,
  units: null,
  files: [],
  unchanged: false,
}

/** Digest of what goes into each file that is wanted. */
type Wanted = ReadonlyMap<string, string>

/** Everything that is asked again and again in a run is worked out once. */
export const openTasks = (shop: Workshop): ((task: Task) => Promise<Outcome>) => {
  const { world, options, out, maker } = shop
  const wantsHtml = options.format !== 'pdf'
  const wantsPdf = options.format !== 'html'
  const copyOptions: CopyOptions = {
    copy: options.copy,
    units: options.units,
    paper: options.paper,
    everyOption: options.everyOption,
  }
  let tool: string | null = null
  let browser: Promise<string> | null = null

  const wantedOf = async ({ scenario, unit }: Task): Promise<Wanted> => {
    tool ??= toolDigest()
    browser ??= wantsPdf ? browserMark(world.env) : Promise.resolve('')
    const sources = sourcesOf(scenario, world.cwd, unit?.index ?? null)
    const of = (copy: Copy, mark: string | null) =>
      wentIn(tool ?? '', sources, unit?.index ?? null, copy, copyOptions, mark)
    const mark = await browser
    return new Map(
      wantedCopies(options).flatMap((copy) => [
        ...(wantsHtml ? [[`${copy}.html`, of(copy, null)] as const] : []),
        ...(wantsPdf ? [[`${copy}.pdf`, of(copy, mark)] as const] : []),
      ]),
    )
  }

  /** The PDF of one copy; where there can be none, the HTML in its place and a word why. */
  const print = async (
    base: string,
    html: string,
    { scenario, folder }: Task,
    date: string | null,
  ): Promise<{ readonly pdf: Uint8Array } | { readonly code: ExitCode; readonly notes: readonly string[] }> => {
    const without = (note: string) => {
      if (options.format === 'pdf') writeWhole(`${base}.html`, html)
      return { code: EXIT.browser, notes: existsSync(`${base}.pdf`) ? [note, olderPdf(folder)] : [note] }
    }
    const printer = await shop.printer()
    if (printer instanceof Error) return without(`${printer.message}\nThe HTML is written; the PDF is missing.\n`)
    try {
      return { pdf: await printer.print(html, date ?? DATE_WITHOUT_QUOTE) }
    } catch (error) {
      if (world.interrupt.aborted) return { code: EXIT.interrupted, notes: [] } // the browser was taken away
      return without(`${scenario}: the PDF failed: ${reasonOf(error)}\nThe HTML is written.\n`)
    }
  }

  const writeAll = async (task: Task, answered: Answered, wanted: Wanted): Promise<Outcome> => {
    const folder = join(out, task.folder)
    const stamp = new Map(readStamp(stampPath(out, task.folder)))
    const notes = answered.warnings.map((warning) => `${warning}\n`)
    const files: string[] = []
    let code: ExitCode = EXIT.answered
    const write = (name: string, content: string | Uint8Array): void => {
      writeWhole(join(folder, name), content)
      files.push(join(folder, name))
      const { line, warnings, row, units } = answered
      const stamped: Stamped = { from: wanted.get(name) ?? '', is: digestOf(content), line, warnings, row, units }
      stamp.set(name, stamped)
    }
    if (wantsHtml) for (const { copy, html } of answered.copies) write(`${copy}.html`, html)
    if (wantsPdf) {
      const prints = answered.copies.map(async ({ copy, html }) => ({
        copy,
        printed: await print(join(folder, copy), html, task, answered.date),
      }))
      for (const { copy, printed } of await Promise.all(prints)) {
        if ('pdf' in printed) write(`${copy}.pdf`, printed.pdf)
        else {
          if (options.format === 'pdf') files.push(join(folder, `${copy}.html`))
          notes.push(...printed.notes)
          code = printed.code
        }
      }
    }
    if (code === EXIT.interrupted) return { ...NOTHING, code }
    writeStamp(stampPath(out, task.folder), stamp)
    const { line, row, units } = answered
    return { ...NOTHING, code, notes, line, row, units, files: files.sort() }
  }

  return async (task) => {
    try {
      const wanted = await wantedOf(task)
      const stamp = options.force ? new Map() : readStamp(stampPath(out, task.folder))
      const before = asBefore(stamp, wanted, join(out, task.folder))
      if (before !== null) {
        const { line, warnings, row, units } = before
        const notes = warnings.map((warning) => `${warning}\n`)
        const files = [...wanted.keys()].map((name) => join(out, task.folder, name))
        return { ...NOTHING, notes, line, row, units, files, unchanged: true }
      }
      // The browser starts while the report is made.
      if (wantsPdf) void shop.printer()
      const made = await maker.make({
        scenario: task.scenario,
        unit: task.unit?.index ?? null,
        cwd: world.cwd,
        options: copyOptions,
        ranges: true,
        wants: 'copies',
      })
      if ('problems' in made) return { ...NOTHING, code: EXIT.input, problems: made.problems }
      return await writeAll(task, made, wanted)
    } catch (error) {
      return { ...NOTHING, code: EXIT.fault, notes: [`${task.scenario}: ${reasonOf(error)}\n`] }
    }
  }
}
