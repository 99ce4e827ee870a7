/** The keys of the result document that are promised (specification of the results); more may be there. */

/** A shape: `true` any value; an array of one shape for each element; `null` beside a shape: the value may be null. */
export type Shape = true | readonly [Shape] | { readonly [key: string]: Shape } | Nullable | Each

export interface Nullable {
  readonly orNull: Shape
}

/** A mapping with names of its own: each of its values has the shape. */
export interface Each {
  readonly each: Shape
}

const keys = (names: string): { readonly [key: string]: true } =>
  Object.fromEntries(names.split(/\s+/u).map((name) => [name, true]))

const point: Shape = keys(
  `speedKmh displacementCm3 engineSpeedRpm engineLoad shaftPowerKw pumpFlowLpm pumpPressureBar reliefFlowLpm motorFlowLpm
  motorSpeedRpm motorDifferentialBar motorReturnBar tractiveForceN neededForceN stalled limitedBy`,
)

const evaluation: Shape = {
  oilC: true,
  travel: {
    level: point,
    levelSlow: { orNull: point },
    levelHot: { orNull: point },
    levelCold: point,
    grade: point,
    turn: { orNull: point },
    oneTrack: { orNull: point },
  },
  circuits: {
    each: keys('pumpFlowLpm theoreticalFlowLpm inletPressureBarAbs neutralPressureBar reliefSettingBar shaftTorqueNm'),
  },
  lines: [keys('id velocityMps limitMps reynolds dropBar boreMm flowLpm workingPressureBar')],
  drops: [keys('id flowLpm dropBar')],
  heat: {
    ...keys('averageInputKw averageUsefulKw averageHeatKw steadyOilC steadyViscosityCst risk'),
    minutesTo: keys('70 82'),
    curve: [true],
    byMode: [keys('mode share inputKw usefulKw heatKw')],
  },
  findings: [keys('id component check value limit unit severity existing because source')],
}

const reasons: Shape = [keys('code text')]
const percentiles: Shape = keys('p10 p50 p90')

const option: Shape = {
  name: true,
  why: true,
  changes: [keys('component from to')],
  consequences: [
    {
      ...keys('component kind action part quantity because available'),
      connections: [keys('from to adapter')],
    },
  ],
  evaluation,
  asAskedOnly: evaluation,
  cost: {
    ...keys('currency low likely high parts labourTotal supplies freight contingency tax'),
    lines: [keys('what part quantity unitPrice amount leadDays stock')],
    labour: [keys('job hoursLow hoursLikely hoursHigh rate')],
  },
  gain: keys('speedKmh speedRatio minutesPerTrip hoursPerYear steadyOilC costPerKmh paybackYears'),
  range: { speedKmh: percentiles, steadyOilC: percentiles },
  answer: { answer: true, reasons, conditions: [true] },
}

export const resultShape: Shape = {
  format: true,
  tool: keys('name version'),
  scenario: keys('title file machine customer asked'),
  assumptions: [keys('path value unit from tolerance')],
  calibration: keys(
    'pumpSlipFactor impliedVolumetricEfficiency speedFactor coolingFactor measuredSpeedKmh predictedSpeedKmh notes',
  ),
  baseline: evaluation,
  restored: { orNull: evaluation },
  options: [option],
  recommendation: {
    ...keys('kind option provisional offerInstead'),
    reasons,
    faults: [keys('component text')],
  },
}

const isMapping = (value: unknown): value is { readonly [key: string]: unknown } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Every path at which the value lacks what the shape promises. */
export const missingKeys = (value: unknown, shape: Shape, path = ''): readonly string[] => {
  if (shape === true) return value === undefined ? [path] : []
  if (Array.isArray(shape)) {
    const [inner] = shape as readonly [Shape]
    if (!Array.isArray(value)) return [path]
    return value.flatMap((element, i) => missingKeys(element, inner, `${path}[${i}]`))
  }
  const mapping = shape as { readonly [key: string]: Shape }
  if (mapping.orNull !== undefined) return value === null ? [] : missingKeys(value, mapping.orNull, path)
  if (!isMapping(value)) return [path]
  const inner = mapping.each
  if (inner !== undefined) return Object.entries(value).flatMap(([key, v]) => missingKeys(v, inner, `${path}.${key}`))
  return Object.entries(mapping).flatMap(([key, s]) => missingKeys(value[key], s, path === '' ? key : `${path}.${key}`))
}
