/**
 * `feasibility report --watch`: the HTML of one scenario is written again whenever one of its files or a template is saved.
 * First without ranges and searches, which take most of the time, so that the change is there at once; then with them. A mistake in a
 * file is told, and the last good page stays.
 */
import { join, resolve } from 'node:path'
import type { ResultDocument } from '../../evaluation.ts'
import type { ReadResult } from '../../scenario/read.ts'
import { answerLine } from '../answer-line.ts'
import { openCopies } from '../copies.ts'
import type { CopyOptions } from '../copy-options.ts'
import { EXIT, type ExitCode } from '../exit-codes.ts'
import { readOne, type Sources, sourcesOf } from '../load.ts'
import type { Maker } from '../making/maker.ts'
import { plain } from '../plain-text.ts'
import type { ReportOptions } from '../report-task.ts'
import { type Task, tasksOf } from '../report-tasks.ts'
import { showProblems } from '../show-problems.ts'
import { shownPath } from '../shown-path.ts'
import type { World } from '../world.ts'
import { writeWhole } from '../write-file.ts'
import { watchFolders } from './changes.ts'
import { type Surroundings, surroundingsOf, templatesAsSaved } from './surroundings.ts'

/** An editor that saves by renaming leaves no file for a moment [ms]. */
const ABSENT_MS = 60

type Loaded = Extract<ReadResult, { loaded: unknown }>['loaded']

/** A search takes seconds: what it finds comes with the ranges. */
const withoutSearches = (loaded: Loaded): Loaded => {
  const { scenario } = loaded
  return { ...loaded, scenario: { ...scenario, options: scenario.options.filter(({ reach }) => reach === null) } }
}

/** The last good state of one question. */
interface Known {
  readonly texts: string
  readonly loaded: Loaded
  readonly result: ResultDocument
  readonly ranges: boolean
}

const textsOf = (sources: Sources): string => JSON.stringify(sources)

const isAbsent = ({ scenario, machine }: Sources): boolean => scenario.text === null || machine?.text === null

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

const indexOf = ({ unit }: Task): number | null => unit?.index ?? null

/**
 * Runs until it is interrupted.
 * @returns EXIT.interrupted; another code where it could not begin
 */
export const runWatch = async (world: World, scenario: string, options: ReportOptions): Promise<ExitCode> => {
  const { evaluate } = await import('../../evaluate.ts')
  const { cwd } = world
  const out = resolve(cwd, options.out)
  const copyOptions: CopyOptions = {
    copy: options.copy,
    units: options.units,
    paper: options.paper,
    everyOption: options.everyOption,
  }
  const maker: Maker = world.openMaker(1)
  const known = new Map<string, Known>()
  /** Counts savings, so that what was begun for an earlier one is not written over a later one. */
  let round = 0
  let said = ''
  let fault: Error | null = null
  let surroundings: Surroundings = surroundingsOf(scenario, cwd, [])

  let opened: { readonly templates: string; readonly render: ReturnType<typeof openCopies> } | null = null
  /** Opened again where a template is what has changed. */
  const render = () => {
    const templates = templatesAsSaved()
    if (opened?.templates !== templates) opened = { templates, render: openCopies(copyOptions) }
    return opened.render
  }

  const write = (task: Task, { loaded, result, ranges }: Known): void => {
    const { copies, warnings } = render()(loaded, result, scenario, cwd)
    for (const warning of warnings) world.stderr.write(`${warning}\n`)
    for (const { copy, html } of copies) {
      const path = join(out, task.folder, `${copy}.html`)
      writeWhole(path, html)
      const stage = ranges ? '' : ' (ranges, and what is searched for, follow)'
      if (!options.quiet) world.stderr.write(`${plain(shownPath(path, cwd))}${stage}\n`)
    }
    if (ranges) world.stdout.write(`${answerLine(result)}\n`)
  }

  const problem = (text: string): void => {
    if (text !== said) world.stderr.write(text)
    said = text
  }

  /** With what is known, or with a first result; true where ranges are still to come. */
  const draft = (task: Task, sources: Sources): boolean => {
    const texts = textsOf(sources)
    const before = known.get(task.folder)
    if (before !== undefined && before.texts === texts) {
      said = ''
      write(task, before)
      return !before.ranges
    }
    const read = readOne(scenario, cwd, indexOf(task))
    if ('problems' in read) {
      problem(showProblems(read.problems))
      return false
    }
    said = ''
    const { loaded } = read
    const first = { texts, loaded, result: evaluate(withoutSearches(loaded), { ranges: false }), ranges: false }
    known.set(task.folder, first)
    write(task, first)
    return true
  }

  const finish = async (task: Task, mine: number): Promise<void> => {
    const asked = { scenario, unit: indexOf(task), cwd, options: copyOptions, ranges: true, wants: 'result' as const }
    const made = await maker.make(asked)
    const before = known.get(task.folder)
    if (mine !== round || before === undefined || !('result' in made) || made.result === null) return
    const whole = { ...before, result: made.result, ranges: true }
    known.set(task.folder, whole)
    write(task, whole)
  }

  const again = (): void => {
    const mine = ++round
    try {
      const { tasks } = tasksOf([scenario], cwd)
      const read = tasks.map((task) => ({ task, sources: sourcesOf(scenario, cwd, indexOf(task)) }))
      surroundings = surroundingsOf(
        scenario,
        cwd,
        read.map(({ sources }) => sources),
      )
      changes.follow(surroundings.folders)
      if (read.some(({ sources }) => isAbsent(sources)) && !absent) {
        absent = true
        setTimeout(() => mine === round && !world.interrupt.aborted && again(), ABSENT_MS)
        return
      }
      absent = false
      const open = read.filter(({ task, sources }) => draft(task, sources))
      for (const { task } of open)
        finish(task, mine).catch((error) => mine === round && problem(`${scenario}: ${reasonOf(error)}\n`))
    } catch (error) {
      // A template that is half written, a full disk: the last good page stays.
      problem(`${scenario}: ${reasonOf(error)}\n`)
    }
  }
  let absent = false
  let end: () => void = () => {}
  const changes = watchFolders(
    (folder, name) => surroundings.matters(folder, name),
    again,
    (error) => {
      fault = error
      end()
    },
  )
  try {
    await new Promise<void>((done) => {
      end = done
      if (world.interrupt.aborted) return done()
      world.interrupt.addEventListener('abort', () => done(), { once: true })
      again()
    })
    const lost = fault as Error | null
    if (lost === null || world.interrupt.aborted) return EXIT.interrupted
    world.stderr.write(`${scenario}: its folder cannot be watched: ${lost.message}\n`)
    return EXIT.fault
  } finally {
    round++
    changes.close()
    await maker.close()
  }
}
