/**
 * A fleet: one scenario file with `units`, each a merge patch over the scenario itself, so that each machine of a yard gets
 * an answer of its own. To every later step a unit is a scenario like any other.
 */
import type { Json } from '../question.ts'
import { depthIn, readDocument, type SourceDocument } from './document.ts'
import { flawsOf } from './flaws.ts'
import { applyPatch, isMapping } from './patch.ts'
import type { Flaw, Path } from './problems.ts'
import { MOST_UNITS, scenarioFile } from './scenario-schema.ts'

const unitsOf = (data: Json): readonly Json[] | null => {
  const units = isMapping(data) ? data.units : undefined
  return Array.isArray(units) ? units : null
}

const nameOf = (unit: Json | undefined): string | null =>
  isMapping(unit) && typeof unit.name === 'string' && unit.name.trim() !== '' ? unit.name.trim() : null

/** Names of the units of a fleet; null where the file is none, has too few or too many, or cannot be read that far. */
export const unitNames = (file: string, text: string): readonly string[] | null => {
  const read = readDocument(file, text)
  if (!('document' in read)) return null
  const units = unitsOf(read.document.data)
  // What is wrong with the list is told of the file as a whole.
  if (units === null || units.length === 0 || units.length > MOST_UNITS) return null
  return units.map((unit, i) => nameOf(unit) ?? `unit ${i + 1}`)
}

const UNITS = scenarioFile.pick({ units: true })

/** What is wrong with one entry of the list itself: it is no group, has no name, or that of an earlier one. */
export const unitFlaws = ({ data }: SourceDocument, index: number): readonly Flaw[] => {
  const units = unitsOf(data) ?? []
  const list = { units: units as Json }
  const read = UNITS.safeParse(list)
  const flaws = read.success ? [] : flawsOf(read.error, list, UNITS).filter(({ path }) => path[1] === index)
  const name = nameOf(units[index])
  const isTwice = name !== null && units.slice(0, index).some((unit) => nameOf(unit) === name)
  const path = ['units', index, 'name']
  const message = `two units are called "${name}"`
  return isTwice
    ? [...flaws, { code: 'name-twice', path, message, expected: 'a name of its own for each', remedy: null }]
    : flaws
}

/** The scenario as one unit sees it: the common part, patched; mistakes are shown where they were written. */
export const unitDocument = (document: SourceDocument, index: number): SourceDocument => {
  const entry = unitsOf(document.data)?.[index]
  if (!isMapping(document.data) || entry === undefined) return document
  const unit = isMapping(entry) ? entry : {}
  const { units: _, ...common } = document.data
  const { name, ...own } = unit
  const titled = { title: `${String(common.title ?? '')}: ${String(name ?? '')}`, ...own }
  const placeOf = (path: Path): Path => {
    const inUnit: Path = ['units', index, ...path]
    return path.length > 0 && depthIn(document, inUnit) > 2 ? inUnit : path
  }
  return { ...document, data: applyPatch(common, titled, { parts: [], flaws: [] }), placeOf }
}

/** What one unit of a fleet says, the common part included, as a text: the same as long as nothing of it changes. */
export const unitText = (file: string, text: string, index: number): string => {
  const read = readDocument(file, text)
  return 'document' in read ? JSON.stringify(unitDocument(read.document, index).data) : text
}
