/**
 * The result document as a schema: what `feasibility check --json` prints of one question. The types, with what each key is, are in
 * evaluation.ts; a test holds the two together, both ways.
 */
import { z } from 'zod'
import { evaluation } from './evaluation-schema.ts'
import { figure, orNull, reasonCodes, words } from './figures-schema.ts'
import { option } from './option-schema.ts'
import { buildUp, range, restoration } from './quote-schema.ts'
import { diagram, sheet } from './sheet-schema.ts'
import { acceptance, workOrder } from './work-order-schema.ts'

const assumption = z.strictObject({
  path: z.string().describe('in the machine file or the scenario'),
  value: z.union([z.number(), z.string()]),
  unit: z.string(),
  from: z.enum(['assumed', 'default']),
  tolerance: words,
})

const reading = z.strictObject({
  path: z.string().describe('where it is written down'),
  label: z.string(),
  how: z.string(),
  effectOnSpeedPercent: figure,
  effectOnOilK: z.number(),
})

const calibration = z.strictObject({
  pumpSlipFactor: z.number().describe('1 healthy, above 1 worn'),
  impliedVolumetricEfficiency: z.number(),
  speedFactor: z.number(),
  coolingFactor: z.number(),
  measuredSpeedKmh: figure,
  predictedSpeedKmh: figure,
  notes: z.array(z.string()),
})

const askedAbout = z.strictObject({
  path: z.string(),
  option: words.describe('that makes it so; null: it stands in the files'),
  written: z.string(),
  usual: z.string(),
  text: z.string(),
  source: z.string(),
})

const recommendation = z.strictObject({
  kind: z.enum(['restore', 'protect', 'upgrade', 'upgrade-on-conditions', 'decline', 'measure-first']),
  option: words.describe('name of the option'),
  provisional: z.boolean().describe('it rests on figures that nobody has measured'),
  reasons: z.array(
    z.strictObject({
      code: z.enum([...reasonCodes, 'readings-disagree', 'fault', 'oil-hot', 'best-option', 'nothing-better']),
      text: z.string(),
    }),
  ),
  offerInstead: words,
  faults: z.array(z.strictObject({ component: z.string(), text: z.string() })),
})

export const resultDocument = z.strictObject({
  format: z.literal(1),
  tool: z.strictObject({ name: z.string(), version: z.string() }),
  scenario: z.strictObject({
    title: z.string(),
    file: z.string(),
    machine: z.string(),
    customer: z.string(),
    asked: z.string(),
  }),
  assumptions: z.array(assumption).describe('what was filled in, and what is marked as assumed'),
  restsOn: z.array(z.string()).describe('paths of the assumptions that the answer rests on'),
  readings: z.array(reading).describe('what to read next, that which matters most first'),
  calibration,
  askedAbout: z.array(askedAbout).describe('figures that hardly any small machine has'),
  baseline: evaluation.describe('as it stands, calibrated'),
  baselineRange: orNull(range),
  restored: orNull(evaluation).describe('with its faults put right; null: it has none'),
  restoration,
  options: z.array(option),
  recommendation,
  acceptance: orNull(acceptance).describe('of the test after the work'),
  diagram,
  workOrders: z.array(workOrder).describe('the restoration where there is a fault, then every option'),
  pricing: z.strictObject({ markUp: figure, margin: figure, buildUps: z.array(buildUp) }).describe("shop's copy only"),
  sheet: sheet.describe('what is printed and not worked out'),
})
