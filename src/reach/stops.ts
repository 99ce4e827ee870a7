/** What stops the ways that would go further than the furthest that can be had: each finding once, as it is met first. */
import type { Finding } from '../evaluation.ts'
import { type Assessed, stands } from './assess.ts'

/** How far past its limit, as a share of it; 0 where it is no number. */
export const excess = ({ value, limit }: Finding): number =>
  typeof value === 'number' && typeof limit === 'number' && limit !== 0 ? Math.abs(value / limit - 1) : 0

/** More than these nobody reads. */
const MOST = 6

/** Of an attachment that gets nothing at its pressure any way counts that tries; else what goes further, or costs less. */
const isBeyond = ({ score, price }: Assessed, nearest: Assessed | null): boolean =>
  nearest === null || nearest.score === 0 || score > nearest.score || price < nearest.price

/**
 * @param all everything that was evaluated, the options written by hand included
 * @param nearest the furthest within every limit; null where nothing is
 * @returns stops before changes; of each check at a component the one that is least past its limit: the next to be had
 */
export const stopsOf = (all: readonly Assessed[], nearest: Assessed | null): readonly Finding[] => {
  const beyond = all.filter((one) => !one.withinLimits && isBeyond(one, nearest))
  const byId = new Map<string, Finding>()
  for (const { way } of beyond)
    for (const finding of way.option.evaluation.findings.filter(stands)) {
      const known = byId.get(finding.id)
      if (known === undefined || excess(finding) < excess(known)) byId.set(finding.id, finding)
    }
  const rank = ({ severity }: Finding) => (severity === 'stop' ? 0 : 1)
  return [...byId.values()]
    .toSorted((a, b) => rank(a) - rank(b) || excess(b) - excess(a) || (a.id < b.id ? -1 : 1))
    .slice(0, MOST)
}
