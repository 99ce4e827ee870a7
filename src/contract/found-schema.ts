/**
 * What a search found for one option. Groups of a search take further keys: what it tells of its way grows, and whoever reads a
 * document by this schema is not to stumble over it.
 */
import { z } from 'zod'
import { change, figure, orNull, words } from './figures-schema.ts'

export const goal = z.object({
  travelSpeedKmh: figure,
  attachment: orNull(z.object({ flowLpm: z.number(), pressureBar: z.number() })),
  oilBelowC: figure,
})

export const measure = z.enum(['travel-speed', 'attachment-flow', 'oil-temperature'])

export const counts = z.object({
  combinations: z.number(),
  evaluated: z.number(),
  cutByPrice: z.number(),
  cutByReach: z.number(),
  cutByLimit: z.number(),
})

export const moves = z.object({
  path: z.string(),
  label: z.string(),
  tolerance: words,
  reachedLow: figure,
  reachedHigh: figure,
  holds: z.boolean(),
})

/** Another way, as figures. */
const other = z.object({ price: z.number(), reached: figure, changes: z.array(change) })

export const found = z
  .object({
    goal,
    measure,
    reachedToday: figure,
    reached: figure,
    meets: z.boolean(),
    counts,
    isExact: z.boolean(),
    price: figure,
    next: orNull(other),
    unpriced: orNull(other.extend({ items: z.array(z.string()) })),
    wouldTake: z.array(z.string()).describe('where nothing meets the goal: what would have to be true'),
    moves: z.array(moves),
    curve: z.array(other),
  })
  .meta({ id: 'FoundBySearch' })
