/** Finds and reads the files of a scenario: its machine beside it, the shop in the nearest folder `shop` above. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import { MOST_BYTES } from '../scenario/document.ts'
import { mayBeScenario } from '../scenario/file-kind.ts'
import { unitNames } from '../scenario/fleet.ts'
import { machinePathIn, type ReadResult, readAll, type SourceText, type Unread } from '../scenario/read.ts'

const shownName = (path: string, cwd: string): string => {
  const near = relative(cwd, path)
  return (near === '' || near.startsWith('..') ? path : near).split(sep).join('/')
}

/** Why a file is not even opened: a device or a pipe may never end, and a huge one would fill the memory first. */
const unread = (path: string): Unread | null => {
  const found = statSync(path)
  if (found.isDirectory()) return { what: 'a folder' }
  if (!found.isFile()) return { what: 'a device or a pipe' }
  return found.size > MOST_BYTES ? { bytes: found.size } : null
}

const yamlNames = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => /\.ya?ml$/iu.test(name))
    .sort()

/** null where it is no folder, or may not be looked into. */
const yamlNamesIn = (folder: string): readonly string[] | null => {
  try {
    return yamlNames(folder)
  } catch {
    return null
  }
}

const sourceText = (path: string, cwd: string): SourceText => {
  const file = shownName(path, cwd)
  try {
    const why = unread(path)
    return why === null ? { file, text: readFileSync(path, 'utf8') } : { file, text: null, unread: why }
  } catch {
    return { file, text: null, beside: yamlNamesIn(dirname(path)) }
  }
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory()

/** The folder `shop` beside a file or beside the nearest parent that has one. */
const shopFolder = (from: string): string | null => {
  const folder = join(from, 'shop')
  if (isFolder(folder)) return folder
  const parent = dirname(from)
  return parent === from ? null : shopFolder(parent)
}

const yamlFiles = (folder: string): readonly string[] => yamlNames(folder).map((name) => join(folder, name))

/** One question of a file: the file's own, or one unit's of a fleet. */
export interface Question {
  /** Name of the unit; null where the file is no fleet. */
  readonly unit: string | null
  readonly read: ReadResult
}

/** Everything that one question is read from. */
export interface Sources {
  readonly scenario: SourceText
  /** null: the scenario names none, or cannot be read that far. */
  readonly machine: SourceText | null
  readonly shopFiles: readonly SourceText[]
  /** Path of the shop's folder; null where there is none. */
  readonly shop: string | null
}

/** Reads the files of a scenario, or of one unit of a fleet, counted from 0. */
export const sourcesOf = (path: string, cwd: string, unit: number | null): Sources => {
  const whole = resolve(cwd, path)
  const scenario = sourceText(whole, cwd)
  const machine = machinePathIn(scenario, unit)
  const shop = shopFolder(dirname(whole))
  return {
    scenario,
    machine: machine === null ? null : sourceText(resolve(dirname(whole), machine), cwd),
    shopFiles: shop === null ? [] : yamlFiles(shop).map((file) => sourceText(file, cwd)),
    shop,
  }
}

/** Reads one question: of a fleet that of one unit, counted from 0. */
export const readOne = (path: string, cwd: string, unit: number | null): ReadResult => {
  const { scenario, machine, shopFiles, shop } = sourcesOf(path, cwd, unit)
  return readAll(scenario, machine, shopFiles, shop === null ? null : shownName(shop, cwd), unit)
}

/**
 * Loads a scenario.
 * @param path of the scenario file, anywhere
 * @param cwd folder that relative paths and shown names refer to
 * @returns the scenario ready for evaluation, or every problem of every file
 */
export const load = (path: string, cwd: string): ReadResult => readOne(path, cwd, null)

/** Names of the units of a fleet; null where the file is none. */
export const unitsOf = (path: string, cwd: string): readonly string[] | null => {
  const { file, text } = sourceText(resolve(cwd, path), cwd)
  return text === null ? null : unitNames(file, text)
}

/** Loads every question of a file: of a fleet one a unit. */
export const loadQuestions = (path: string, cwd: string): readonly Question[] => {
  const units = unitsOf(path, cwd)
  if (units === null) return [{ unit: null, read: load(path, cwd) }]
  return units.map((unit, i) => ({ unit, read: readOne(path, cwd, i) }))
}

/** The scenario's own text, for what is said about it once it is read. */
export const scenarioSource = (path: string, cwd: string): SourceText => sourceText(resolve(cwd, path), cwd)

/** Path of the shop's folder, for its logo; null where there is none. */
export const shopFolderOf = (path: string, cwd: string): string | null => shopFolder(dirname(resolve(cwd, path)))

/** A machine file by itself, with the shop's files where there is a shop beside or above it. */
export const surveySources = (
  path: string,
  cwd: string,
): { readonly source: SourceText; readonly shopFiles: readonly SourceText[]; readonly shopFolder: string | null } => {
  const whole = resolve(cwd, path)
  const folder = shopFolder(dirname(whole))
  return {
    source: sourceText(whole, cwd),
    shopFiles: folder === null ? [] : yamlFiles(folder).map((file) => sourceText(file, cwd)),
    shopFolder: folder === null ? null : shownName(folder, cwd),
  }
}

/**
 * The scenarios of a folder, in the order of their names: its YAML files but for machine files and those of a shop. Folders
 * inside it are left alone.
 * @returns null where the path is no folder
 */
export const scenariosIn = (path: string, cwd: string): readonly string[] | null => {
  const folder = resolve(cwd, path)
  if (!isFolder(folder)) return null
  return yamlFiles(folder).filter((file) => {
    const { text } = sourceText(file, cwd)
    return text === null || mayBeScenario(file, text)
  })
}
