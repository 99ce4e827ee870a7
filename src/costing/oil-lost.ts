/**
 * Oil that a job lets out or a new component takes up, to be filled in again. Litres for one; an assumption, common
 * practice without a source, but for the cooler (a kit takes 1 to 3 L).
 */
import type { Job, JobUse } from '../consequences/uses.ts'
import { bookedJobs } from './contained-jobs.ts'

export const LITRES_LOST: { readonly [job in Job]?: number } = {
  'replace pump': 2,
  'fit second pump': 2,
  'replace motor': 1,
  'replace swivel': 2,
  'replace valve': 1.5,
  'replace relief': 0.2,
  'replace hose': 0.3,
  'fit cooler': 2,
  'fit filter': 1,
  'fit shift line': 0.5,
}

/** Jobs that drain the whole reservoir. */
const DRAINS: readonly Job[] = ['change oil', 'clean reservoir']

/**
 * Litres to fill in after the jobs: the reservoir where it is drained, else what runs out of each job, at most the
 * reservoir; what a new cooler takes comes on top.
 * @param jobs of the whole quote
 * @param reservoirLitres oil in the machine
 */
export const oilLost = (jobs: readonly JobUse[], reservoirLitres: number): number => {
  const booked = bookedJobs(jobs)
  const lost = booked.reduce((sum, { job, quantity }) => sum + (LITRES_LOST[job] ?? 0) * quantity, 0)
  const taken = booked.some(({ job }) => job === 'fit cooler') ? (LITRES_LOST['fit cooler'] ?? 0) : 0
  const drained = booked.some(({ job }) => DRAINS.includes(job))
  return drained ? reservoirLitres + taken : Math.min(lost, reservoirLitres + taken)
}
