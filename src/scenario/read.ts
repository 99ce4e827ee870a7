/** From the texts of all files to a scenario ready for evaluation, or to every problem in any of them. Pure. */
import type { Loaded } from '../loaded.ts'
import type { Json } from '../question.ts'
import { withoutBlanks } from './blanks.ts'
import {
  type DocumentResult,
  depthIn,
  fileProblem,
  locate,
  readDocument,
  type SourceDocument,
  tooLarge,
} from './document.ts'
import { flawsOf, valueAt } from './flaws.ts'
import { unitDocument } from './fleet.ts'
import type { Flaw, Problem } from './problems.ts'
import { mergeMachine, prepared } from './read-machine.ts'
import { scenarioAssumptions, scenarioOf } from './read-scenario.ts'
import { readShop } from './read-shop.ts'
import { type ScenarioSpec, scenarioFile } from './scenario-schema.ts'
import { sheetOf } from './sheet.ts'

/** A file's name as it is shown, and its text; null where it could not be read. */
export interface SourceText {
  readonly file: string
  readonly text: string | null
  /** Why it was not read, where it is there. */
  readonly unread?: Unread
}

/** Something else than a file, or too large a one. */
export type Unread = { readonly what: string } | { readonly bytes: number }

export type ReadResult = { readonly loaded: Loaded } | { readonly problems: readonly Problem[] }

const missing = ({ file, unread }: SourceText, expected: string, named: boolean): Flaw => {
  const what = unread !== undefined && 'what' in unread ? `is ${unread.what}` : 'is not there or cannot be read'
  const message = `${named ? `"${file}"` : 'this file'} ${what}`
  return { code: 'file-missing', path: [], message, expected, remedy: null }
}

/** A file that was not read, as a problem of its own. */
export const missingFile = (source: SourceText, expected: string): Problem =>
  source.unread !== undefined && 'bytes' in source.unread
    ? tooLarge(source.file, source.unread.bytes)
    : fileProblem(source.file, missing(source, expected, false))

/** The scenario as one unit of a fleet sees it. */
const readUnit = (read: DocumentResult, unit: number | null): DocumentResult =>
  unit === null || !('document' in read) ? read : { document: unitDocument(read.document, unit) }

/** Path of the machine file as the scenario (or one unit of a fleet) names it; null where it cannot be read that far. */
export const machinePathIn = (scenario: SourceText, unit: number | null = null): string | null => {
  if (scenario.text === null) return null
  const read = readUnit(readDocument(scenario.file, scenario.text), unit)
  if (!('document' in read)) return null
  const data = read.document.data as { readonly machine?: unknown }
  return typeof data.machine === 'string' ? data.machine : null
}

/** A flaw of a patched machine shown where it was written: in the patch, else in the machine file. */
const locateMerged = (
  flaw: Flaw,
  machine: SourceDocument,
  scenario: SourceDocument,
  option: number | null,
): Problem => {
  if (option !== null) {
    const base = ['options', option, 'changes']
    const path = [...base, ...flaw.path]
    const depth = depthIn(scenario, path)
    const inPatch = depth - base.length
    const inMachine = depthIn(machine, flaw.path)
    if (inPatch >= Math.min(flaw.path.length, Math.max(1, inMachine))) return locate(scenario, { ...flaw, path })
  }
  return locate(machine, flaw)
}

/** What is wrong with a machine whatever the parts list would say: flaws inside components that name a part left out. */
const flawsWithoutParts = (machine: SourceDocument): readonly Problem[] => {
  const merged = mergeMachine(machine.data, [], [])
  if (!('flaws' in merged)) return []
  const ofPart = ({ code, path }: Flaw): boolean =>
    code === 'part-unknown' ||
    path.some((_, i) => {
      const component = valueAt(machine.data, path.slice(0, i))
      return typeof component === 'object' && component !== null && 'part' in component
    })
  return merged.flaws.filter((flaw) => !ofPart(flaw)).map((flaw) => locate(machine, flaw))
}

const readText = (
  source: SourceText,
  expected: string,
): { document: SourceDocument } | { problems: readonly Problem[] } =>
  source.text === null ? { problems: [missingFile(source, expected)] } : readDocument(source.file, source.text)

/** Everything of the scenario that can be read, and what cannot. */
const readSpec = (document: SourceDocument): { spec: ScenarioSpec } | { problems: readonly Problem[] } => {
  const data = withoutBlanks(document.data, scenarioFile)
  const read = scenarioFile.safeParse(data)
  if (read.success) return { spec: read.data }
  return { problems: flawsOf(read.error, data, scenarioFile).map((flaw) => locate(document, flaw)) }
}

const optionPatches = (spec: ScenarioSpec): readonly Json[] =>
  (spec.options ?? []).map((option) => (option.changes ?? {}) as Json)

const byPlace = (a: Problem, b: Problem): number =>
  a.file.localeCompare(b.file) || a.line - b.line || a.column - b.column

/** Each problem once, in the order of files and lines. */
const tidy = (problems: readonly Problem[]): readonly Problem[] => {
  const seen = new Set<string>()
  return [...problems].sort(byPlace).filter((problem) => {
    const key = `${problem.file}:${problem.line}:${problem.column}:${problem.code}:${problem.message}`
    const isNew = !seen.has(key)
    seen.add(key)
    return isNew
  })
}

/**
 * Reads a scenario with its machine and shop.
 * @param scenario, machine the two files (machine null where the scenario names none)
 * @param shopFiles every YAML file of the shop's folder, sorted by name
 * @param shopFolder its name as it is shown; null where there is none
 * @param unit which unit of a fleet, counted from 0; null for a scenario that is none
 */
export const readAll = (
  scenario: SourceText,
  machine: SourceText | null,
  shopFiles: readonly SourceText[],
  shopFolder: string | null,
  unit: number | null = null,
): ReadResult => {
  const problems: Problem[] = []
  const scenarioRead = readUnit(readText(scenario, 'a scenario file'), unit)
  const machineRead = machine === null ? null : readText(machine, 'the machine file that the scenario names')
  const shopDocuments: SourceDocument[] = []
  for (const file of shopFiles) {
    const read = readText(file, 'a file of the shop')
    if ('document' in read) shopDocuments.push(read.document)
    else problems.push(...read.problems)
  }
  if (shopFolder === null)
    problems.push(
      fileProblem(scenario.file, {
        code: 'shop-missing',
        path: [],
        message: 'there is no folder "shop" beside this file or a parent of it',
        expected: 'shop/shop.yaml with the shop, its parts and labour',
        remedy: null,
      }),
    )
  const whole = shopDocuments.length === shopFiles.length
  const shopRead = shopFolder === null ? null : readShop(shopDocuments, shopFolder, whole)
  if (shopRead !== null && 'problems' in shopRead) problems.push(...shopRead.problems)
  if ('problems' in scenarioRead) problems.push(...scenarioRead.problems)
  if (machine !== null && machineRead !== null && 'problems' in machineRead) {
    const named = machine.text === null && (machine.unread === undefined || 'what' in machine.unread)
    if (named && 'document' in scenarioRead) {
      const flaw = missing(machine, 'a machine file, relative to this file', true)
      problems.push(locate(scenarioRead.document, { ...flaw, path: ['machine'] }))
    } else problems.push(...machineRead.problems)
  }
  if (machineRead !== null && 'document' in machineRead && (shopRead === null || !('shop' in shopRead)))
    problems.push(...flawsWithoutParts(machineRead.document))
  const specRead = 'document' in scenarioRead ? readSpec(scenarioRead.document) : null
  if (specRead !== null && 'problems' in specRead) problems.push(...specRead.problems)
  if (
    machineRead === null ||
    !('document' in machineRead) ||
    !('document' in scenarioRead) ||
    shopRead === null ||
    !('shop' in shopRead)
  )
    return { problems: tidy(problems) }
  const { shop } = shopRead
  const [scenarioDocument, machineDocument] = [scenarioRead.document, machineRead.document]
  const plain = mergeMachine(machineDocument.data, [], shop.parts)
  if ('flaws' in plain)
    problems.push(...plain.flaws.map((flaw) => locateMerged(flaw, machineDocument, scenarioDocument, null)))
  if (specRead === null || !('spec' in specRead) || !('spec' in plain)) return { problems: tidy(problems) }
  for (const [option, patch] of optionPatches(specRead.spec).entries()) {
    const merged = mergeMachine(machineDocument.data, [patch], shop.parts)
    if ('flaws' in merged)
      problems.push(...merged.flaws.map((flaw) => locateMerged(flaw, machineDocument, scenarioDocument, option)))
  }
  const nominal = prepared(plain.spec).resolve()
  const { scenario: question, flaws } = scenarioOf(scenario.file, specRead.spec, nominal.machine)
  problems.push(...flaws.map((flaw) => locate(scenarioDocument, flaw)))
  if (problems.length > 0) return { problems: tidy(problems) }
  return {
    loaded: {
      scenario: question,
      shop,
      sheet: sheetOf(question, specRead.spec, plain.spec, nominal.machine, shop),
      assumptions: scenarioAssumptions(specRead.spec),
      prepare: (patches) => {
        const merged = mergeMachine(machineDocument.data, patches, shop.parts)
        if ('flaws' in merged)
          throw new Error(
            `a patch does not fit: ${merged.flaws.map((f) => `${f.path.join('.')}: ${f.message}`).join('; ')}`,
          )
        return prepared(merged.spec)
      },
    },
  }
}
