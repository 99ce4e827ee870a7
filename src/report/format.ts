/**
 * Numbers to text: the only place of the report that rounds. Metric in, as the result document has it; out come metric,
 * US customary or both. A null never becomes a figure.
 */
import {
  fahrenheitFromCelsius,
  feetFromMetres,
  gallonsFromLitres,
  gpmFromLpm,
  hpFromKw,
  in3FromCm3,
  inchesFromMm,
  mphFromKmh,
  poundFeetFromNewtonMetres,
  poundsForceFromNewtons,
  poundsFromKilograms,
  psiFromBar,
  squareFeetFromSquareMetres,
} from '../units/shop-units.ts'
import { en } from './wording.ts'

export type Units = 'metric' | 'us' | 'both'

/** A figure set large: its number, its unit, and the same in the other units ('' where none is asked). */
export interface Figure {
  readonly value: string
  readonly unit: string
  readonly also: string
}

interface Side {
  readonly unit: string
  /** Decimals for a value of this size; -1 rounds to tens. */
  readonly digits: (size: number) => number
}

interface Scale extends Side {
  readonly us: (Side & { readonly from: (value: number) => number }) | null
}

/** Keeps a figure and its unit on one line. */
export const NBSP = '\u00a0'
const fixed = (digits: number) => () => digits
/** Whole numbers from `whole` up, one decimal above a tenth of it, two below. */
const bySize = (whole: number) => (size: number) => (size >= whole ? 0 : size >= whole / 10 ? 1 : 2)
const tens = (from: number) => (size: number) => (size >= from ? -1 : size >= 30 ? 0 : 1)
const own = (unit: string, digits: Side['digits']): Scale => ({ unit, digits, us: null })

const PRESSURE = (mark: string): Scale => ({
  unit: `bar${mark}`,
  digits: bySize(20),
  us: { unit: `psi${mark}`, digits: tens(300), from: psiFromBar },
})
const DISPLACEMENT = (per: string): Scale => ({
  unit: `cm³${per}`,
  digits: (size) => (size >= 100 ? 0 : 1),
  us: { unit: `in³${per}`, digits: (size) => (size >= 10 ? 1 : 2), from: in3FromCm3 },
})

const SCALES: { readonly [unit: string]: Scale } = {
  'km/h': { unit: 'km/h', digits: fixed(1), us: { unit: 'mph', digits: fixed(1), from: mphFromKmh } },
  '°C': { unit: '°C', digits: fixed(0), us: { unit: '°F', digits: fixed(0), from: fahrenheitFromCelsius } },
  // A difference of temperature, told in the degrees that people know.
  K: { unit: '°C', digits: fixed(0), us: { unit: '°F', digits: fixed(0), from: (kelvins) => kelvins * 1.8 } },
  bar: PRESSURE(''),
  'bar abs': PRESSURE(` ${en.units.absolute}`),
  'L/min': { unit: 'L/min', digits: fixed(1), us: { unit: 'US gpm', digits: fixed(1), from: gpmFromLpm } },
  L: { unit: 'L', digits: bySize(10), us: { unit: 'US gal', digits: fixed(1), from: gallonsFromLitres } },
  kW: { unit: 'kW', digits: fixed(1), us: { unit: 'hp', digits: fixed(1), from: hpFromKw } },
  mm: { unit: 'mm', digits: (size) => (size >= 50 ? 0 : 1), us: { unit: 'in', digits: fixed(2), from: inchesFromMm } },
  kg: { unit: 'kg', digits: fixed(0), us: { unit: 'lb', digits: tens(300), from: poundsFromKilograms } },
  m: { unit: 'm', digits: bySize(10), us: { unit: 'ft', digits: bySize(10), from: feetFromMetres } },
  'm/s': { unit: 'm/s', digits: fixed(1), us: { unit: 'ft/s', digits: fixed(1), from: feetFromMetres } },
  m2: { unit: 'm²', digits: fixed(2), us: { unit: 'ft²', digits: fixed(1), from: squareFeetFromSquareMetres } },
  N·m: { unit: 'N·m', digits: fixed(0), us: { unit: 'lb·ft', digits: fixed(0), from: poundFeetFromNewtonMetres } },
  N: { unit: 'N', digits: tens(300), us: { unit: 'lbf', digits: tens(300), from: poundsForceFromNewtons } },
  cm3: DISPLACEMENT(''),
  'cm3/rev': DISPLACEMENT('/rev'),
  rpm: own('rpm', fixed(0)),
  cSt: own('cSt', bySize(20)),
  '%': own('%', (size) => (size >= 10 ? 0 : 1)),
  A: own('A', bySize(10)),
  s: own('s', (size) => (size >= 100 ? 0 : 1)),
  min: own('min', bySize(20)),
  µm: own('µm', fixed(0)),
  'W/K': own('W/K', fixed(0)),
  'kW/K': own('kW/K', fixed(3)),
  'W/m2K': own('W/m²K', bySize(10)),
}
const ALIASES: { readonly [unit: string]: string } = {
  'cm³': 'cm3',
  'cm³/rev': 'cm3/rev',
  'm²': 'm2',
  'W/m²K': 'W/m2K',
  Nm: 'N·m',
  'l/min': 'L/min',
  'bar absolute': 'bar abs',
}

const scaleOf = (unit: string): Scale =>
  SCALES[ALIASES[unit] ?? unit] ?? own(unit, (size) => (size >= 100 ? 0 : size >= 10 ? 1 : 2))

/** A plain number: that many decimals, thousands set apart (money from 1,000, else from 10,000), a true minus, never "-0". */
export const decimal = (value: number, digits: number, groupFrom = 10_000): string => {
  const factor = 10 ** digits
  // Half away from zero; the nudge undoes binary tails such as 1.005 = 1.00499…
  const rounded = (Math.sign(value) * Math.round(Math.abs(value) * factor * (1 + 1e-12))) / factor
  const [whole = '0', rest] = Math.abs(rounded).toFixed(Math.max(0, digits)).split('.')
  const grouped = Math.abs(rounded) >= groupFrom ? whole.replace(/\B(?=(\d{3})+$)/g, en.groupMark) : whole
  return `${rounded < 0 ? '−' : ''}${grouped}${rest === undefined ? '' : en.decimalMark + rest}`
}

const joined = (number: string, unit: string) => (unit === '' ? number : number + NBSP + unit)

/** Lengths below a metre are told in millimetres, as the trade measures them. */
const inTrade = (value: number | null, unit: string): readonly [number | null, string] =>
  unit === 'm' && value !== null && value !== 0 && Math.abs(value) < 1 ? [value * 1000, 'mm'] : [value, unit]

const sides = (unit: string, units: Units): readonly { side: Side; from: (value: number) => number }[] => {
  const scale = scaleOf(unit)
  const metric = { side: scale, from: (value: number) => value }
  if (scale.us === null || units === 'metric') return [metric]
  const us = { side: scale.us, from: scale.us.from }
  return units === 'us' ? [us] : [metric, us]
}

const together = (texts: readonly string[]) =>
  texts.length > 1 ? `${texts[0]} (${texts.slice(1).join(', ')})` : (texts[0] ?? '')

/**
 * One quantity in the customer's units.
 * @param given in `givenUnit`, as the result document has it; null: nobody knows
 * @param missing what stands in place of an unknown figure
 * @returns "2.3 km/h", "1.4 mph" or "2.3 km/h (1.4 mph)"
 */
export const quantity = (
  given: number | null,
  givenUnit: string,
  units: Units,
  missing: string = en.notWorkedOut,
): string => {
  const [value, unit] = inTrade(given, givenUnit)
  if (value === null || !Number.isFinite(value)) return missing
  const text = ({ side, from }: ReturnType<typeof sides>[number]) =>
    joined(decimal(from(value), side.digits(Math.abs(from(value)))), side.unit)
  return together(sides(unit, units).map(text))
}

/** The number alone, first of the customer's units, for tables that name the unit in their head. */
export const bare = (value: number | null, unit: string, units: Units): string => {
  const [first] = sides(unit, units)
  if (value === null || first === undefined || !Number.isFinite(value)) return en.dash
  const shown = first.from(value)
  return decimal(shown, first.side.digits(Math.abs(shown)))
}

/** "2.9–3.4" without its unit; one figure where both ends round to the same. */
export const bareSpan = (low: number, high: number, unit: string, units: Units): string => {
  const [from, to] = [bare(low, unit, units), bare(high, unit, units)]
  return from === to ? from : `${from}–${to}`
}

/** Value in the first of the customer's units, unrounded: what a chart draws. */
export const drawn = (value: number, unit: string, units: Units): number =>
  (sides(unit, units)[0]?.from ?? ((v: number) => v))(value)

/** Name of the first of the customer's units. */
export const unitName = (unit: string, units: Units): string => sides(unit, units)[0]?.side.unit ?? unit

/** A figure to be set large. */
export const figure = (value: number | null, unit: string, units: Units): Figure => {
  const [first, second] = sides(unit, units)
  if (value === null || first === undefined || !Number.isFinite(value))
    return { value: en.dash, unit: '', also: en.notWorkedOut }
  const text = (side: { side: Side; from: (v: number) => number }) =>
    decimal(side.from(value), side.side.digits(Math.abs(side.from(value))))
  return {
    value: text(first),
    unit: first.side.unit,
    also: second === undefined ? '' : joined(text(second), second.side.unit),
  }
}

/**
 * "2.9–3.4 km/h (1.8–2.1 mph)"; one figure where both ends round to the same.
 * @param more decimals than the unit is usually told with
 */
export const span = (low: number | null, high: number | null, unit: string, units: Units, more = 0): string => {
  if (low === null || high === null) return en.notWorkedOut
  return together(
    sides(unit, units).map(({ side, from }) => {
      const digits = side.digits(Math.max(Math.abs(from(low)), Math.abs(from(high)))) + more
      const [a, b] = [decimal(from(low), digits), decimal(from(high), digits)]
      return joined(a === b ? a : `${a}–${b}`, side.unit)
    }),
  )
}

/** A value and its limit, rounded alike, with as many decimals as it takes to see that they differ. */
export const against = (value: number, limit: number, unit: string, units: Units): { value: string; limit: string } => {
  const pairs = sides(unit, units).map(({ side, from }) => {
    const [v, l] = [from(value), from(limit)]
    let digits = side.digits(Math.min(Math.abs(v), Math.abs(l)))
    while (digits < 3 && v !== l && decimal(v, digits) === decimal(l, digits)) digits += 1
    return { value: joined(decimal(v, digits), side.unit), limit: joined(decimal(l, digits), side.unit) }
  })
  return { value: together(pairs.map((pair) => pair.value)), limit: together(pairs.map((pair) => pair.limit)) }
}

/** Time in minutes as people say it: "45 min", "1 h 20 min". */
export const minutes = (value: number | null): string => {
  if (value === null || !Number.isFinite(value)) return en.notWorkedOut
  if (value < 9.95) return joined(decimal(value, 1), 'min')
  const whole = Math.round(value)
  if (whole < 90) return joined(String(whole), 'min')
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return rest === 0 ? joined(String(hours), 'h') : `${joined(String(hours), 'h')} ${joined(String(rest), 'min')}`
}

/**
 * A speed told as the time that it takes over the customer's own trip: speed in the unit "minutes per trip".
 * @param speedKmh km/h  @param tripM length of the trip [m]
 * @returns minutes; null where there is no trip or the machine does not move
 */
export const tripMinutes = (speedKmh: number, tripM: number | null): number | null =>
  tripM === null || speedKmh <= 0 ? null : (tripM * 60) / (speedKmh * 1000)

/** Hours of work, low to high: "2–4 h". */
export const hours = (low: number, high: number): string => {
  const text = (value: number) => decimal(value, Number.isInteger(value) ? 0 : 1)
  return joined(low === high ? text(low) : `${text(low)}–${text(high)}`, 'h')
}

/** "48 h". */
export const wholeHours = (value: number): string => joined(decimal(value, 0), 'h')

/** A plain count or quantity: "4", "1.2". */
export const count = (value: number): string => decimal(value, Number.isInteger(value) ? 0 : 1)

/** "2 March 2026" from an ISO date; null is a dash. */
export const date = (iso: string | null): string => {
  const match = iso === null ? null : /^(\d{4})-(\d{2})-(\d{2})/.exec(iso)
  if (match === null) return iso ?? en.dash
  return en.date(Number(match[3]), en.months[Number(match[2]) - 1] ?? match[2] ?? '', match[1] ?? '')
}

/** Units of running text, those that a sentence of the evaluation may name. */
const IN_TEXT =
  /(?:(−?\d+(?:\.\d+)?)( and |–| to ))?(−?\d+(?:\.\d+)?) (km\/h|°C|bar|L\/min|kW|mm|m\/s|N·m|kg)(?![\p{L}/·²³])/gu

/**
 * A sentence that came with metric figures, told again in the customer's units: "settles at 104 °C" is "settles at 219 °F",
 * or "settles at 104 °C (219 °F)" where both are asked.
 */
export const retold = (text: string, units: Units): string =>
  units === 'metric'
    ? text
    : text.replace(
        IN_TEXT,
        (whole, first: string | undefined, word: string | undefined, second: string, unit: string) => {
          const us = (value: string) => bare(Number(value.replace('−', '-')), unit, 'us')
          const told = `${first === undefined ? '' : us(first) + word}${us(second)}${NBSP}${unitName(unit, 'us')}`
          return units === 'us' ? told : `${whole} (${told})`
        },
      )

/** A number and its unit stay on one line. */
const UNIT_AFTER_NUMBER =
  /(?<=\d) (?=(?:%|°[CF]|kW|hp|bar|psi|L\/min|US gpm|km\/h|mph|rpm|mm|cm[²³]|m\/s|N·m|kg|lb|µm|cSt|min|h|L|V|A|K|W|t|m)(?![\p{L}\d]))/gu

/** Signs that the files write in plain letters, set as they are printed: cm3 is cm³, an apostrophe is round. */
export const typeset = (text: string): string =>
  text
    .replace(/\b(cm|in|m|ft)([23])(?![\d.])/g, (_, unit: string, power: string) => unit + (power === '2' ? '²' : '³'))
    .replace(/(?<=\p{L})'(?=\p{L}|\s|$)/gu, '’')
    .replace(UNIT_AFTER_NUMBER, NBSP)
