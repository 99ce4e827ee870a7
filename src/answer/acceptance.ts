/**
 * After the work: what was promised against what was measured, row by row, with what counts as kept. Speed and oil are held
 * against the range that was given before, pressures against the plates of the machine as it should stand now.
 */
import { FAULT_SHARE } from '../calibration/bounds.ts'
import type { Acceptance, AcceptanceRow, Evaluation, Range } from '../evaluation.ts'
import { standardAtmosphere } from '../formulas/atmosphere.ts'
import type { Circuit, Machine, Site } from '../machine.ts'
import type { After, CircuitReading, TimedRun } from '../question.ts'
import { bothWays, oilOfRun, printedTo, reliefKept } from '../tables/limits.ts'
import {
  barFromPascals,
  kmhFromMetresPerSecond,
  minutesFromSeconds,
  rpmFromRevsPerSecond,
} from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'

/** What the readings after the work are held against. */
export interface Promised {
  /** Name of the option that was carried out; null: the restored machine, or the machine as it stood. */
  readonly option: string | null
  /** As its plates say: what was read low before the work is not what it should hold now. */
  readonly machine: Machine
  readonly evaluation: Evaluation
  /** null where no ranges were worked out: then nothing was promised of speed and oil. */
  readonly range: Range | null
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

const speedsOf = (runs: readonly TimedRun[], direction: TimedRun['direction']): readonly number[] =>
  runs.filter((run) => run.direction === direction).map(({ distance, time }) => kmhFromMetresPerSecond(distance / time))

const NO_RANGE = 'No range was worked out, so nothing was promised.'

/** Mean of the means of both ways, so that a slope and an unequal number of runs cancel. */
const speedRow = (after: After, { range }: Promised): readonly AcceptanceRow[] => {
  const [forward, back] = [speedsOf(after.runs, 'forward'), speedsOf(after.runs, 'back')]
  if (forward.length + back.length === 0) return []
  const oneWay = forward.length === 0 || back.length === 0
  const measured = oneWay ? mean([...forward, ...back]) : (mean(forward) + mean(back)) / 2
  const spread = oneWay ? 0 : Math.abs(mean(forward) - mean(back)) / measured
  const low = range?.speedKmh.p10 ?? null
  const away = after.oil !== null && Math.abs(after.oil - oilOfRun.promisedAt) > oilOfRun.within
  const note = oneWay
    ? 'Timed one way only: a slope would not show. Time it both ways.'
    : away
      ? `The oil was not within ${oilOfRun.within} °C of the ${oilOfRun.promisedAt} °C that was promised for.`
      : low === null
        ? NO_RANGE
        : spread > bothWays.value
          ? 'The two ways differ by more than 5 %: check slope, tracks and motors.'
          : null
  return [
    {
      what: 'speed',
      component: 'travel',
      promisedLow: low,
      promisedHigh: range?.speedKmh.p90 ?? null,
      measured,
      unit: 'km/h',
      kept: oneWay || away || low === null ? null : measured >= low - printedTo.kmh,
      bound: 'at least',
      note,
      source: 'ISO 6014 for both ways; range worked out before the work',
    },
  ]
}

const engineRow = (after: After, { evaluation }: Promised): readonly AcceptanceRow[] => {
  if (after.engineSpeed === null) return []
  const promised = evaluation.travel.level.engineSpeedRpm
  const measured = rpmFromRevsPerSecond(after.engineSpeed)
  const stands = promised <= 0
  return [
    {
      what: 'engine-speed',
      component: 'engine',
      promisedLow: stands ? null : FAULT_SHARE * promised,
      promisedHigh: null,
      measured,
      unit: 'rpm',
      kept: stands ? null : measured >= FAULT_SHARE * promised,
      bound: 'at least',
      note: stands ? 'The engine was worked out to stall at full lever.' : null,
      source: 'common practice, no source',
    },
  ]
}

/** A circuit's own reading, else the one for every circuit that drives. */
const readingFor = (readings: readonly CircuitReading[], circuit: Circuit): CircuitReading | null =>
  readings.find((r) => r.circuit === circuit.name) ??
  (circuit.drives === 'no track' ? null : (readings.find((r) => r.circuit === null) ?? null))

const reliefRows = (after: After, { machine }: Promised): readonly AcceptanceRow[] =>
  machine.circuits.flatMap((circuit): AcceptanceRow[] => {
    const read = readingFor(after.reliefPressure, circuit)
    if (read === null) return []
    const { setting } = circuit.relief
    const [low, high] = [setting * (1 - reliefKept.value), setting * (1 + reliefKept.value)]
    return [
      {
        what: 'relief-pressure',
        component: `circuits.${circuit.name}.relief`,
        promisedLow: barFromPascals(low),
        promisedHigh: barFromPascals(high),
        measured: barFromPascals(read.pressure),
        unit: 'bar',
        kept: read.pressure >= low && read.pressure <= high,
        bound: 'between',
        note: null,
        source: reliefKept.source,
      },
    ]
  })

const inletRows = (after: After, { machine }: Promised, site: Site): readonly AcceptanceRow[] =>
  machine.circuits.flatMap((circuit): AcceptanceRow[] => {
    const read = readingFor(after.inletPressure, circuit)
    if (read === null) return []
    const absolute = standardAtmosphere(site.altitude) + read.pressure
    return [
      {
        what: 'inlet-pressure',
        component: `circuits.${circuit.name}.pump`,
        promisedLow: barFromPascals(circuit.pump.minInletPressure),
        promisedHigh: null,
        measured: barFromPascals(absolute),
        unit: 'bar abs',
        kept: absolute >= circuit.pump.minInletPressure,
        bound: 'at least',
        note: null,
        source: 'lowest inlet pressure of the pump',
      },
    ]
  })

/** Oil on the worked-out day's curve after some time; the end of it for anything later. */
const onCurve = (curve: Evaluation['heat']['curve'], minutes: number): Celsius | null => {
  const next = curve.findIndex(([minute]) => minute >= minutes)
  if (next < 0) return curve.at(-1)?.[1] ?? null
  const [toMinute, to] = curve[next] as readonly [number, number]
  const [fromMinute, from] = curve[Math.max(0, next - 1)] as readonly [number, number]
  return toMinute === fromMinute ? to : from + ((to - from) * (minutes - fromMinute)) / (toMinute - fromMinute)
}

/**
 * Rise over the air, so that a cooler day does not pass a hot machine: the upper end of the promised rise, at that time of
 * the warm-up, over the air of the test. Assumption: the rise does not depend on the air within a few kelvins.
 */
const oilRow = (after: After, { evaluation, range }: Promised, site: Site): readonly AcceptanceRow[] => {
  const read = after.oilTemperature
  if (read === null) return []
  const settled = evaluation.heat.steadyOilC
  const high = range?.steadyOilC.p90 ?? null
  const then = onCurve(evaluation.heat.curve, minutesFromSeconds(read.after))
  const known = settled !== null && settled > site.ambient && high !== null && then !== null
  const most = known ? read.ambient + ((then - site.ambient) * (high - site.ambient)) / (settled - site.ambient) : null
  return [
    {
      what: 'oil-temperature',
      component: 'reservoir',
      promisedLow: null,
      promisedHigh: most,
      measured: read.reading,
      unit: '°C',
      kept: most === null ? null : read.reading <= most + printedTo.celsius,
      bound: 'at most',
      note:
        most === null
          ? range === null
            ? NO_RANGE
            : 'No temperature was promised: the oil was not worked out to settle.'
          : null,
      source: 'range worked out before the work, for the time and the air of the test',
    },
  ]
}

/** Not kept where one row is not; open where one could not be held against its promise, or none was measured. */
const verdict = (rows: readonly AcceptanceRow[]): boolean | null => {
  if (rows.some(({ kept }) => kept === false)) return false
  return rows.length === 0 || rows.some(({ kept }) => kept === null) ? null : true
}

/** The record of the test after the work. */
export const acceptanceOf = (after: After, promised: Promised, site: Site): Acceptance => {
  const rows = [
    ...speedRow(after, promised),
    ...engineRow(after, promised),
    ...reliefRows(after, promised),
    ...inletRows(after, promised, site),
    ...oilRow(after, promised, site),
  ]
  return {
    date: after.date,
    option: promised.option,
    runs: after.runs.map(({ direction, distance, time }) => ({
      direction,
      distanceM: distance,
      timeS: time,
      speedKmh: kmhFromMetresPerSecond(distance / time),
    })),
    oilC: after.oil,
    rows,
    kept: verdict(rows),
  }
}
