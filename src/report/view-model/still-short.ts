/**
 * Inlets that a way betters without curing them. They were short before and are nobody's new finding, so no table of what
 * must change names them; untold, the pump would be taken for cured.
 */
import type { Evaluation, Finding, ResultDocument } from '../../evaluation.ts'
import { quantity, typeset, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'
import { findingValues } from './finding-text.ts'

/** Less than this share more is no change (method: "Findings"). */
const NOTICED = 1.02

const told = (was: Finding | undefined, is: Finding, units: Units): readonly string[] => {
  if (typeof was?.value !== 'number' || typeof is.value !== 'number') return []
  if (is.severity === 'ok' || was.severity === 'ok' || is.value <= NOTICED * was.value) return []
  const { value, limit } = findingValues(is, units)
  const words = is.check === 'inlet-pressure-cold' ? en.cautions.stillShortCold : en.cautions.stillShort
  return [typeset(words(en.capital(componentName(is.component)), value, quantity(was.value, is.unit, units), limit))]
}

/** Sentences on the inlets of a way, held against what it starts from: the repaired machine where there is a fault. */
export const stillShort = (
  { baseline, restored }: ResultDocument,
  after: Evaluation,
  units: Units,
): readonly string[] => {
  const before = new Map((restored ?? baseline).findings.map((finding) => [finding.id, finding]))
  return after.findings
    .filter(({ check }) => check === 'inlet-pressure' || check === 'inlet-pressure-cold')
    .flatMap((finding) => told(before.get(finding.id), finding, units))
}
