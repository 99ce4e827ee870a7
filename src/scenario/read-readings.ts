/** Readings of a scenario in SI: those before the work, and those after it. */
import type { After, CircuitReading, Readings } from '../question.ts'
import type { Quantity } from '../units/quantity.ts'
import type { ScenarioSpec } from './scenario-schema.ts'

/** Oil of a run or a flow reading that does not say. */
export const READING_OIL = 50
/** Error of a stopwatch over 20 m (method). */
const TIMING = 0.015

type PressureReading = Quantity<'pressure'> | { circuit: string; pressure: Quantity<'pressure'> }[] | null | undefined

const pressuresOf = (reading: PressureReading): readonly CircuitReading[] => {
  if (reading === null || reading === undefined) return []
  if (Array.isArray(reading)) return reading.map(({ circuit, pressure }) => ({ circuit, pressure: pressure.si }))
  return [{ circuit: null, pressure: reading.si }]
}

export const readingsOf = (spec: ScenarioSpec): Readings => {
  const { measured } = spec
  const run = measured?.travel ?? null
  return {
    travel:
      run === null
        ? null
        : {
            distance: run.distance.si,
            time: run.time.si,
            oil: run.oil?.si ?? READING_OIL,
            tolerance: run.time.tolerance === null ? TIMING : run.time.tolerance / run.time.si,
          },
    engineSpeed: measured?.['engine-speed']?.si ?? null,
    reliefPressure: pressuresOf(measured?.['relief-pressure'] as PressureReading),
    flows: (measured?.flows ?? []).map((flow) => ({
      circuit: flow.circuit ?? null,
      pressure: flow.pressure.si,
      flow: flow.flow.si,
      engineSpeed: flow['engine-speed']?.si ?? null,
      oil: flow.oil?.si ?? READING_OIL,
    })),
    inletPressure: pressuresOf(measured?.['inlet-pressure'] as PressureReading),
    oilTemperature: oilReadingOf(measured?.['oil-temperature'], spec),
  }
}

type OilReading = NonNullable<ScenarioSpec['measured']>['oil-temperature']

const oilReadingOf = (read: OilReading, spec: ScenarioSpec): Readings['oilTemperature'] =>
  read == null
    ? null
    : { reading: read.reading.si, after: read.after.si, ambient: read.ambient?.si ?? spec.site.ambient.si }

export const afterOf = (spec: ScenarioSpec): After | null => {
  const { after } = spec
  if (after == null) return null
  return {
    date: after.date ?? null,
    option: after.option ?? null,
    runs: (after.runs ?? []).map(({ direction, distance, time }) => ({
      direction,
      distance: distance.si,
      time: time.si,
    })),
    oil: after.oil?.si ?? null,
    engineSpeed: after['engine-speed']?.si ?? null,
    reliefPressure: pressuresOf(after['relief-pressure'] as PressureReading),
    inletPressure: pressuresOf(after['inlet-pressure'] as PressureReading),
    oilTemperature: oilReadingOf(after['oil-temperature'], spec),
  }
}
