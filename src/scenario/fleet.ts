/**
 * A fleet: one scenario file with `units`, each a merge patch over the scenario itself, so that each machine of a yard gets
 * an answer of its own. To every later step a unit is a scenario like any other.
 */
import type { Json } from '../question.ts'
import { depthIn, readDocument, type SourceDocument } from './document.ts'
import { applyPatch, isMapping } from './patch.ts'
import type { Path } from './problems.ts'

const unitsOf = (data: Json): readonly Json[] | null => {
  const units = isMapping(data) ? data.units : undefined
  return Array.isArray(units) ? units : null
}

/** Names of the units of a fleet; null where the file is none or cannot be read that far. */
export const unitNames = (file: string, text: string): readonly string[] | null => {
  const read = readDocument(file, text)
  if (!('document' in read)) return null
  const units = unitsOf(read.document.data)
  return (
    units?.map((unit, i) => (isMapping(unit) && typeof unit.name === 'string' ? unit.name : `unit ${i + 1}`)) ?? null
  )
}

/** The scenario as one unit sees it: the common part, patched; mistakes are shown where they were written. */
export const unitDocument = (document: SourceDocument, index: number): SourceDocument => {
  const unit = unitsOf(document.data)?.[index]
  if (!isMapping(document.data) || !isMapping(unit)) return document
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
