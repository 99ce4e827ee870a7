/** Labour lines: hours of the shop's list for each job, and of the jobs that parts bring of their own. */
import type { JobUse, PartUse } from '../consequences/uses.ts'
import type { LabourLine } from '../evaluation.ts'
import type { Hours, Shop } from '../shop.ts'
import { bookedJobs } from './contained-jobs.ts'
import { type Cents, cents, total } from './money.ts'

export interface Labour {
  readonly lines: readonly LabourLine[]
  readonly low: Cents
  readonly likely: Cents
  readonly high: Cents
  /** Jobs that the shop's list has no hours for. */
  readonly unpriced: readonly string[]
}

/** Hours add up without a tail of digits: 3 x 0.7 h is 2.1 h. */
const tidy = (hours: number): number => Math.round(hours * 1e6) / 1e6

const lineOf = (job: string, hours: Hours, quantity: number, rate: number): LabourLine => ({
  job,
  hoursLow: tidy(hours.low * quantity),
  hoursLikely: tidy(hours.likely * quantity),
  hoursHigh: tidy(hours.high * quantity),
  rate,
})

/** Parts sold by the metre or the litre bring their own job once, others with each piece. */
const pieces = ({ kind, quantity }: PartUse): number => (kind === 'hose' || kind === 'oil' ? 1 : quantity)

const ownLabour = (uses: readonly PartUse[], shop: Shop): readonly LabourLine[] => {
  const byId = new Map(shop.parts.map((part) => [part.id, part]))
  return uses.flatMap((use) =>
    (byId.get(use.part ?? '')?.labour ?? []).map(({ job, hours }) => lineOf(job, hours, pieces(use), shop.labourRate)),
  )
}

/** Lines of one job are one line. */
const joined = (lines: readonly LabourLine[]): readonly LabourLine[] => {
  const byJob = new Map<string, LabourLine>()
  for (const line of lines) {
    const known = byJob.get(line.job)
    if (known === undefined) byJob.set(line.job, line)
    else
      byJob.set(line.job, {
        ...known,
        hoursLow: tidy(known.hoursLow + line.hoursLow),
        hoursLikely: tidy(known.hoursLikely + line.hoursLikely),
        hoursHigh: tidy(known.hoursHigh + line.hoursHigh),
      })
  }
  return [...byJob.values()]
}

/**
 * Labour of a quote: each line hours x rate, rounded once.
 * @param jobs as asked; what another contains is not counted twice, "test and record" comes once with anything
 */
export const labourOf = (jobs: readonly JobUse[], uses: readonly PartUse[], shop: Shop): Labour => {
  const hoursOf = new Map(shop.labour.map(({ job, hours }) => [job, hours]))
  const booked = bookedJobs(uses.length > 0 || jobs.length > 0 ? [...jobs, testAndRecord] : [])
  const listed = booked.flatMap(({ job, quantity }) => {
    const hours = hoursOf.get(job)
    return hours === undefined ? [] : [lineOf(job, hours, quantity, shop.labourRate)]
  })
  const test = listed.filter(({ job }) => job === 'test and record')
  const lines = joined([...listed.filter(({ job }) => job !== 'test and record'), ...ownLabour(uses, shop), ...test])
  const sum = (hours: (line: LabourLine) => number) => total(lines.map((line) => cents(hours(line) * line.rate)))
  return {
    lines,
    low: sum((line) => line.hoursLow),
    likely: sum((line) => line.hoursLikely),
    high: sum((line) => line.hoursHigh),
    unpriced: booked.filter(({ job }) => !hoursOf.has(job)).map(({ job }) => `labour: ${job}`),
  }
}

const testAndRecord: JobUse = { component: 'machine', job: 'test and record', quantity: 1 }
