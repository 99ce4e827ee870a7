/** `feasibility report`: every scenario read, evaluated and written as HTML and PDF; one line an answer. */
import { availableParallelism } from 'node:os'
import { resolve } from 'node:path'
import type { Printer } from './browser/printer.ts'
import { EXIT, type ExitCode, gravest } from './exit-codes.ts'
import { plain } from './plain-text.ts'
import { progressOf } from './progress.ts'
import { type Outcome, openTasks, type ReportOptions } from './report-task.ts'
import { type Task, tasksOf } from './report-tasks.ts'
import { shownPath } from './shown-path.ts'
import type { Reported } from './summary-run.ts'
import type { World } from './world.ts'

export type { ReportOptions } from './report-task.ts'

/** Reports in work beside those that are evaluated: enough that the browser never waits, few enough for the memory. */
const AHEAD = 4

/** Starts a browser when it is first asked for, and ends it. */
const lazyPrinter = (world: World) => {
  let opening: Promise<Printer | Error> | null = null
  return {
    open: (): Promise<Printer | Error> => {
      opening ??= world
        .openPrinter(world.env)
        .catch((error: unknown) => (error instanceof Error ? error : new Error(String(error))))
      return opening
    },
    close: async (): Promise<void> => {
      const printer = await opening
      if (printer !== null && !(printer instanceof Error)) await printer.close()
    },
  }
}

/** Does so many at once, and hands over what became of each in the order of the list. */
async function* inOrder(
  tasks: readonly Task[],
  atOnce: number,
  work: (task: Task) => Promise<Outcome>,
): AsyncGenerator<Reported> {
  const running: { readonly task: Task; readonly outcome: Promise<Outcome> }[] = []
  let next = 0
  const fill = () => {
    for (; running.length < atOnce && next < tasks.length; next++) {
      const task = tasks[next] as Task
      running.push({ task, outcome: work(task) })
    }
  }
  fill()
  for (let first = running.shift(); first !== undefined; first = running.shift()) {
    const { task, outcome } = first
    yield { task, outcome: await outcome }
    fill()
  }
}

/**
 * Runs the command.
 * @param named files, folders of scenarios, fleets
 * @returns the gravest exit code of all scenarios; one that fails does not stop the others
 */
export const runReport = async (world: World, named: readonly string[], options: ReportOptions): Promise<ExitCode> => {
  const { tasks, empty } = tasksOf(named, world.cwd)
  for (const path of empty) world.stderr.write(`${path}: there is no scenario in this folder\n`)
  const codes: ExitCode[] = empty.map(() => EXIT.input)
  const out = resolve(world.cwd, options.out)
  const threads = Math.max(1, Math.min(availableParallelism(), tasks.length))
  const maker = world.openMaker(threads)
  const printer = lazyPrinter(world)
  const progress = progressOf(world, tasks.length, options.quiet)
  const said = new Set<string>()
  const reported: Reported[] = []
  const say = (text: string): void => {
    // Units of a fleet share most of their files, and so their mistakes; of a missing browser one word is enough.
    if (!said.has(text)) world.stderr.write(text)
    said.add(text)
  }
  const tell = (task: Task, outcome: Outcome): void => {
    const { code, problems, notes, line, files, unchanged } = outcome
    if (line !== null) progress.done(unchanged ? `${task.folder} (unchanged)` : task.folder)
    progress.clear()
    if (problems !== null) say(problems)
    for (const note of notes) say(note)
    codes.push(code)
    if (line === null) return
    world.stdout.write(`${line}\n`)
    const mark = unchanged ? ' (unchanged)' : ''
    if (!options.quiet) for (const path of files) world.stdout.write(`  ${plain(shownPath(path, world.cwd))}${mark}\n`)
  }
  const aborted = new Promise<'aborted'>((done) => {
    if (world.interrupt.aborted) done('aborted')
    world.interrupt.addEventListener('abort', () => done('aborted'), { once: true })
  })
  try {
    const work = openTasks({ world, options, out, maker, printer: printer.open })
    const outcomes = inOrder(tasks, threads + AHEAD, work)
    while (true) {
      const next = await Promise.race([aborted, outcomes.next()])
      if (next === 'aborted' || world.interrupt.aborted) {
        codes.push(EXIT.interrupted)
        break
      }
      if (next.done === true) break
      reported.push(next.value)
      tell(next.value.task, next.value.outcome)
    }
    if (tasks.length > 1 && !world.interrupt.aborted) {
      const { writeSummary } = await import('./summary-run.ts')
      for (const path of writeSummary(out, world.cwd, reported, options.units))
        if (!options.quiet) world.stdout.write(`${plain(shownPath(path, world.cwd))}\n`)
    }
  } finally {
    progress.clear()
    await Promise.all([maker.close(), printer.close()])
  }
  return gravest(codes)
}
