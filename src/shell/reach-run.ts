/** `feasibility reach`: the cheapest way to what is wanted, on the terminal, or the search as JSON. */
import { setImmediate } from 'node:timers/promises'
import type { Loaded } from '../loaded.ts'
import { nothingWanted, WANTS_LINES } from '../scenario/nothing-wanted.ts'
import type { Search } from '../search.ts'
import { EXIT, type ExitCode, gravest } from './exit-codes.ts'
import { loadQuestions, scenarioSource } from './load.ts'
import { plain } from './plain-text.ts'
import { progressOf } from './progress.ts'
import { showProblems } from './show-problems.ts'
import type { World } from './world.ts'

export interface ReachOptions {
  /** In the shop's currency; null: none. */
  readonly budget: number | null
  readonly json: boolean
  readonly units: 'metric' | 'us' | 'both' | null
  readonly quiet: boolean
}

/** What looks for the way; handed in by the tests. */
export type Searcher = (loaded: Loaded, options: { readonly budget: number | null }) => Search

const theSearch = async (): Promise<Searcher> => (await import('../reach.ts')).reach

const wantsNothing = ({ scenario }: Loaded): boolean => {
  const { travelSpeed, attachment, oilBelow } = scenario.wants
  return travelSpeed === null && attachment === null && oilBelow === null
}

/**
 * Runs the command. Standard output carries the answers and nothing else: of one question the search itself, of several
 * (scenarios, or the units of a fleet) a list of those that could be searched for.
 */
export const runReach = async (
  world: World,
  scenarios: readonly string[],
  options: ReachOptions,
  searcher: () => Promise<Searcher> = theSearch,
): Promise<ExitCode> => {
  const codes: ExitCode[] = []
  const searches: Search[] = []
  const questions = scenarios.flatMap((scenario) =>
    loadQuestions(scenario, world.cwd).map(({ unit, read }) => ({ scenario, unit, read })),
  )
  // Of a single one the answer itself is there at once.
  const progress = progressOf(world, questions.length, options.quiet || questions.length < 2)
  const shown = new Set<string>()
  const refuse = (text: string): ExitCode => {
    progress.clear()
    // Units of a fleet share most of their files, and so their mistakes.
    if (!shown.has(text)) world.stderr.write(text)
    shown.add(text)
    return EXIT.input
  }
  for (const { scenario, unit, read } of questions) {
    await setImmediate() // a search leaves no room for a signal to be heard
    if (world.interrupt.aborted) return EXIT.interrupted
    if ('problems' in read) {
      codes.push(refuse(showProblems(read.problems)))
      continue
    }
    if (wantsNothing(read.loaded)) {
      const lines = WANTS_LINES.map((line) => `  ${line}\n`).join('')
      codes.push(
        refuse(`${showProblems([nothingWanted(scenarioSource(scenario, world.cwd))])}Write for example:\n${lines}`),
      )
      continue
    }
    try {
      const search = (await searcher())(read.loaded, { budget: options.budget })
      progress.done(unit ?? scenario)
      progress.clear()
      if (options.json) searches.push(search)
      else {
        const { reachView } = await import('./reach-view.ts')
        const { title, customer } = read.loaded.scenario
        const units = options.units ?? read.loaded.shop.units
        if (codes.length > 0) world.stdout.write('\n')
        world.stdout.write(reachView(search, `${title} (${customer.name})`, read.loaded.shop.currency, units, world))
      }
      codes.push(EXIT.answered)
    } catch (error) {
      progress.clear()
      world.stderr.write(`${plain(scenario)}: ${error instanceof Error ? error.message : String(error)}\n`)
      codes.push(EXIT.fault)
    }
  }
  if (options.json && searches.length > 0) {
    const whole = questions.length === 1 ? searches[0] : searches
    world.stdout.write(`${JSON.stringify(whole, null, 2)}\n`)
  }
  return gravest(codes)
}
