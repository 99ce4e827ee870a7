/**
 * Jobs that another job already contains, and what is left to book. A row says: one of `job` contains one of `contains`
 * (where `all` is set, every one of them).
 *
 * Not contained, on purpose: a coupling in a pump swap (fitting and lining up a hub adds 1.5 to 4 h to a swap on the same
 * flange and shaft); setting the relief in a pump swap (it is read in "test and record", set only where it was changed);
 * hoses in anything but a second pump (a hose is made up and routed on its own); motors in a shift line.
 */
import type { Job, JobUse } from '../consequences/uses.ts'

export interface Containment {
  readonly job: Job
  readonly contains: Job
  readonly all: boolean
  readonly reason: string
}

export const containments: readonly Containment[] = [
  {
    job: 'clean reservoir',
    contains: 'change oil',
    all: true,
    reason: 'the tank is drained, opened, cleaned and filled again',
  },
  {
    job: 'replace relief',
    contains: 'set relief',
    all: false,
    reason: 'a new relief is set by the gauge before it goes out',
  },
  {
    job: 'fit second pump',
    contains: 'replace pump',
    all: false,
    reason: 'the tandem takes the place of the pump that was there',
  },
  {
    job: 'fit second pump',
    contains: 'replace coupling',
    all: false,
    reason: 'the shaft is open and is lined up anew',
  },
  {
    job: 'replace motor',
    contains: 'replace sprocket',
    all: false,
    reason: 'the sprocket comes off with the motor of its side',
  },
]

/**
 * Books the jobs: those of one name added up, those that another contains taken off, and one "test and record" as soon as
 * anything is done.
 * @param jobs as they were asked for, in any order
 * @returns name and number of each job, in the order in which they first came; "test and record" last
 */
export const bookedJobs = (jobs: readonly JobUse[]): readonly { readonly job: Job; readonly quantity: number }[] => {
  const counts = new Map<Job, number>()
  for (const { job, quantity } of jobs) counts.set(job, (counts.get(job) ?? 0) + quantity)
  const left = new Map(counts)
  for (const { job, contains, all } of containments) {
    const holding = counts.get(job) ?? 0
    const held = left.get(contains)
    if (holding > 0 && held !== undefined) left.set(contains, all ? 0 : Math.max(0, held - holding))
  }
  // The oil is changed once, however many jobs drain it; the tank is cleaned once.
  for (const once of ['change oil', 'clean reservoir'] as const) {
    const number = left.get(once)
    if (number !== undefined) left.set(once, Math.min(1, number))
  }
  left.delete('test and record')
  const booked = [...left].filter(([, quantity]) => quantity > 0).map(([job, quantity]) => ({ job, quantity }))
  return counts.size === 0 ? [] : [...booked, { job: 'test and record', quantity: 1 }]
}
