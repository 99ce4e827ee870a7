/** `feasibility survey`: the sheet as PDF and HTML, and the files to fill in beside it. */
import { existsSync, readFileSync } from 'node:fs'
import { join, relative, resolve, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { readForSurvey } from '../scenario/read-survey.ts'
import { type Known, NOTHING_KNOWN } from '../survey/known.ts'
import { machineYaml, scenarioYaml } from '../survey/write-yaml.ts'
import { DATE_WITHOUT_QUOTE } from './browser/normalise-pdf.ts'
import { EXIT, type ExitCode } from './exit-codes.ts'
import { folderName } from './folder-name.ts'
import { shopFolderOf, surveySources } from './load.ts'
import { showProblems } from './show-problems.ts'
import { typedCommand } from './typed-command.ts'
import type { World } from './world.ts'
import { writeWhole } from './write-file.ts'

export interface SurveyOptions {
  readonly out: string
  readonly format: 'html' | 'pdf' | 'both'
  readonly paper: 'a4' | 'letter'
}

const SCHEMAS = fileURLToPath(new URL('../../scenarios/schema/', import.meta.url))

const forward = (path: string): string => path.split(sep).join('/')

/** A file that somebody has filled in is never written over. */
const keepOrWrite = (world: World, path: string, text: string): void => {
  const shown = forward(relative(world.cwd, path))
  if (existsSync(path) && readFileSync(path, 'utf8') !== text) {
    world.stderr.write(`${shown} is there already and was kept; move it away or use --out for a fresh one.\n`)
    return
  }
  writeWhole(path, text)
}

/** What to do with the sheet: the way on from here is nowhere else on the screen. */
const nextSteps = (command: string, folder: string, sheet: string, hasShop: boolean): string =>
  [
    `Take ${folder}/${sheet} out to the machine, fill in machine.yaml and scenario.yaml beside it, then:`,
    `  ${command} check ${folder}/scenario.yaml`,
    ...(hasShop
      ? []
      : ['There is no folder "shop" there or above it yet: copy the demo’s scenarios/shop and put your prices in.']),
    '',
  ].join('\n')

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error))

const print = async (world: World, path: string, html: string): Promise<ExitCode> => {
  const printer = await world.openPrinter(world.env).catch((error: unknown) => {
    world.stderr.write(`${reasonOf(error)}\nThe HTML is written; the PDF is missing.\n`)
    return null
  })
  if (printer === null) return EXIT.browser
  try {
    const stopped = new Promise<'stopped'>((done) => {
      if (world.interrupt.aborted) done('stopped')
      world.interrupt.addEventListener('abort', () => done('stopped'), { once: true })
    })
    const printed = await Promise.race([stopped, printer.print(html, DATE_WITHOUT_QUOTE)])
    if (printed === 'stopped') return EXIT.interrupted
    writeWhole(path, printed)
    return EXIT.answered
  } catch (error) {
    world.stderr.write(`the PDF failed: ${reasonOf(error)}\nThe HTML is written.\n`)
    return EXIT.browser
  } finally {
    await printer.close().catch(() => {})
  }
}

/**
 * Runs the command.
 * @param machine a machine file, of which everything that is known is filled in; null for a blank sheet
 */
export const runSurvey = async (world: World, machine: string | null, options: SurveyOptions): Promise<ExitCode> => {
  let known: Known = NOTHING_KNOWN
  if (machine !== null) {
    const { source, shopFiles, shopFolder } = surveySources(machine, world.cwd)
    const read = readForSurvey(source, shopFiles, shopFolder)
    if ('problems' in read) {
      world.stderr.write(showProblems(read.problems))
      return EXIT.input
    }
    known = read
  }
  const below = machine === null ? 'survey' : join('survey', folderName(machine))
  const folder = join(resolve(world.cwd, options.out), below)
  const schema = (kind: string) => forward(relative(folder, join(SCHEMAS, `${kind}.schema.json`)))
  try {
    const [{ surveyView }, { renderSurvey }] = await Promise.all([
      import('../report/survey-view.ts'),
      import('./render-survey.ts'),
    ])
    const html = renderSurvey(surveyView(known, options.paper))
    keepOrWrite(world, join(folder, 'machine.yaml'), machineYaml(schema('machine'), known))
    keepOrWrite(world, join(folder, 'scenario.yaml'), scenarioYaml(schema('scenario'), 'machine.yaml'))
    const base = join(folder, 'survey')
    if (options.format !== 'pdf') writeWhole(`${base}.html`, html)
    const code = options.format === 'html' ? EXIT.answered : await print(world, `${base}.pdf`, html)
    if (options.format === 'pdf' && code === EXIT.browser) writeWhole(`${base}.html`, html)
    if (code === EXIT.interrupted) return code
    const shown = forward(relative(world.cwd, folder))
    world.stdout.write(`${shown}\n`)
    const sheet = options.format === 'html' || code === EXIT.browser ? 'survey.html' : 'survey.pdf'
    world.stderr.write(
      nextSteps(typedCommand(world), shown, sheet, shopFolderOf(join(folder, 'scenario.yaml'), world.cwd) !== null),
    )
    return code
  } catch (error) {
    world.stderr.write(`feasibility: ${reasonOf(error)}\n`)
    return EXIT.fault
  }
}
