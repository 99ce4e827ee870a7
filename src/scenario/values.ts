/** Values as a file writes them, as zod schemas: quantities, yes and no, dash sizes, connections, words, dates. */
import { z } from 'zod'
import type { Connection, ConnectionFamily } from '../machine.ts'
import { sizesOf } from '../tables/connections.ts'
import { lineSizes } from '../tables/line-sizes.ts'
import { unknownFlange, unknownShaft } from '../tables/mounts.ts'
import type { Dimension } from '../units/dimensions.ts'
import { inShownUnit, shownUnit, unitNames } from '../units/dimensions.ts'
import { parseQuantity, type Quantity } from '../units/quantity.ts'
import { EXAMPLES } from './examples.ts'
import { didYouMean, type Flaw, oneOf } from './problems.ts'

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

/** A quantity that must be above zero. */
export const positive = <D extends Dimension>(dimension: D) =>
  quantity(dimension).transform(
    (value, ctx): Quantity<D> =>
      value.si > 0
        ? value
        : refuse(
            ctx as unknown as Context,
            flaw('number-out-of-range', `"${value.text}" is not above zero`, 'more than zero'),
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
            flaw('number-out-of-range', `"${value.text}" is below zero`, 'zero or more'),
          ),
  )

/** A quantity between two bounds, given in the dimension's shown unit: what no place and no machine has is a slip. */
export const within = <D extends Dimension>(dimension: D, least: number, most: number) =>
  quantity(dimension).transform((value, ctx): Quantity<D> => {
    const shown = inShownUnit(dimension, value.si)
    const expected = `${least} to ${most} ${shownUnit(dimension)}`
    return shown >= least && shown <= most
      ? value
      : refuse(ctx as unknown as Context, flaw('number-out-of-range', `"${value.text}" is out of range`, expected))
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
          flaw('number-out-of-range', `"${value.text}" is no share of a whole`, '0 % to 100 %'),
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

/** A dash size: -8 as a number or "-8". */
export const dash = scalar
  .transform((value, ctx): number => {
    const match = /^-?(\d{1,2})$/u.exec(String(value).trim())
    if (match === null)
      return refuse(
        ctx as unknown as Context,
        flaw('dash-unreadable', `"${value}" is no dash size`, 'a dash size such as -8 (sixteenths of an inch)'),
      )
    const size = Number(match[1])
    if (lineSizes.some((row) => row.dash === size)) return size
    return refuse(
      ctx as unknown as Context,
      flaw('dash-unknown', `there is no hose of size -${size}`, lineSizes.map((row) => `-${row.dash}`).join(', ')),
    )
  })
  .describe('dash size in sixteenths of an inch: -8')

interface Form {
  readonly pattern: RegExp
  readonly family: ConnectionFamily
  readonly write: (size: string) => string
}

const inches = String.raw`(\d+(?:[- ]\d+\/\d+)?|\d+\/\d+)`
const dashed = String.raw`-?(\d{1,2})`

/** How each family is written, and its one normalised spelling. */
const FORMS: readonly Form[] = [
  { pattern: new RegExp(`^(?:G|BSPP)\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'G', write: (s) => `G ${s}` },
  { pattern: new RegExp(`^(?:BSPT|R)\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'BSPT', write: (s) => `BSPT ${s}` },
  { pattern: new RegExp(`^NPTF?\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'NPT', write: (s) => `NPT ${s}` },
  { pattern: new RegExp(`^ORB\\s*${dashed}$`, 'iu'), family: 'ORB', write: (s) => `ORB ${s}` },
  { pattern: new RegExp(`^JIC\\s*${dashed}$`, 'iu'), family: 'JIC', write: (s) => `JIC ${s}` },
  { pattern: new RegExp(`^ORFS\\s*${dashed}$`, 'iu'), family: 'ORFS', write: (s) => `ORFS ${s}` },
  { pattern: /^24\s*°\s*(\d{1,2})\s*L$/iu, family: '24L', write: (s) => `24° ${s}L` },
  { pattern: /^24\s*°\s*(\d{1,2})\s*S$/iu, family: '24S', write: (s) => `24° ${s}S` },
  { pattern: /^M\s*(\d{1,2}\s*[x×]\s*\d(?:\.\d+)?)$/iu, family: 'metric', write: (s) => `M${s}` },
  {
    pattern: new RegExp(`^flange\\s+${inches}(?:\\s*in)?\\s+code\\s*61$`, 'iu'),
    family: 'code 61',
    write: (s) => `flange ${s} code 61`,
  },
  {
    pattern: new RegExp(`^flange\\s+${inches}(?:\\s*in)?\\s+code\\s*62$`, 'iu'),
    family: 'code 62',
    write: (s) => `flange ${s} code 62`,
  },
  { pattern: /^flange\s+(\d{2,3})\s*mm\s+4-bolt$/iu, family: 'flange 4-bolt', write: (s) => `flange ${s} mm 4-bolt` },
]

const FORM_NAMES =
  'G 1/2, BSPT 1/2, ORB -8, JIC -8, ORFS -8, NPT 1/2, 24° 12L, 24° 10S, M22x1.5, flange 3/4 code 61, flange 35 mm 4-bolt'

/** Families whose sizes a standard closes; metric ports and pump flanges come in more sizes than any list has. */
const CLOSED: ReadonlySet<ConnectionFamily> = new Set([
  'G',
  'BSPT',
  'NPT',
  'ORB',
  'JIC',
  'ORFS',
  '24L',
  '24S',
  'code 61',
  'code 62',
])
const DASHED: ReadonlySet<ConnectionFamily> = new Set(['ORB', 'JIC', 'ORFS'])

/** Reads a connection; a string names what is wrong. */
export const readConnection = (written: string): Connection | IssueFlaw => {
  const tidy = written
    .normalize('NFC')
    .replace(/[\u00a0\u202f]/gu, ' ')
    .replace(/[º˚]/gu, '°')
    .replace(/\s+/gu, ' ')
    .trim()
  for (const { pattern, family, write } of FORMS) {
    const match = pattern.exec(tidy)
    if (match === null) continue
    const bare = (match[1] ?? '').replace(/\s*[x×]\s*/u, 'x').replace(/^(\d+) (\d+\/\d+)$/u, '$1-$2')
    const size = DASHED.has(family) ? `-${Number(bare)}` : bare
    const known = sizesOf(family)
    if (CLOSED.has(family) && known.length > 0 && !known.includes(size))
      return flaw('connection-unknown', `there is no ${write(size)}`, known.map(write).join(', '))
    return { family, size, text: write(size) }
  }
  const hint = /^24\s*\d/u.test(tidy) ? 'write the degree sign: 24° 12L' : null
  return flaw('connection-unreadable', `"${written}" is no connection`, `a connection such as ${FORM_NAMES}`, hint)
}

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

/** A date as ISO writes it. */
export const date = z.string().transform((value, ctx): string => {
  const match = /^[12]\d{3}-\d{2}-\d{2}$/u.exec(value)
  const day = match === null ? null : new Date(`${value}T00:00:00Z`)
  if (day !== null && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(value)) return value
  return refuse(
    ctx as unknown as Context,
    flaw('date-unreadable', `"${value}" is no date`, 'a date such as 2026-03-02'),
  )
})

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
