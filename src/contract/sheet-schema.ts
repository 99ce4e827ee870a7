/** What the result document takes from the files: letterhead, site, readings; and the circuit for drawing. */
import { z } from 'zod'
import type { Diagram } from '../diagram.ts'
import type { Sheet } from '../evaluation.ts'
import { figure, orNull, words } from './figures-schema.ts'

export const sheet = z.strictObject({
  shop: z.strictObject({
    name: z.string(),
    address: z.array(z.string()),
    phone: words,
    email: words,
    mark: words,
    accent: words,
    units: z.enum(['metric', 'us', 'both']),
    currency: z.string(),
    terms: z.array(z.string()),
    quoteValidDays: z.number(),
  }),
  customer: z.strictObject({ name: z.string(), place: words }),
  quote: z.strictObject({ number: words, date: words, validUntil: words }),
  machine: z.strictObject({ name: z.string(), type: z.string(), massKg: z.number(), designSpeedKmh: figure }),
  site: z.strictObject({
    ambientC: z.number(),
    coldestStartC: z.number(),
    altitudeM: z.number(),
    ground: z.string(),
    steepestGradePercent: z.number(),
    tripM: figure,
    tripsPerDay: figure,
    daysPerYear: figure,
    hourIsWorth: figure,
  }),
  wants: z.strictObject({
    speedKmh: figure,
    oilBelowC: figure,
    attachmentFlowLpm: figure,
    attachmentPressureBar: figure,
  }),
  alternatives: z.array(z.strictObject({ name: z.string(), minutesPerDay: z.number(), cost: z.number() })),
  rows: z.array(
    z.strictObject({
      label: z.string(),
      value: z.union([z.number(), z.string()]),
      unit: z.string().describe('"km/h", "bar" …; empty for words'),
      from: z.enum(['measured', 'plate', 'manual', 'assumed', 'stated', 'default']),
      tolerance: words,
    }),
  ),
}) satisfies z.ZodType<Sheet>

const part = z.strictObject({ id: z.string() })
const line = z.strictObject({ id: z.string(), dash: figure, boreMm: z.number() }).meta({ id: 'DiagramLine' })

const circuit = z.strictObject({
  name: z.string(),
  pump: z.strictObject({ id: z.string(), displacementCm3: z.number() }),
  coupling: orNull(part),
  relief: z.strictObject({ id: z.string(), settingBar: z.number() }),
  valve: orNull(z.strictObject({ id: z.string(), ratedFlowLpm: figure })),
  suction: orNull(line),
  suctionSharedWith: words,
  pressure: orNull(line),
  return: orNull(line),
  drives: z.enum(['both tracks', 'left track', 'right track', 'no track']),
  works: z.array(z.enum(['implements', 'attachment'])),
  auxiliary: orNull(
    z.strictObject({
      out: orNull(line),
      back: orNull(line),
      coupler: orNull(z.strictObject({ id: z.string(), flowLpm: z.number() })),
    }),
  ),
})

export const diagram = z.strictObject({
  engine: part,
  circuits: z.array(circuit),
  travel: z.strictObject({
    running: z.enum(['tracks', 'wheels']),
    motors: z.number(),
    motor: z.strictObject({ id: z.string(), displacementCm3: z.number(), secondDisplacementCm3: figure }),
    block: orNull(part),
    swivel: orNull(part),
    lines: z.array(line),
  }),
  filter: orNull(z.strictObject({ id: z.string(), ratedFlowLpm: figure })),
  cooler: orNull(z.strictObject({ id: z.string(), capacityWK: z.number() })),
  strainer: orNull(part),
  reservoir: z.strictObject({ id: z.string(), volumeL: z.number() }),
}) satisfies z.ZodType<Diagram>
