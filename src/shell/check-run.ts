/** `feasibility check`: the answer on the terminal, or the result document as JSON. */
import { setImmediate } from 'node:timers/promises'
import { EXIT, type ExitCode, gravest } from './exit-codes.ts'
import { loadQuestions } from './load.ts'
import { plain } from './plain-text.ts'
import { progressOf } from './progress.ts'
import { showProblems } from './show-problems.ts'
import type { World } from './world.ts'

export interface CheckOptions {
  readonly json: boolean
  readonly units: 'metric' | 'us' | 'both' | null
  readonly quiet: boolean
}

/**
 * Runs the command. Standard output carries the answers and nothing else: of one question the document itself, of several
 * (scenarios, or the units of a fleet) a list of those that could be read.
 */
export const runCheck = async (
  world: World,
  scenarios: readonly string[],
  options: CheckOptions,
): Promise<ExitCode> => {
  const codes: ExitCode[] = []
  const documents: unknown[] = []
  const questions = scenarios.flatMap((scenario) =>
    loadQuestions(scenario, world.cwd).map(({ unit, read }) => ({ scenario, unit, read })),
  )
  // Of a single one the answer itself is there at once.
  const progress = progressOf(world, questions.length, options.quiet || questions.length < 2)
  const shown = new Set<string>()
  for (const { scenario, unit, read } of questions) {
    await setImmediate() // an evaluation leaves no room for a signal to be heard
    if (world.interrupt.aborted) return EXIT.interrupted
    if ('problems' in read) {
      progress.clear()
      const text = showProblems(read.problems)
      // Units of a fleet share most of their files, and so their mistakes.
      if (!shown.has(text)) world.stderr.write(text)
      shown.add(text)
      codes.push(EXIT.input)
      continue
    }
    try {
      const { evaluate } = await import('../evaluate.ts')
      const result = evaluate(read.loaded)
      progress.done(plain(unit ?? scenario))
      progress.clear()
      if (options.json) documents.push(result)
      else {
        const { checkView } = await import('./check-view.ts')
        world.stdout.write(checkView(result, options.units ?? read.loaded.shop.units, world))
      }
      codes.push(EXIT.answered)
    } catch (error) {
      progress.clear()
      world.stderr.write(`${plain(scenario)}: ${error instanceof Error ? error.message : String(error)}\n`)
      codes.push(EXIT.fault)
    }
  }
  if (options.json && documents.length > 0) {
    const whole = questions.length === 1 ? documents[0] : documents
    world.stdout.write(`${JSON.stringify(whole, null, 2)}\n`)
  }
  return gravest(codes)
}
