/** What is done, what it costs, what it brings and what is answered: pieces of an option in the result document. */
import { z } from 'zod'
import type { Answer, BuildUp, Consequence, Cost, Gain, Range } from '../evaluation.ts'
import { figure, orNull, reasonCodes, words } from './figures-schema.ts'

export const consequence = z
  .strictObject({
    component: z.string(),
    kind: z.string().describe('kind of part'),
    action: z.enum(['replace', 'add', 'adapt']),
    part: words.describe('id on the parts list; null: none fits'),
    quantity: z.number(),
    because: z.array(z.string()).describe('ids of findings'),
    connections: z.array(z.strictObject({ from: z.string(), to: z.string(), adapter: words })),
    available: z.boolean().describe('false: not on the parts list'),
    specialOrder: z.boolean().describe('not on the list, and the shop can order it'),
    chain: z.array(z.string()).describe('from the asked change to this one, in words'),
  })
  .meta({ id: 'Consequence' }) satisfies z.ZodType<Consequence>

const costLine = z.strictObject({
  what: z.string(),
  part: words,
  quantity: z.number(),
  unitPrice: figure.describe('null: unpriced'),
  amount: figure,
  leadDays: figure,
  stock: figure,
  unitCost: figure.describe("shop's copy only"),
})

const labourLine = z.strictObject({
  job: z.string(),
  hoursLow: z.number(),
  hoursLikely: z.number(),
  hoursHigh: z.number(),
  rate: z.number(),
})

const deposit = z.strictObject({ what: z.string(), part: z.string(), quantity: z.number(), amount: z.number() })

export const cost = z
  .strictObject({
    currency: z.string(),
    low: z.number().describe('total, tax included'),
    likely: z.number(),
    high: z.number(),
    lines: z.array(costLine),
    labour: z.array(labourLine),
    parts: z.number(),
    labourTotal: z.number(),
    supplies: z.number(),
    freight: z.number(),
    contingency: z.number(),
    tax: z.number(),
    deposits: z.array(deposit).describe('paid with a part, and given back when the old one comes back: in no total'),
    unpriced: z.array(z.string()).describe('with any, the total is "from"'),
  })
  .meta({ id: 'Cost' }) satisfies z.ZodType<Cost>

export const gain = z
  .strictObject({
    speedKmh: figure,
    speedRatio: figure,
    minutesPerTrip: figure,
    hoursPerYear: figure,
    steadyOilC: figure,
    costPerKmh: figure,
    paybackYears: figure,
  })
  .meta({ id: 'Gain' }) satisfies z.ZodType<Gain>

const percentiles = z.strictObject({ p10: figure, p50: figure, p90: figure }).meta({ id: 'Percentiles' })

export const range = z
  .strictObject({
    speedKmh: percentiles,
    steadyOilC: percentiles,
    speedRatio: percentiles.describe('level speed over that of the machine it starts from'),
    gainWithinError: z.boolean().describe('the gain is under what a stopwatch can show'),
  })
  .meta({ id: 'Range' }) satisfies z.ZodType<Range>

export const answer = z.strictObject({
  answer: z.enum(['recommend', 'conditions', 'decline']),
  reasons: z.array(z.strictObject({ code: z.enum(reasonCodes), text: z.string() })),
  conditions: z.array(z.string()),
}) satisfies z.ZodType<Answer>

const buildUpLine = z.strictObject({
  what: z.string(),
  part: words,
  quantity: z.number(),
  unitCost: figure,
  cost: figure,
  unitPrice: figure,
  price: figure,
  profit: figure,
  margin: figure.describe('share of the price'),
  markUp: figure.describe('share of the cost'),
  stock: figure,
  leadDays: figure,
})

export const buildUp = z.strictObject({
  option: words.describe('null: the restoration'),
  lines: z.array(buildUpLine),
  known: z.strictObject({
    price: z.number(),
    cost: z.number(),
    profit: z.number(),
    margin: figure,
    markUp: figure,
  }),
  open: z.array(z.string()).describe('lines whose cost or price is not known'),
}) satisfies z.ZodType<BuildUp>

/** What putting the faults right takes. */
export const restoration = orNull(z.strictObject({ consequences: z.array(consequence), cost, gain }))
