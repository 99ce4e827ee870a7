/** Pieces that the schemas of the documents share. Keys carry their unit at the end; numbers are finite, unrounded. */
import { z } from 'zod'

export const orNull = <T extends z.ZodType>(schema: T) => schema.nullable()

/** A number that may not have been worked out. */
export const figure = z.number().nullable()

/** A text that may not be there. */
export const words = z.string().nullable()

export const reasonCodes = [
  'engine-power',
  'no-part',
  'oil-too-hot',
  'braking-or-slope',
  'pull-lost',
  'governor',
  'within-error',
  'not-worth-it',
  'fault-first',
  'speed-class',
  'maker-consent',
  'warranty-lease-hire',
  'open-defects',
  'data-missing',
] as const

export const change = z.strictObject({ component: z.string(), from: z.string(), to: z.string() })
