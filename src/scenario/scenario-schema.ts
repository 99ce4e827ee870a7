/** The scenario file: one customer's question about one machine. */
import { z } from 'zod'
import { groundNames } from '../tables/ground.ts'
import {
  date,
  loose,
  maybe,
  money,
  notNegative,
  orElse,
  positive,
  quantity,
  share,
  text,
  within,
  word,
  yesNo,
} from './values.ts'

const GROUND_WORDS = groundNames as unknown as readonly ['paved', 'firm soil', 'grass', 'loose soil', 'sand', 'mud']

/** Air where machines work, and oil that is still oil. */
const air = within('temperature', -60, 60)
const oil = within('temperature', -60, 200)

const site = z.strictObject({
  ambient: air,
  'coldest-start': orElse(air, 'ambient'),
  altitude: orElse(within('length', -500, 6000), '0 m'),
  ground: orElse(word(GROUND_WORDS), 'firm soil'),
  'steepest-grade': orElse(within('grade', 0, 100), '15 %'),
  trip: maybe(positive('length')),
  'trips-per-day': maybe(z.number().min(0).max(10_000)),
  'days-per-year': maybe(z.number().min(0).max(366)),
  'hour-is-worth': maybe(money),
})

const work = z.strictObject({
  share,
  pressure: orElse(positive('pressure'), '40 % of the relief setting'),
  useful: orElse(share, '60 %'),
})

const duty = z.strictObject({
  travel: maybe(share),
  work: maybe(z.union([work, share])),
  relief: maybe(share),
  attachment: maybe(share),
  idle: orElse(share, 'what is left'),
})

const circuitReading = z.strictObject({ circuit: text, pressure: quantity('pressure') })
const pressureReading = z.union([z.array(circuitReading).min(1), quantity('pressure')])

const flow = z.strictObject({
  circuit: maybe(text),
  pressure: quantity('pressure'),
  flow: positive('flow'),
  'engine-speed': orElse(positive('speed'), 'the one that was measured, else rated speed'),
  oil: orElse(oil, '50 °C'),
})

const oilTemperature = z.strictObject({
  reading: oil,
  after: positive('time'),
  ambient: orElse(air, 'that of the site'),
})

const measured = z.strictObject({
  travel: maybe(z.strictObject({ distance: positive('length'), time: positive('time'), oil: orElse(oil, '50 °C') })),
  'engine-speed': maybe(positive('speed')),
  'relief-pressure': maybe(pressureReading),
  flows: maybe(z.array(flow).max(50)),
  'inlet-pressure': maybe(pressureReading),
  'oil-temperature': maybe(oilTemperature),
})

const attachment = z.strictObject({ name: text, flow: positive('flow'), pressure: positive('pressure') })

/** The test after the work: the same course both ways, the same readings as before. */
const after = z.strictObject({
  date: maybe(date),
  option: maybe(text.describe('name of the option that was carried out; left out: restored, or nothing changed')),
  runs: maybe(
    z
      .array(
        z.strictObject({
          direction: word(['forward', 'back'] as const),
          distance: positive('length'),
          time: positive('time'),
        }),
      )
      .max(50)
      .describe('timed runs both ways over the same course'),
  ),
  oil: maybe(oil.describe('during the runs; temperature, such as "50 °C"')),
  'engine-speed': maybe(positive('speed')),
  'relief-pressure': maybe(pressureReading),
  'inlet-pressure': maybe(pressureReading),
  'oil-temperature': maybe(oilTemperature),
})

/** A patch is checked key by key once it is merged; here only that it is a mapping. */
const changes = z.record(z.string(), z.unknown())

const wants = z.strictObject({
  'travel-speed': maybe(positive('travel speed')),
  attachment: maybe(z.strictObject({ flow: positive('flow'), pressure: positive('pressure') })),
  'oil-below': maybe(oil),
})

/** One of `changes` and `reach`, which is checked where the scenario is read. */
const option = z.strictObject({
  name: text,
  why: maybe(text),
  changes: maybe(changes),
  reach: maybe(wants.describe('what is to be reached, in place of changes: the cheapest are searched for')),
})

/** Machines of one fleet. */
export const MOST_UNITS = 200

export const scenarioFile = z.strictObject({
  format: z.literal(1),
  title: text,
  asked: text,
  customer: z.strictObject({ name: text, place: maybe(text) }),
  quote: maybe(z.strictObject({ number: maybe(loose), date: maybe(date) })),
  machine: text.describe('machine file, relative to this file'),
  site,
  duty: orElse(duty, 'travel 20 %, work 50 %, relief 5 %, idle 25 %'),
  measured: maybe(measured),
  after: maybe(after),
  status: maybe(
    z.strictObject({
      warranty: orElse(yesNo, 'no'),
      leased: orElse(yesNo, 'no'),
      'hired-out': orElse(yesNo, 'no'),
      'maker-consent': orElse(yesNo, 'no'),
      'open-defects': maybe(z.array(text).max(50)),
    }),
  ),
  wants: maybe(wants),
  alternatives: maybe(z.array(z.strictObject({ name: text, saves: notNegative('time per day'), cost: money })).max(50)),
  attachment: maybe(attachment),
  options: maybe(z.array(option).max(50)),
  units: maybe(
    z
      .array(z.looseObject({ name: text }))
      .min(1)
      .max(MOST_UNITS)
      .describe('a fleet: each unit is a merge patch over this scenario, with a name of its own'),
  ),
})

export type ScenarioSpec = z.infer<typeof scenarioFile>
