/** The search as a schema: what `feasibility reach --json` prints of one question. The types are in search.ts. */
import { z } from 'zod'
import type { Json } from '../question.ts'
import { finding } from './evaluation-schema.ts'
import { figure, orNull } from './figures-schema.ts'
import { counts, gives, goal, measure, moves } from './found-schema.ts'
import { option } from './option-schema.ts'
import { cost } from './quote-schema.ts'

const json: z.ZodType<Json> = z.json()

const way = z
  .strictObject({
    changes: z.record(z.string(), json).describe('a merge patch over the machine file; empty: as it is'),
    option,
    reached: figure.describe('km/h on the level, L/min at the wanted pressure, or °C settled'),
    gives,
    reaches: z.boolean().describe('all that is wanted, limits aside'),
    meets: z.boolean().describe('all that is wanted, within every limit'),
    specialOrder: z.boolean(),
  })
  .meta({ id: 'FoundWay' })

export const search = z.strictObject({
  format: z.literal(1),
  goal,
  measure,
  reachedToday: figure,
  today: gives,
  disagreements: z.array(z.string()).describe('readings that do not agree: whatever is found stands on one of them'),
  faults: z.array(z.string()).describe('put right first: what is found holds for the machine after that'),
  cheapest: orNull(way).describe('null: nothing meets the goal'),
  cheapestInStock: orNull(way),
  cheapestUnpriced: orNull(way).describe('seems a tenth cheaper still, but something of it has no price'),
  withinBudget: orNull(z.strictObject({ budget: z.number(), way: orNull(way) })),
  curve: z.array(way),
  nearest: orNull(way).describe('where nothing meets the goal'),
  nearestIsExact: z.boolean(),
  stops: z.array(finding),
  pastLimits: orNull(way).describe('where nothing meets the goal: a way that reaches it past the limits'),
  wouldTake: z.array(z.string()),
  moves: z.array(moves),
  counts,
  evaluatedBesides: z.number().describe('for the nearest, the curve up to it and what stands in the way'),
  isExact: z.boolean().describe('false: given up, there may be something better'),
  byHand: z.array(
    z.strictObject({ name: z.string(), cost, reached: figure, gives, reaches: z.boolean(), meets: z.boolean() }),
  ),
})
