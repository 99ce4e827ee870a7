/** The command: arguments to calls to an exit code. Everything of the outside is handed in. */
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Command, CommanderError, Option } from 'commander'
import { TOOL } from '../tool.ts'
import { readAmount } from './amount.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'
import type { ReportOptions } from './report-task.ts'
import { typedCommand } from './typed-command.ts'
import type { World } from './world.ts'

const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url))

const unitsOption = () =>
  new Option('--units <units>', 'units of the report; default: those of the shop').choices(['metric', 'us', 'both'])

/** Every demo scenario, in the order of their names. */
const demoScenarios = (): readonly string[] =>
  existsSync(SCENARIOS)
    ? readdirSync(SCENARIOS)
        .filter((name) => /\.ya?ml$/iu.test(name))
        .sort()
        .map((name) => join(SCENARIOS, name))
    : []

const isFolder = (path: string, cwd: string): boolean =>
  statSync(resolve(cwd, path), { throwIfNoEntry: false })?.isDirectory() === true

class UsageError extends Error {}

interface Asked {
  code: ExitCode
}

const reportCommand = (world: World, asked: Asked): Command =>
  new Command('report')
    .description('write the report of each scenario as HTML and PDF')
    .argument('[scenario...]', 'scenario files, fleets, or folders of them')
    .addOption(
      new Option('--copy <copy>', 'for whom').choices(['customer', 'shop', 'technician', 'all']).default('customer'),
    )
    .option('--every-option', 'technician’s copy: a work order for each option, not only for what is recommended')
    .addOption(unitsOption())
    .option('--out <folder>', 'where the reports go', 'out')
    .addOption(new Option('--format <format>', 'what is written').choices(['html', 'pdf', 'both']).default('both'))
    .addOption(new Option('--paper <paper>', 'size of the page').choices(['a4', 'letter']).default('a4'))
    .option('--demo', 'the scenarios that come with the tool')
    .option('--force', 'make every report again, unchanged ones too')
    .option('--watch', 'of one scenario: write the HTML again whenever one of its files is saved, until Ctrl-C')
    .option('--quiet', 'no progress')
    .action(async (named: string[], options) => {
      const scenarios = options.demo ? [...demoScenarios(), ...named] : named
      if (scenarios.length === 0)
        throw new UsageError('name a scenario file or a folder, or use --demo for those that come with the tool')
      const [first = ''] = scenarios
      if (options.watch && (scenarios.length > 1 || isFolder(first, world.cwd)))
        throw new UsageError('--watch takes one scenario file')
      const reportOptions: ReportOptions = {
        copy: options.copy,
        everyOption: options.everyOption === true,
        units: options.units ?? null,
        out: options.out,
        format: options.format,
        paper: options.paper,
        quiet: options.quiet === true,
        force: options.force === true,
      }
      if (options.watch) {
        const { runWatch } = await import('./watch/watch-run.ts')
        asked.code = await runWatch(world, first, reportOptions)
        return
      }
      const { runReport } = await import('./report-run.ts')
      asked.code = await runReport(world, scenarios, reportOptions)
    })

const checkCommand = (world: World, asked: Asked): Command =>
  new Command('check')
    .description('the answer on the terminal, or as one JSON document')
    .argument('<scenario...>', 'scenario files')
    .option('--json', 'the whole result document')
    .addOption(unitsOption())
    .option('--quiet', 'no progress')
    .action(async (scenarios: string[], options) => {
      const { runCheck } = await import('./check-run.ts')
      asked.code = await runCheck(world, scenarios, {
        json: options.json === true,
        units: options.units ?? null,
        quiet: options.quiet === true,
      })
    })

const surveyCommand = (world: World, asked: Asked): Command =>
  new Command('survey')
    .description('a sheet of what to read and measure, as PDF and HTML, with the files to fill in beside it')
    .argument('[machine]', 'a machine file: what it says is filled in, what is assumed or missing is marked')
    .option('--out <folder>', 'where it goes: into survey/ there', 'out')
    .addOption(new Option('--format <format>', 'what is written').choices(['html', 'pdf', 'both']).default('both'))
    .addOption(new Option('--paper <paper>', 'size of the page').choices(['a4', 'letter']).default('a4'))
    .action(async (machine: string | undefined, options) => {
      const { runSurvey } = await import('./survey-run.ts')
      asked.code = await runSurvey(world, machine ?? null, {
        out: options.out,
        format: options.format,
        paper: options.paper,
      })
    })

const amount = (text: string): number => {
  const read = readAmount(text)
  if ('refused' in read) throw new UsageError(`--budget ${read.refused}`)
  return read.amount
}

const reachCommand = (world: World, asked: Asked): Command =>
  new Command('reach')
    .description('the cheapest set of changes that gives what the scenario wants, or what stands in the way')
    .argument('<scenario...>', 'scenario files')
    .option('--budget <amount>', 'also the furthest that so much money pays for, in the shop’s currency')
    .option('--json', 'the whole search as one JSON document')
    .addOption(unitsOption())
    .option('--quiet', 'no progress')
    .action(async (scenarios: string[], options) => {
      const budget = options.budget === undefined ? null : amount(options.budget)
      const { runReach } = await import('./reach-run.ts')
      asked.code = await runReach(world, scenarios, {
        budget,
        json: options.json === true,
        units: options.units ?? null,
        quiet: options.quiet === true,
      })
    })

const program = (world: World, asked: Asked): Command => {
  const command = new Command('feasibility')
    .description(
      'Says what a change to a small hydraulic machine would really do, what else must change, and what it costs.',
    )
    .version(TOOL.version)
    .addHelpText('before', `Example: ${typedCommand(world)} report my-scenario.yaml\n`)
    .showSuggestionAfterError(true)
    .addCommand(reportCommand(world, asked))
    .addCommand(checkCommand(world, asked))
    .addCommand(surveyCommand(world, asked))
    .addCommand(reachCommand(world, asked))
  const output = {
    writeOut: (text: string) => void world.stdout.write(text),
    writeErr: (text: string) => void world.stderr.write(text),
  }
  for (const each of [command, ...command.commands]) each.exitOverride().configureOutput(output)
  return command
}

/** Runs the command; never throws, never exits by itself. */
export const run = async (world: World): Promise<ExitCode> => {
  const asked: Asked = { code: EXIT.answered }
  try {
    await program(world, asked).parseAsync([...world.args], { from: 'user' })
    return asked.code
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.answered : EXIT.usage
    if (error instanceof UsageError) {
      world.stderr.write(`feasibility: ${error.message}\n`)
      return EXIT.usage
    }
    world.stderr.write(`feasibility: ${error instanceof Error ? error.message : String(error)}\n`)
    return EXIT.fault
  }
}
