/** The shop's files: letterhead and rates, parts list, labour list. All of them may be split over several files. */
import { z } from 'zod'
import {
  cooler,
  coupling,
  filter,
  fluid,
  hose,
  motor,
  mount,
  pump,
  relief,
  reservoir,
  sprocket,
  strainer,
  swivel,
  valve,
} from './machine-schema.ts'
import {
  connection,
  count,
  dash,
  loose,
  maybe,
  money,
  notNegative,
  orElse,
  positive,
  refuse,
  share,
  text,
  within,
  word,
} from './values.ts'

export const PART_KINDS = [
  'pump',
  'tandem pump',
  'motor',
  'swivel',
  'valve',
  'relief',
  'coupling',
  'cooler',
  'filter',
  'strainer',
  'reservoir',
  'sprocket',
  'hose',
  'fitting',
  'adapter',
  'oil',
  'alternator',
  'lamp set',
  'thermostat',
  'harness',
  'breather',
  'oil cooler bypass',
  'kit',
] as const

/** Low, likely and high of hours or money, in that order. */
const spread = z
  .strictObject({ low: z.number().min(0), likely: z.number().min(0), high: z.number().min(0) })
  .transform((value, ctx) =>
    value.low <= value.likely && value.likely <= value.high
      ? value
      : refuse(ctx as never, {
          code: 'steps-out-of-order',
          message: `low ${value.low}, likely ${value.likely}, high ${value.high} are not in order`,
          expected: 'low not above likely, likely not above high',
          remedy: null,
        }),
  )
const job = z.strictObject({ job: text, hours: spread })

/** "6 days", or a bare number of days; at most 1,000, so that a date so many days later is still one. */
const lead = z
  .union([
    notNegative('time').transform((value, ctx) =>
      value.si <= 1000 * 86_400
        ? value
        : refuse(ctx as never, {
            code: 'number-out-of-range',
            message: `"${value.text}" is out of range`,
            expected: 'at most 1000 days',
            remedy: null,
          }),
    ),
    z.number().min(0).max(1000),
  ])
  .describe('a time such as "6 days", or a plain number of days')

const hosePart = hose.omit({ length: true, elbows: true, ends: true, part: true })
const fitting = z.strictObject({
  hose: dash,
  end: connection,
  'max-pressure': maybe(positive('pressure')),
  bore: maybe(positive('length')),
})

/** A side of an adapter: a connection, or (of a plate or hub) a flange or shaft in the trade's form. */
const side = loose
const adapter = z.strictObject({
  from: side,
  to: side,
  'max-pressure': maybe(positive('pressure')),
  bore: maybe(positive('length')),
})

const current = z.strictObject({ current: maybe(notNegative('current')) })
const section = pump.omit({ mount: true, part: true, section: true, 'max-shaft-torque': true })
const tandem = z.strictObject({
  sections: z.array(section).min(2).max(4),
  mount: maybe(mount),
  'max-shaft-torque': maybe(positive('torque')),
})

/** Figures of each kind: as in the machine, less what only the machine knows. */
export const PART_FIGURES: { readonly [kind in (typeof PART_KINDS)[number]]: z.ZodType } = {
  pump: pump.omit({ part: true, section: true }),
  'tandem pump': tandem,
  motor: motor.omit({ part: true }),
  swivel: swivel.omit({ part: true }),
  valve: valve.omit({ part: true }),
  relief: relief.omit({ part: true }).extend({ setting: maybe(positive('pressure')) }),
  coupling: coupling.omit({ part: true }).extend({ shaft: maybe(text), bore: maybe(text) }),
  cooler: cooler.omit({ part: true }),
  filter: filter.omit({ part: true }),
  strainer: strainer.omit({ part: true }),
  reservoir: reservoir.omit({ part: true }),
  sprocket: sprocket.omit({ part: true }),
  hose: hosePart,
  fitting,
  adapter,
  oil: fluid.omit({ part: true }),
  alternator: current,
  'lamp set': current,
  thermostat: z.looseObject({}),
  harness: z.looseObject({}),
  breather: z.strictObject({ fineness: maybe(positive('length')), 'rated-flow': maybe(positive('flow')) }),
  'oil cooler bypass': z.looseObject({}),
  kit: z.strictObject({}),
}

export const partEntry = z.strictObject({
  id: text,
  kind: word(PART_KINDS),
  name: text,
  figures: maybe(z.record(z.string(), z.unknown())),
  cost: maybe(money),
  price: maybe(money),
  'lead-time': maybe(lead),
  stock: maybe(count),
  labour: maybe(z.array(job).max(20)),
  holds: maybe(z.array(z.strictObject({ part: text, quantity: orElse(z.number().positive(), '1') })).max(100)),
  'core-deposit': maybe(money),
  labels: maybe(z.array(text)),
})

const specialOrder = z.strictObject({ kind: word(PART_KINDS), allow: spread, 'lead-time': maybe(lead) })

const rates = {
  units: orElse(word(['metric', 'us', 'both'] as const), 'metric'),
  currency: orElse(text, 'USD'),
  'labour-rate': orElse(money, '0'),
  'mark-up': maybe(notNegative('share')),
  margin: maybe(within('share', 0, 95)),
  tax: orElse(share, '0 %'),
  supplies: maybe(z.strictObject({ 'share-of-labour': share, 'at-most': maybe(money) })),
  freight: orElse(money, '0'),
  contingency: orElse(share, '0 %'),
  disposal: orElse(money, '0'),
  'quote-valid': orElse(lead, '30 days'),
  terms: maybe(z.array(text).max(50)),
  limits: maybe(
    z.strictObject({
      'share-of-value': orElse(share, '40 %'),
      payback: orElse(z.number().positive().describe('years'), '2'),
      'least-gain': orElse(share, '10 %'),
    }),
  ),
}

/** Any file of the shop's folder may hold any of these. */
export const shopFile = z.strictObject({
  format: z.literal(1),
  shop: maybe(
    z.strictObject({
      name: text,
      address: maybe(z.union([z.array(loose), loose])),
      phone: maybe(loose),
      email: maybe(text),
      mark: maybe(text),
      accent: maybe(
        z
          .string()
          .regex(/^#[0-9a-fA-F]{6}$/u)
          .describe('a colour such as "#0b5d4e", in quotes'),
      ),
    }),
  ),
  ...rates,
  parts: maybe(z.array(partEntry).max(5000)),
  'special-order': maybe(z.array(specialOrder).max(200)),
  labour: maybe(z.array(job).max(500)),
})

export type ShopSpec = z.infer<typeof shopFile>
export type PartSpec = z.infer<typeof partEntry>
