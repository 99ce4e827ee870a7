/**
 * The closed table of units that a file may use: per dimension, each unit's text and how it becomes SI. Everything not
 * listed here is refused; nothing is guessed. A temperature and a temperature difference are two dimensions, and gpm is
 * the US gallon. `shown` points at the metric unit that results and lists use.
 */

import {
  BTU,
  FOOT,
  HORSEPOWER,
  INCH,
  INCH_OF_MERCURY,
  METRIC_HORSEPOWER,
  MILE,
  POUND,
  POUND_FORCE,
  PSI,
  US_GALLON,
} from './shop-units.ts'
import { GRAVITY } from './si.ts'

export type Dimension =
  | 'flow'
  | 'pressure'
  | 'displacement'
  | 'length'
  | 'mass'
  | 'power'
  | 'torque'
  | 'speed'
  | 'travel speed'
  | 'temperature'
  | 'temperature difference'
  | 'viscosity'
  | 'share'
  | 'grade'
  | 'volume'
  | 'area'
  | 'heat capacity rate'
  | 'heat transfer'
  | 'time'
  | 'time per day'
  | 'current'

export interface UnitRow {
  /** Spellings that are taken, the usual one first. */
  readonly names: readonly string[]
  /** SI = value * factor + offset. */
  readonly factor: number
  readonly offset?: number
}

export interface DimensionRow {
  /** With its article, for messages: "a flow". */
  readonly article: string
  readonly units: readonly UnitRow[]
  /** Position in `units` of the metric unit that lists and results show; factor and offset are taken from there. */
  readonly shown: number
}

const unit = (names: string, factor: number, offset = 0): UnitRow => ({ names: names.split('|'), factor, offset })

export const DIMENSIONS: { readonly [D in Dimension]: DimensionRow } = {
  flow: {
    article: 'a flow',
    shown: 0,
    units: [
      unit('L/min|lpm', 1 / 60_000),
      unit('gpm|US gpm|gal/min', US_GALLON / 60),
      unit('m3/s|m³/s', 1),
      unit('m3/h|m³/h', 1 / 3600),
      unit('cm3/s|cm³/s', 1e-6),
      unit('L/s', 1e-3),
    ],
  },
  pressure: {
    article: 'a pressure',
    shown: 0,
    units: [
      unit('bar', 1e5),
      unit('psi', PSI),
      unit('MPa', 1e6),
      unit('kPa', 1e3),
      unit('mbar', 100),
      unit('inHg', INCH_OF_MERCURY),
      unit('kgf/cm2|kgf/cm²', GRAVITY * 1e4),
      unit('Pa', 1),
    ],
  },
  displacement: {
    article: 'a displacement',
    shown: 0,
    units: [
      unit('cm3/rev|cm³/rev|cc/rev|cm3/r|cm³/r', 1e-6),
      unit('in3/rev|in³/rev|cu in/rev|cir', INCH ** 3),
      unit('L/rev', 1e-3),
      unit('m3/rev|m³/rev', 1),
    ],
  },
  length: {
    article: 'a length',
    shown: 0,
    units: [
      unit('m', 1),
      unit('mm', 1e-3),
      unit('cm', 1e-2),
      unit('in|"', INCH),
      unit('ft', FOOT),
      unit('yd', 3 * FOOT),
      unit('µm|um', 1e-6),
      unit('km', 1000),
      unit('mile|mi', MILE),
    ],
  },
  mass: {
    article: 'a mass',
    shown: 0,
    units: [unit('kg', 1), unit('lb|lbs', POUND), unit('t', 1000), unit('g', 1e-3)],
  },
  power: {
    article: 'a power',
    shown: 0,
    units: [unit('kW', 1000), unit('hp', HORSEPOWER), unit('PS', METRIC_HORSEPOWER), unit('W', 1)],
  },
  torque: {
    article: 'a torque',
    shown: 0,
    units: [
      unit('N·m|Nm|N.m|N m', 1),
      unit('lb·ft|lb.ft|lb ft|lb-ft|lbf·ft|lbf.ft|ft·lb|ft.lb|ft lb|ft-lb', POUND_FORCE * FOOT),
      unit('lb·in|lb.in|lb in|lb-in|lbf·in|in·lb|in-lb', POUND_FORCE * INCH),
      unit('daN·m|daNm', 10),
    ],
  },
  speed: {
    article: 'a shaft speed',
    shown: 0,
    units: [unit('rpm|1/min|r/min|rev/min|min-1', 1 / 60), unit('rev/s|1/s', 1)],
  },
  'travel speed': {
    article: 'a travel speed',
    shown: 0,
    units: [
      unit('km/h|kph', 1 / 3.6),
      unit('mph', MILE / 3600),
      unit('m/s', 1),
      unit('m/min', 1 / 60),
      unit('ft/min', FOOT / 60),
    ],
  },
  temperature: {
    article: 'a temperature',
    shown: 0,
    units: [unit('°C|degC', 1), unit('°F|degF', 1 / 1.8, -32 / 1.8)],
  },
  'temperature difference': {
    article: 'a temperature difference',
    shown: 0,
    units: [unit('K|°C diff|degC diff', 1), unit('°F diff|degF diff', 1 / 1.8)],
  },
  viscosity: { article: 'a viscosity', shown: 0, units: [unit('cSt|mm2/s|mm²/s', 1e-6), unit('m2/s|m²/s', 1)] },
  share: { article: 'a share', shown: 0, units: [unit('%', 0.01)] },
  grade: { article: 'a grade', shown: 0, units: [unit('%', 0.01)] },
  volume: {
    article: 'a volume',
    shown: 0,
    units: [
      unit('L', 1e-3),
      unit('gal|US gal', US_GALLON),
      unit('cm3|cm³|cc|mL|ml', 1e-6),
      unit('m3|m³', 1),
      unit('qt|US qt', US_GALLON / 4),
    ],
  },
  area: {
    article: 'an area',
    shown: 0,
    units: [
      unit('m2|m²', 1),
      unit('ft2|ft²|sq ft', FOOT ** 2),
      unit('cm2|cm²', 1e-4),
      unit('in2|in²|sq in', INCH ** 2),
    ],
  },
  'heat capacity rate': {
    article: 'a heat flow per kelvin',
    shown: 0,
    units: [unit('kW/K|kW/°C', 1000), unit('W/K|W/°C', 1), unit('Btu/h·°F|Btu/h.°F|Btu/(h·°F)', (BTU * 1.8) / 3600)],
  },
  'heat transfer': {
    article: 'a heat transfer coefficient',
    shown: 0,
    units: [
      unit('W/m2K|W/m²K|W/(m2·K)|W/(m²·K)|W/m2·K|W/m²·K|W/(m2 K)|W/(m² K)', 1),
      unit(
        'Btu/h·ft2·°F|Btu/h·ft²·°F|Btu/h·ft2·F|Btu/h·ft²·F|Btu/(h·ft2·°F)|Btu/(h·ft²·°F)',
        (BTU * 1.8) / (3600 * FOOT ** 2),
      ),
    ],
  },
  time: {
    article: 'a time',
    shown: 0,
    units: [unit('s', 1), unit('min', 60), unit('h', 3600), unit('days|day|d', 86_400)],
  },
  'time per day': {
    article: 'a time per day',
    shown: 0,
    units: [unit('min/day|min/d', 60), unit('h/day|h/d', 3600), unit('s/day|s/d', 1)],
  },
  current: { article: 'a current', shown: 0, units: [unit('A', 1), unit('mA', 1e-3)] },
}

/** Usual spelling of every unit of a dimension, for messages. */
export const unitNames = (dimension: Dimension): readonly string[] =>
  DIMENSIONS[dimension].units.map((row) => row.names[0] ?? '')

/** Value of an SI figure in the dimension's shown (metric) unit, freed of binary noise: 12 significant digits. */
export const inShownUnit = (dimension: Dimension, si: number): number => {
  const row = DIMENSIONS[dimension]
  const shown = row.units[row.shown]
  return shown === undefined ? si : Number(((si - (shown.offset ?? 0)) / shown.factor).toPrecision(12))
}

/** A figure as a list shows it: in the dimension's shown unit, but bores in mm, gaps in µm and long times in min. */
export const readable = (dimension: Dimension, si: number): { readonly value: number; readonly unit: string } => {
  const tidy = (value: number) => Number(value.toPrecision(12))
  const size = Math.abs(si)
  if (dimension === 'length' && size > 0 && size < 1e-4) return { value: tidy(si * 1e6), unit: 'µm' }
  if (dimension === 'length' && size > 0 && size < 0.3) return { value: tidy(si * 1e3), unit: 'mm' }
  if (dimension === 'time' && size >= 600) return { value: tidy(si / 60), unit: 'min' }
  return { value: inShownUnit(dimension, si), unit: shownUnit(dimension) }
}

/** Text of the dimension's shown (metric) unit. */
export const shownUnit = (dimension: Dimension): string => {
  const row = DIMENSIONS[dimension]
  return row.units[row.shown]?.names[0] ?? ''
}
