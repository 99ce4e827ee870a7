/** From the texts of all files to a scenario ready for evaluation, or to every problem in any of them. Pure. */
import type { Loaded } from '../loaded.ts'
import type { Json } from '../question.ts'
import { askedOfMachine, askedOfOption, askedOfScenario } from './asked-about.ts'
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
import { strangerIn } from './file-kind.ts'
import { flawsOf } from './flaws.ts'
import { unitDocument, unitFlaws } from './fleet.ts'
import type { MachineSpec } from './machine-schema.ts'
import { isMapping } from './patch.ts'
import { type Flaw, nearest, type Path, type Problem } from './problems.ts'
import { type MergedMachine, mergeMachine, patchFlaws, prepared } from './read-machine.ts'
import { scenarioAssumptions, scenarioOf } from './read-scenario.ts'
import { readShop, type ShopResult } from './read-shop.ts'
import { type Known, scenarioFlaws } from './scenario-flaws.ts'
import { type ScenarioSpec, scenarioFile } from './scenario-schema.ts'
import { sheetOf } from './sheet.ts'
import { CLEAR, soundPart, unclearAt } from './sound.ts'

/** A file's name as it is shown, and its text; null where it could not be read. */
export interface SourceText {
  readonly file: string
  readonly text: string | null
  /** Why it was not read, where it is there. */
  readonly unread?: Unread
  /** Names of the YAML files where it was looked for, if it is not there; null where there is no such folder either. */
  readonly beside?: readonly string[] | null
}

/** Something else than a file, or too large a one. */
export type Unread = { readonly what: string } | { readonly bytes: number }

export type ReadResult = { readonly loaded: Loaded } | { readonly problems: readonly Problem[] }

const lastOf = (file: string): string => file.split(/[/\\]/u).at(-1) ?? file
const stemOf = (name: string): string => name.replace(/\.ya?ml$/iu, '')

/** A file beside it that was probably meant, or that there is not even the folder. */
const fileMeant = ({ file, unread, beside }: SourceText): string | null => {
  if (unread !== undefined && 'what' in unread) return unread.what === 'a folder' ? 'name a file in it' : null
  if (beside === null) return 'its folder is not there either'
  const near = nearest(stemOf(lastOf(file)), beside?.map(stemOf) ?? [])
  const meant = beside?.find((name) => stemOf(name) === near)
  return meant === undefined ? null : `did you mean "${meant}"?`
}

const missing = (source: SourceText, expected: string, named: boolean): Flaw => {
  const { file, unread } = source
  const what = unread !== undefined && 'what' in unread ? `is ${unread.what}` : 'is not there or cannot be read'
  const message = `${named ? `"${file}"` : 'this file'} ${what}`
  return { code: 'file-missing', path: [], message, expected, remedy: fileMeant(source) }
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
const locateMerged = (flaw: Flaw, machine: SourceDocument, scenario: SourceDocument, option: number): Problem => {
  const base = ['options', option, 'changes']
  const path = [...base, ...flaw.path]
  const depth = depthIn(scenario, path)
  const inPatch = depth - base.length
  const inMachine = depthIn(machine, flaw.path)
  if (inPatch >= Math.min(flaw.path.length, Math.max(1, inMachine))) return locate(scenario, { ...flaw, path })
  return locate(machine, flaw)
}

const readText = (
  source: SourceText,
  expected: string,
): { document: SourceDocument } | { problems: readonly Problem[] } =>
  source.text === null ? { problems: [missingFile(source, expected)] } : readDocument(source.file, source.text)

/** A scenario as far as it can be read. */
interface ReadSpec {
  /** null where something is wrong with it. */
  readonly spec: ScenarioSpec | null
  readonly sound: Partial<ScenarioSpec>
  readonly flaws: readonly Flaw[]
}

const readSpec = (document: SourceDocument): ReadSpec => {
  const data = withoutBlanks(document.data, scenarioFile)
  const read = scenarioFile.safeParse(data)
  if (read.success) return { spec: read.data, sound: read.data, flaws: [] }
  const sound = (soundPart(scenarioFile, data) ?? {}) as Partial<ScenarioSpec>
  return { spec: null, sound, flaws: flawsOf(read.error, data, scenarioFile) }
}

/** Patches of all options, each with its number, whatever else is wrong with them. */
const patchesIn = ({ data }: SourceDocument): readonly (readonly [number, Json])[] => {
  const options = isMapping(data) && Array.isArray(data.options) ? (data.options as readonly Json[]) : []
  return options.flatMap((option, i) =>
    isMapping(option) && isMapping(option.changes) ? [[i, option.changes] as const] : [],
  )
}

/** What the checks of a scenario ask of its machine. */
const circuitsOf = (merged: MergedMachine): Pick<Known, 'circuits' | 'works'> => {
  const named = isMapping(merged.data) && isMapping(merged.data.circuits) ? Object.keys(merged.data.circuits) : null
  const [sound, unclear] = 'spec' in merged ? [merged.spec, CLEAR] : [merged.sound, merged.unclear]
  const works = unclear('circuits', '*', 'works')
    ? null
    : Object.values(sound.circuits ?? {}).flatMap((circuit) => circuit?.works ?? [])
  return { circuits: named, works }
}

const keyOf = ({ code, path, message }: Flaw): string => JSON.stringify([code, path, message])

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

/** Any part may be on a list that is not there. */
const NO_SHOP: ShopResult = { problems: [], parts: [], isListed: () => true }

/** The document of a file where it is of the kind that is wanted; what is wrong with it as a text or a kind is noted. */
const own = (read: DocumentResult | null, wanted: 'scenario' | 'machine', into: Problem[]): SourceDocument | null => {
  if (read === null || !('document' in read)) return null
  into.push(...read.document.mistakes)
  const stranger = strangerIn(read.document, wanted)
  if (stranger === null) return read.document
  into.push(stranger)
  return null
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
  const wholeRead = readText(scenario, 'a scenario file')
  const scenarioRead = readUnit(wholeRead, unit)
  const machineRead = machine === null ? null : readText(machine, 'the machine file that the scenario names')
  const shopDocuments: SourceDocument[] = []
  for (const file of shopFiles) {
    const read = readText(file, 'a file of the shop')
    if ('document' in read) shopDocuments.push(read.document)
    else problems.push(...read.problems)
  }
  const whole = shopDocuments.length === shopFiles.length
  const shopRead = shopFolder === null ? NO_SHOP : readShop(shopDocuments, shopFolder, whole)
  if ('problems' in shopRead) problems.push(...shopRead.problems)
  if ('problems' in scenarioRead) problems.push(...scenarioRead.problems)
  if (machine !== null && machineRead !== null && 'problems' in machineRead) {
    const named = machine.text === null && (machine.unread === undefined || 'what' in machine.unread)
    if (named && 'document' in scenarioRead) {
      const flaw = missing(machine, 'a machine file, relative to this file', true)
      problems.push(locate(scenarioRead.document, { ...flaw, path: ['machine'] }))
    } else problems.push(...machineRead.problems)
  }
  const scenarioDocument = own(scenarioRead, 'scenario', problems)
  if (unit !== null && 'document' in wholeRead)
    problems.push(...unitFlaws(wholeRead.document, unit).map((flaw) => locate(wholeRead.document, flaw)))
  const machineDocument = own(machineRead, 'machine', problems)
  const isStranger = 'document' in scenarioRead && scenarioDocument === null
  // Where a scenario that is none, or not there, would have its shop is nobody's question.
  if (shopFolder === null && scenario.text !== null && !isStranger)
    problems.push(
      fileProblem(scenario.file, {
        code: 'shop-missing',
        path: [],
        message: 'there is no folder "shop" beside this file or a parent of it',
        expected: 'shop/shop.yaml with the shop, its parts and labour',
        remedy: null,
      }),
    )
  problems.push(...shopDocuments.flatMap(({ mistakes }) => mistakes))
  const specRead = scenarioDocument === null ? null : readSpec(scenarioDocument)
  const [parts, isUnread] =
    'shop' in shopRead ? [shopRead.shop.parts, () => false] : [shopRead.parts, shopRead.isListed]
  const merge = (patches: readonly Json[]): MergedMachine | null =>
    machineDocument === null ? null : mergeMachine(machineDocument.data, patches, parts, isUnread)
  const plain = merge([])
  const changed: (readonly [number, MachineSpec])[] = []
  if (machineDocument !== null && plain !== null && 'flaws' in plain)
    problems.push(...plain.flaws.map((flaw) => locate(machineDocument, flaw)))
  if (scenarioDocument !== null && specRead !== null) {
    const circuits = plain === null ? { circuits: null, works: null } : circuitsOf(plain)
    const unclear = unclearAt(specRead.flaws.map(({ path }) => path))
    const across = scenarioFlaws({ spec: specRead.sound, unclear, ...circuits })
    problems.push(...[...specRead.flaws, ...across].map((flaw) => locate(scenarioDocument, flaw)))
    // What the machine has already is told of the machine alone.
    const told = new Set(plain !== null && 'flaws' in plain ? plain.flaws.map(keyOf) : [])
    for (const [option, patch] of patchesIn(scenarioDocument)) {
      if (machineDocument === null) {
        const at = (path: Path): Path => ['options', option, 'changes', ...path]
        const flaws = patchFlaws(patch, parts, isUnread)
        problems.push(...flaws.map((flaw) => locate(scenarioDocument, { ...flaw, path: at(flaw.path) })))
        continue
      }
      const merged = merge([patch])
      if (merged !== null && 'spec' in merged) changed.push([option, merged.spec])
      if (merged === null || !('flaws' in merged)) continue
      const more = merged.flaws.filter((flaw) => !told.has(keyOf(flaw)))
      problems.push(...more.map((flaw) => locateMerged(flaw, machineDocument, scenarioDocument, option)))
    }
  }
  const spec = specRead?.spec ?? null
  if (
    problems.length > 0 ||
    machineDocument === null ||
    plain === null ||
    !('spec' in plain) ||
    spec === null ||
    !('shop' in shopRead)
  )
    return { problems: tidy(problems) }
  const { shop } = shopRead
  const nominal = prepared(plain.spec).resolve()
  const stands = [...askedOfScenario(spec), ...askedOfMachine(plain.spec)]
  const question = scenarioOf(scenario.file, spec, nominal.machine)
  return {
    loaded: {
      scenario: question,
      shop,
      sheet: sheetOf(question, spec, plain.spec, nominal.machine, shop),
      assumptions: scenarioAssumptions(spec),
      askedAbout: [
        ...stands,
        ...changed.flatMap(([i, machineSpec]) => askedOfOption(question.options[i]?.name ?? '', machineSpec, stands)),
      ],
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
