/** What a search found for one option, and the groups that `reach --json` shares with it. */
import { z } from 'zod'
import { change, figure, orNull, words } from './figures-schema.ts'

export const goal = z.strictObject({
  travelSpeedKmh: figure,
  attachment: orNull(z.strictObject({ flowLpm: z.number(), pressureBar: z.number() })),
  oilBelowC: figure,
})

export const measure = z.enum(['travel-speed', 'attachment-flow', 'oil-temperature'])

export const counts = z.strictObject({
  combinations: z.number(),
  evaluated: z.number(),
  cutByPrice: z.number(),
  cutByReach: z.number(),
  cutByLimit: z.number(),
})

export const moves = z.strictObject({
  path: z.string(),
  label: z.string(),
  tolerance: words,
  reachedLow: figure,
  reachedHigh: figure,
  holds: z.boolean(),
})

/** What a way gives of all that may be wanted. */
export const gives = z.strictObject({ speedKmh: z.number(), attachmentLpm: figure, oilC: figure })

/** Another way, as figures. */
const told = z.strictObject({
  reached: figure,
  gives,
  reaches: z.boolean().describe('all that is wanted, limits aside'),
  meets: z.boolean().describe('all that is wanted, within every limit'),
  price: z.number(),
  changes: z.array(change),
})

export const found = z
  .strictObject({
    goal,
    measure,
    reachedToday: figure,
    reached: figure,
    gives,
    meets: z.boolean(),
    counts,
    isExact: z.boolean(),
    price: figure,
    next: orNull(told),
    cheaper: orNull(told.extend({ misses: z.array(measure) })).describe(
      'of several wishes: the nearest that costs less, and which of them it misses',
    ),
    unpriced: orNull(told.extend({ items: z.array(z.string()) })),
    nearestIsExact: z.boolean(),
    pastLimits: orNull(told).describe('where nothing meets the goal: a way that reaches it past the limits'),
    wouldTake: z.array(z.string()).describe('what would have to be true for that way, all of it'),
    moves: z.array(moves),
    curve: z.array(told),
  })
  .meta({ id: 'FoundBySearch' })
