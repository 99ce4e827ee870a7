/**
 * The search as a schema: what `feasibility reach --json` prints of one question. The types are in search.ts. Its groups take
 * further keys, as found-schema.ts says.
 */
import { z } from 'zod'
import { finding } from './evaluation-schema.ts'
import { figure, orNull } from './figures-schema.ts'
import { counts, goal, measure, moves } from './found-schema.ts'
import { option } from './option-schema.ts'
import { cost } from './quote-schema.ts'

const way = z
  .object({
    changes: z.record(z.string(), z.unknown()).describe('a merge patch over the machine file; empty: as it is'),
    option,
    reached: figure.describe('km/h on the level, L/min at the wanted pressure, or °C settled'),
    meets: z.boolean(),
    specialOrder: z.boolean(),
  })
  .meta({ id: 'FoundWay' })

export const search = z.object({
  format: z.literal(1),
  goal,
  measure,
  reachedToday: figure,
  cheapest: orNull(way).describe('null: nothing meets the goal'),
  cheapestInStock: orNull(way),
  cheapestUnpriced: orNull(way).describe('seems a tenth cheaper still, but something of it has no price'),
  withinBudget: orNull(z.object({ budget: z.number(), way: orNull(way) })),
  curve: z.array(way),
  nearest: orNull(way).describe('where nothing meets the goal'),
  stops: z.array(finding),
  wouldTake: z.array(z.string()),
  moves: z.array(moves),
  counts,
  isExact: z.boolean().describe('false: given up, there may be something better'),
  byHand: z.array(z.object({ name: z.string(), cost, reached: figure, meets: z.boolean() })),
})
