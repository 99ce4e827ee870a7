/** Values as a file writes them, as zod schemas: quantities, yes and no, dash sizes, connections, words, dates. */
import { z } from 'zod'
import type { Connection } from '../machine.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { unknownFlange, unknownShaft } from '../tables/mounts.ts'
import type { Dimension } from '../units/dimensions.ts'
import { inShownUnit, shownUnit, unitNames } from '../units/dimensions.ts'
import { parseQuantity, type Quantity } from '../units/quantity.ts'
import { EXAMPLES } from './examples.ts'
import { didYouMean, type Flaw, oneOf } from './problems.ts'
import { FORM_NAMES, readConnection } from './read-connection.ts'

/** What a custom issue carries to problems: everything but the path. */
export type IssueFlaw = Pick<Flaw, 'code' | 'message' | 'expected' | 'remedy'>

type Context = { addIssue: (issue: { code: 'custom'; message: string; params: { flaw: IssueFlaw } }) => void }

export const refuse = (ctx: Context, flaw: IssueFlaw): typeof z.NEVER => {
  ctx.addIssue({ code: 'custom', message: flaw.message, params: { flaw } })
  return z.NEVER
}

const flaw = (
  code: Flaw['code'],
  message: string,
  expected: string | null = null,
  remedy: string | null = null,
): IssueFlaw => ({
  code,
  message,
  expected,
  remedy,
})

const scalar = z.union([z.string(), z.number()])

/** A quantity of a dimension: "24.5 L/min", "250 cm3/rev ± 3 %", "6 mm (assumed)". */
export const quantity = <D extends Dimension>(dimension: D) =>
  scalar
    .transform((text, ctx): Quantity<D> => {
      const read = parseQuantity(text, dimension)
      return read.ok ? read.quantity : refuse(ctx as unknown as Context, read.problem)
    })
    .describe(`${dimension}, such as "${EXAMPLES[dimension]}"; units: ${unitNames(dimension).join(', ')}`)

/** A figure without a sign before it, where that is what is too much of it. */
const withoutSign = ({ si, text }: Quantity): string | null => {
  const bare = /^\s*[-\u2212\u2010\u2011]\s*(.*)$/u.exec(text)?.[1]
  return si < 0 && bare !== undefined ? `write ${bare} if that is what you mean` : null
}

/** A quantity that must be above zero. */
export const positive = <D extends Dimension>(dimension: D) =>
  quantity(dimension).transform(
    (value, ctx): Quantity<D> =>
      value.si > 0
        ? value
        : refuse(
            ctx as unknown as Context,
            flaw('number-out-of-range', `"${value.text}" is not above zero`, 'more than zero', withoutSign(value)),
          ),
  )

/** A quantity that may be zero, never below. */
export const notNegative = <D extends Dimension>(dimension: D) =>
  quantity(dimension).transform(
    (value, ctx): Quantity<D> =>
      value.si >= 0
        ? value
        : refuse(
            ctx as unknown as Context,
            flaw('number-out-of-range', `"${value.text}" is below zero`, 'zero or more', withoutSign(value)),
          ),
  )

/** The same number in another unit of its dimension, where that lies between two bounds: the largest that does. */
const inOtherUnit = (dimension: Dimension, { text }: Quantity, fits: (si: number) => boolean): string | null => {
  const number = /^[-+]?\d+(?:\.\d+)?/u.exec(text.trim())?.[0]
  const meant = unitNames(dimension).flatMap((unit) => {
    const written = `${number} ${unit}`
    const read = parseQuantity(written, dimension)
    return read.ok && fits(read.quantity.si) ? [{ written, size: Math.abs(read.quantity.si) }] : []
  })
  const [nearest] = meant.sort((one, other) => other.size - one.size)
  return number === undefined || nearest === undefined ? null : `did you mean ${nearest.written}?`
}

/** A quantity between two bounds, given in the dimension's shown unit: what no place and no machine has is a slip. */
export const within = <D extends Dimension>(dimension: D, least: number, most: number) =>
  quantity(dimension).transform((value, ctx): Quantity<D> => {
    const fits = (si: number): boolean => {
      const shown = inShownUnit(dimension, si)
      return shown >= least && shown <= most
    }
    if (fits(value.si)) return value
    const expected = `${least} to ${most} ${shownUnit(dimension)}`
    const meant = inOtherUnit(dimension, value, fits) ?? withoutSign(value)
    return refuse(
      ctx as unknown as Context,
      flaw('number-out-of-range', `"${value.text}" is out of range`, expected, meant),
    )
  })

/** A share of something that cannot pass the whole. */
export const efficiency = quantity('share').transform(
  (value, ctx): Quantity<'share'> =>
    value.si > 0 && value.si <= 1
      ? value
      : refuse(
          ctx as unknown as Context,
          flaw('efficiency-out-of-range', `an efficiency of ${value.text} cannot be`, 'above 0 % and up to 100 %'),
        ),
)

export const share = quantity('share').transform(
  (value, ctx): Quantity<'share'> =>
    value.si >= 0 && value.si <= 1
      ? value
      : refuse(
          ctx as unknown as Context,
          flaw('number-out-of-range', `"${value.text}" is no share of a whole`, '0 % to 100 %', withoutSign(value)),
        ),
)

export const text = z.string().trim().min(1).max(500)
/** Text that people also write as a bare number: a quote number, a phone. */
export const loose = z.union([z.string(), z.number()]).transform((value) => String(value))
export const money = z.number().min(0).max(1e9)
export const count = z.number().int().min(0).max(10_000)

/** yes, no, true, false, quoted or not. */
export const yesNo = z
  .union([z.boolean(), z.enum(['yes', 'no', 'true', 'false', 'Yes', 'No'])])
  .transform((value) => value === true || value === 'yes' || value === 'true' || value === 'Yes')
  .describe('yes or no')

/** Whole numbers and decimals without a unit, above zero. */
export const ratio = z.number().positive().max(1000)

/** A bore in inches as a dash size: 1/2 in is -8. */
const dashMeant = (text: string): string | null => {
  const read = parseQuantity(
    /["\u2033]\s*$|in/u.test(text) ? text.replace(/["\u2033]\s*$/u, ' in') : `${text} in`,
    'length',
  )
  const size = read.ok ? Math.round((read.quantity.si / 0.0254) * 16 * 1e6) / 1e6 : Number.NaN
  return lineSizes.some((row) => row.dash === size) ? `did you mean -${size}?` : null
}

/** A dash size: -8 as a number or "-8". */
export const dash = scalar
  .transform((value, ctx): number => {
    const match = /^-?(\d{1,2})$/u.exec(String(value).trim())
    if (match === null)
      return refuse(
        ctx as unknown as Context,
        flaw(
          'dash-unreadable',
          `"${value}" is no dash size`,
          'a dash size such as -8 (sixteenths of an inch)',
          dashMeant(String(value)),
        ),
      )
    const size = Number(match[1])
    if (lineSizes.some((row) => row.dash === size)) return size
    return refuse(
      ctx as unknown as Context,
      flaw('dash-unknown', `there is no hose of size -${size}`, lineSizes.map((row) => `-${row.dash}`).join(', ')),
    )
  })
  .describe('dash size in sixteenths of an inch: -8')

export const connection = scalar
  .transform((written, ctx): Connection => {
    const read = readConnection(String(written))
    return 'code' in read ? refuse(ctx as unknown as Context, read) : read
  })
  .describe(`connection, such as ${FORM_NAMES}`)

/** A mount in the trade's form; one that a standard would have to know, and does not, is refused. */
const mountText = (unknown: (text: string) => readonly string[] | null) =>
  text.transform((value, ctx): string => {
    const tidy = value.replace(/\s+/gu, ' ')
    const known = unknown(tidy)
    return known === null
      ? tidy
      : refuse(
          ctx as unknown as Context,
          flaw('mount-unknown', `no standard has "${tidy}"`, known.join(', '), didYouMean(tidy, known)),
        )
  })
export const flangeText = mountText(unknownFlange).describe('flange, such as SAE A 2-bolt')
export const shaftText = mountText(unknownShaft).describe('shaft end, such as 9T 16/32 DP')

/** A name that becomes part of a component's id: letters, digits and hyphens, a letter first. */
export const NAME = /^[A-Za-z][A-Za-z0-9-]{0,39}$/u

/** One word of a closed list. */
export const word = <const W extends readonly string[]>(words: W) =>
  z
    .string()
    .transform((value, ctx): W[number] =>
      words.includes(value)
        ? value
        : refuse(
            ctx as unknown as Context,
            flaw('word-unknown', `"${value}" is not known here`, oneOf(words), didYouMean(value, words)),
          ),
    )
    .meta({ description: words.join(' | '), enum: [...words] })

const DATE = 'a date such as 2026-03-02'

const isDay = (text: string): boolean => {
  const day = /^[12]\d{3}-\d{2}-\d{2}$/u.test(text) ? new Date(`${text}T00:00:00Z`) : null
  return day !== null && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text)
}

/** The days that a date in another form may mean: 2.3.2026 is one, 2/3/2026 may be two. */
const daysMeant = (text: string): readonly string[] => {
  const day = (year = '', month = '', date = '') => `${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`
  const [first, second, third] = text.trim().split(/[-./\s]+/u)
  const days =
    first?.length === 4
      ? [day(first, second, third)]
      : [day(third, second, first), ...(text.includes('.') ? [] : [day(third, first, second)])]
  return [...new Set(days.filter(isDay))]
}

/** A date as ISO writes it. */
export const date = z
  .string()
  .transform((value, ctx): string => {
    if (isDay(value)) return value
    const days = daysMeant(value)
    const meant = days.length === 0 ? null : `write ${days.join(' or ')}`
    return refuse(ctx as unknown as Context, flaw('date-unreadable', `"${value}" is no date`, DATE, meant))
  })
  .describe(DATE)

/** Absent and null are one: not there. */
export const maybe = <T extends z.ZodType>(schema: T) => schema.nullish()

/** What a schema says of itself, or the one it is made from. */
const described = (schema: z.ZodType): string => {
  let inner: unknown = schema
  while (inner !== undefined && inner !== null) {
    const { description, def } = inner as { description?: string; def?: { innerType?: unknown; in?: unknown } }
    if (typeof description === 'string') return description
    inner = def?.innerType ?? def?.in
  }
  return ''
}

/**
 * May be left out; its description tells editors what is taken then.
 * @param fallback as a file would write it: "8 %"
 */
export const orElse = <T extends z.ZodType>(schema: T, fallback: string) => {
  const told = described(schema)
  return maybe(schema.describe(`${told === '' ? '' : `${told}; `}default: ${fallback}`) as T)
}
