/** What the technician works from, and what was measured when it was done. */
import { z } from 'zod'
import type { Acceptance } from '../evaluation.ts'
import type { WorkOrder } from '../work-order.ts'
import { figure, orNull, words } from './figures-schema.ts'

const joint = z.strictObject({
  place: z.enum(['inlet', 'outlet', 'work', 'first', 'second', 'port']),
  into: words,
  connection: words,
  standard: words,
  thread: words,
  seal: words,
  mistakenFor: words.describe('what looks the same and does not fit'),
  adapter: words,
  tightening: orNull(
    z.strictObject({
      torqueNm: z.tuple([z.number(), z.number()]).nullable().describe('lowest and highest of the published tables'),
      turns: words,
      source: z.string(),
    }),
  ),
})

const pull = z.strictObject({
  component: z.string(),
  kind: z.string(),
  part: words,
  what: z.string(),
  quantity: z.number(),
  unit: z.enum(['piece', 'm', 'L']),
  pieces: figure.describe('hoses to cut'),
  lengthM: figure.describe('of each hose; null: cut to fit on the machine'),
  boreMm: figure,
  maxPressureBar: figure,
  workingPressureBar: figure,
  mount: words,
  joints: z.array(joint),
  kit: words,
  stock: figure,
  leadDays: figure,
  oldPartBack: z.boolean(),
})

export const workOrder = z.strictObject({
  option: words.describe('null: the restoration'),
  pulls: z.array(pull),
  jobs: z.array(z.strictObject({ job: z.string(), quantity: z.number(), components: z.array(z.string()) })),
  reliefs: z.array(z.strictObject({ circuit: z.string(), settingBar: z.number(), wasBar: figure })),
  oil: z.strictObject({ grade: words, fillL: z.number(), reservoirL: z.number() }),
  ratedEngineRpm: z.number(),
}) satisfies z.ZodType<WorkOrder>

const acceptanceRow = z.strictObject({
  what: z.enum(['speed', 'engine-speed', 'relief-pressure', 'inlet-pressure', 'oil-temperature']),
  component: z.string(),
  promisedLow: figure,
  promisedHigh: figure,
  measured: z.number(),
  unit: z.string(),
  bound: z.enum(['at least', 'at most', 'between']),
  kept: z.boolean().nullable().describe('null: cannot be held against a promise; the note says why'),
  note: words,
  source: z.string(),
})

export const acceptance = z.strictObject({
  date: words,
  option: words,
  runs: z.array(
    z.strictObject({
      direction: z.enum(['forward', 'back']),
      distanceM: z.number(),
      timeS: z.number(),
      speedKmh: z.number(),
    }),
  ),
  oilC: figure,
  rows: z.array(acceptanceRow),
  kept: z.boolean().nullable().describe('null: open'),
}) satisfies z.ZodType<Acceptance>
