/** One option as the result document carries it. */
import { z } from 'zod'
import { evaluation } from './evaluation-schema.ts'
import { change, orNull, words } from './figures-schema.ts'
import { found } from './found-schema.ts'
import { answer, consequence, cost, gain, range } from './quote-schema.ts'

export const option = z
  .strictObject({
    name: z.string(),
    why: words,
    protecting: z.boolean().describe('changes only cooler, filter, oil, breather, reservoir, strainer or suction line'),
    changes: z.array(change),
    consequences: z.array(consequence),
    evaluation: evaluation.describe('of the machine with the changes and the consequences'),
    asAskedOnly: evaluation.describe('of the machine with the changes alone'),
    cost,
    gain,
    range: orNull(range),
    answer,
    sameAs: words.describe('an earlier option that makes the same changes for the same price'),
    found: orNull(found).describe('where the option said what is to be reached'),
  })
  .meta({ id: 'Option' })
