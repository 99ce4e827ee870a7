/** One machine worked out, as the result document carries it: the schema of `Evaluation` in evaluation.ts. */
import { z } from 'zod'
import type { Evaluation } from '../evaluation.ts'
import { figure, orNull } from './figures-schema.ts'

const point = z
  .strictObject({
    speedKmh: z.number(),
    displacementCm3: z.number(),
    engineSpeedRpm: z.number(),
    engineLoad: z.number().describe('share of what the engine has at that speed'),
    shaftPowerKw: z.number(),
    pumpFlowLpm: z.number(),
    pumpPressureBar: z.number(),
    reliefFlowLpm: z.number(),
    motorFlowLpm: z.number(),
    motorSpeedRpm: z.number(),
    motorDifferentialBar: z.number(),
    motorReturnBar: z.number(),
    tractiveForceN: z.number(),
    neededForceN: z.number(),
    stalled: z.boolean(),
    limitedBy: z.enum(['relief', 'engine', 'adhesion', 'suction']).nullable(),
  })
  .meta({
    id: 'Point',
    description:
      'One way of travelling. With two driving circuits the flows are those of one circuit and one motor, pressures the higher, power and load all pumps',
  })

const travel = z.strictObject({
  level: point,
  levelSlow: orNull(point),
  levelHot: orNull(point),
  levelCold: point,
  grade: point,
  turn: orNull(point),
  oneTrack: orNull(point),
})

const circuit = z.strictObject({
  pumpFlowLpm: z.number(),
  theoreticalFlowLpm: z.number(),
  inletPressureBarAbs: z.number(),
  neutralPressureBar: z.number().describe('every circuit in neutral, 50 °C'),
  reliefSettingBar: z.number(),
  shaftTorqueNm: z.number().describe('at the relief setting and rated speed, 50 °C'),
})

const line = z.strictObject({
  id: z.string(),
  velocityMps: z.number(),
  limitMps: z.number(),
  reynolds: z.number(),
  dropBar: z.number(),
  boreMm: z.number(),
  flowLpm: z.number(),
  workingPressureBar: figure,
})

const heat = z.strictObject({
  averageInputKw: z.number(),
  averageUsefulKw: z.number(),
  averageHeatKw: z.number(),
  steadyOilC: figure.describe('null: the oil does not settle'),
  steadyViscosityCst: figure,
  minutesTo: z.strictObject({ '70': figure, '82': figure }).describe('until the oil has so many °C; null: never'),
  risk: z.enum(['low', 'moderate', 'high', 'severe']),
  curve: z.array(z.tuple([z.number(), z.number()])).describe('[minutes, oil in °C]'),
  byMode: z.array(
    z.strictObject({
      mode: z.enum(['travel', 'work', 'relief', 'attachment', 'idle']),
      share: z.number(),
      inputKw: z.number(),
      usefulKw: z.number(),
      heatKw: z.number(),
    }),
  ),
})

const judged = z.union([z.number(), z.string()]).nullable()

export const finding = z
  .strictObject({
    id: z.string().describe('check and component'),
    component: z.string(),
    check: z.string(),
    value: judged,
    limit: judged,
    unit: z.string(),
    severity: z.enum(['ok', 'watch', 'change', 'stop']),
    existing: z.boolean().describe('it was so before the change'),
    because: z.string().describe('for the customer'),
    source: z.string().describe('where the limit comes from'),
    heading: z.string(),
  })
  .meta({ id: 'Finding' })

export const evaluation = z
  .strictObject({
    oilC: z.number().describe('reference oil temperature of the travel points'),
    travel,
    circuits: z.record(z.string(), circuit).describe('at the level point, by name'),
    lines: z.array(line).describe('one hose, one way, at the level point'),
    drops: z.array(z.strictObject({ id: z.string(), flowLpm: z.number(), dropBar: z.number() })),
    heat,
    findings: z.array(finding),
  })
  .meta({ id: 'Evaluation' }) satisfies z.ZodType<Evaluation>
