/** `feasibility report`: every scenario read, evaluated and written as HTML and PDF; one line an answer. */
import { existsSync } from 'node:fs'
import { join, relative, resolve, sep } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import type { ResultDocument } from '../evaluation.ts'
import type { ReadResult } from '../scenario/read.ts'
import { BrowserMissing } from './browser/browser-missing.ts'
import { DATE_WITHOUT_QUOTE } from './browser/normalise-pdf.ts'
import type { Printer } from './browser/printer.ts'
import { type Copies, type CopyOptions, openCopies } from './copies.ts'
import { EXIT, type ExitCode, gravest } from './exit-codes.ts'
import { folderName } from './folder-name.ts'
import { loadQuestions } from './load.ts'
import { plain } from './plain-text.ts'
import { progressOf } from './progress.ts'
import { showProblems } from './show-problems.ts'
import type { World } from './world.ts'
import { writeWhole } from './write-file.ts'

export interface ReportOptions extends CopyOptions {
  readonly out: string
  readonly format: 'html' | 'pdf' | 'both'
  readonly quiet: boolean
}

/** One sentence an answer, as the terminal shows it. */
export const answerLine = ({ scenario, recommendation }: ResultDocument): string => {
  const { kind, option, offerInstead, provisional } = recommendation
  const words: { readonly [k in typeof kind]: string } = {
    restore: 'restore it first',
    protect: 'protect the oil',
    upgrade: 'do it',
    'upgrade-on-conditions': 'do it, on conditions',
    decline: 'decline',
    'measure-first': 'measure first',
  }
  const which = option === null ? '' : `: ${option}`
  const instead = offerInstead === null || offerInstead === option ? '' : `; beside it: ${offerInstead}`
  const more = provisional ? ' (provisional)' : ''
  return plain(`${scenario.title} (${scenario.customer}): ${words[kind]}${which}${instead}${more}`)
}

const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .toLowerCase() || 'unit'

/** From the folder where the command was given, where it lies below it. */
const shownPath = (path: string, cwd: string): string => {
  const near = relative(cwd, path)
  return (near.startsWith('..') ? path : near).split(sep).join('/')
}

interface Task {
  readonly scenario: string
  readonly read: ReadResult
  /** Under the output folder; a unit of a fleet has one inside its fleet's. */
  readonly folder: string
}

/** Every question of every scenario, each with a folder of its own; a name that comes again gets a number. */
const tasksOf = (scenarios: readonly string[], cwd: string): readonly Task[] => {
  const seen = new Map<string, number>()
  const own = (name: string): string => {
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    return count === 1 ? name : `${name}-${count}`
  }
  return scenarios.flatMap((scenario) => {
    const questions = loadQuestions(scenario, cwd)
    const base = own(folderName(scenario))
    return questions.map(({ unit, read }) => ({
      scenario,
      read,
      folder: unit === null ? base : own(`${base}/${slug(unit)}`),
    }))
  })
}

const olderPdf = (folder: string): string =>
  `${folder}: the PDF there is of an earlier run and may say something else.\n`

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

/**
 * Runs the command.
 * @returns the gravest exit code of all scenarios; one that fails does not stop the others
 */
export const runReport = async (
  world: World,
  scenarios: readonly string[],
  options: ReportOptions,
): Promise<ExitCode> => {
  const wantsPdf = options.format !== 'html'
  // The browser starts while the scenarios are evaluated.
  const opening: Promise<Printer | Error> | null = wantsPdf
    ? world
        .openPrinter(world.env)
        .catch((error: unknown) => (error instanceof Error ? error : new Error(String(error))))
    : null
  const tasks = tasksOf(scenarios, world.cwd)
  const progress = progressOf(world, tasks.length, options.quiet)
  const codes: ExitCode[] = []
  const shown = new Set<string>()
  let missingSaid = false
  const close = async () => {
    const printer = await opening
    if (printer !== null && !(printer instanceof Error)) await printer.close()
  }
  const aborted = new Promise<'aborted'>((done) => {
    if (world.interrupt.aborted) done('aborted')
    world.interrupt.addEventListener('abort', () => done('aborted'), { once: true })
  })
  const one = async ({ scenario, read, folder }: Task, made: Copies): Promise<ExitCode> => {
    if ('problems' in read) {
      progress.clear()
      const text = showProblems(read.problems)
      // Units of a fleet share most of their files, and so their mistakes.
      if (!shown.has(text)) world.stderr.write(text)
      shown.add(text)
      return EXIT.input
    }
    const result = made.evaluate(read.loaded)
    const written: string[] = []
    const write = (path: string, content: string | Uint8Array): void => {
      writeWhole(path, content)
      written.push(shownPath(path, world.cwd))
    }
    let code: ExitCode = EXIT.answered
    for (const { copy, html } of made.html(read.loaded, result, scenario)) {
      const base = join(resolve(world.cwd, options.out), folder, copy)
      if (options.format !== 'pdf') write(`${base}.html`, html)
      if (opening === null) continue
      const printer = await opening
      if (printer instanceof Error) {
        if (options.format === 'pdf') write(`${base}.html`, html)
        progress.clear()
        if (!missingSaid) world.stderr.write(`${printer.message}\nThe HTML is written; the PDF is missing.\n`)
        missingSaid = true
        if (existsSync(`${base}.pdf`)) world.stderr.write(olderPdf(folder))
        code = EXIT.browser
        continue
      }
      try {
        write(`${base}.pdf`, await printer.print(html, read.loaded.scenario.quote.date ?? DATE_WITHOUT_QUOTE))
      } catch (error) {
        if (world.interrupt.aborted) return EXIT.interrupted // the browser was taken away
        progress.clear()
        if (options.format === 'pdf') write(`${base}.html`, html)
        world.stderr.write(`${scenario}: the PDF failed: ${reasonOf(error)}\nThe HTML is written.\n`)
        if (existsSync(`${base}.pdf`)) world.stderr.write(olderPdf(folder))
        code = EXIT.browser
      }
    }
    progress.done(folder)
    progress.clear()
    world.stdout.write(`${answerLine(result)}\n`)
    if (!options.quiet) for (const path of written) world.stdout.write(`  ${plain(path)}\n`)
    return code
  }
  try {
    const made = await openCopies(world, options)
    for (const task of tasks) {
      await setImmediate() // an evaluation leaves no room for a signal to be heard
      const outcome = await Promise.race([
        aborted,
        one(task, made).catch((error: unknown): ExitCode => {
          progress.clear()
          world.stderr.write(`${task.scenario}: ${reasonOf(error)}\n`)
          return error instanceof BrowserMissing ? EXIT.browser : EXIT.fault
        }),
      ])
      if (outcome === 'aborted' || world.interrupt.aborted) {
        codes.push(EXIT.interrupted)
        break
      }
      codes.push(outcome)
    }
  } finally {
    progress.clear()
    await close()
  }
  return gravest(codes)
}
