/**
 * Reads a quantity as people write it: "24.5 L/min", "5/8 in", "250 cm3/rev ± 3 %", "6 mm (assumed)". Pure. The unit is
 * always asked for and looked up in the closed table of dimensions.ts; a comma in a number is refused, because "2,300"
 * is 2300 to one reader and 2.3 to the next.
 */
import type { Dimension, UnitRow } from './dimensions.ts'
import { DIMENSIONS, unitNames } from './dimensions.ts'

/** Where a written figure comes from; `stated` where the file says nothing more. */
export type WrittenFrom = 'measured' | 'plate' | 'manual' | 'assumed' | 'stated'

export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D
  /** In the SI unit of the dimension; temperatures in °C. */
  readonly si: number
  /** As written. */
  readonly text: string
  /** Half-width in the SI unit, null where none is written. */
  readonly tolerance: number | null
  readonly from: WrittenFrom
}

export type QuantityFault =
  | 'quantity-too-long'
  | 'unit-missing'
  | 'unit-unknown'
  | 'unit-of-another-dimension'
  | 'number-unreadable'
  | 'comma-in-number'
  | 'number-out-of-reach'
  | 'tolerance-unreadable'
  | 'provenance-unknown'

export interface QuantityProblem {
  readonly code: QuantityFault
  readonly message: string
  readonly expected: string
  readonly remedy: string | null
}

export type QuantityResult<D extends Dimension> =
  | { readonly ok: true; readonly quantity: Quantity<D> }
  | { readonly ok: false; readonly problem: QuantityProblem }

const LONGEST = 60
const WRITTEN_FROM: readonly WrittenFrom[] = ['measured', 'plate', 'manual', 'assumed']

/** Vulgar fractions of Unicode that a keyboard or a phone may put in. */
const VULGAR: { readonly [sign: string]: string } = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

/** One spelling for signs that look alike: spaces, micro sign, minus, multiplication dot, fraction slash, vulgar fractions. */
const normalise = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f]/gu, ' ')
    .replace(/μ/gu, 'µ')
    .replace(/[\u2212\u2010\u2011]/gu, '-')
    .replace(/[\u22c5\u2022\u2219]/gu, '·')
    .replace(/⁄/gu, '/')
    .replace(/(\d)?([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/gu, (_, whole: string | undefined, sign: string) =>
      whole === undefined ? (VULGAR[sign] ?? sign) : `${whole} ${VULGAR[sign] ?? sign}`,
    )
    .replace(/\+\s?\/\s?-/gu, '±')
    .replace(/\s+/gu, ' ')
    .trim()

const NUMBER = /^[+-]?(?:\d+[- ]\d+\/\d+|\d+\/\d+|(?:\d+(?:\.\d+)?|\.\d+)(?:e[+-]?\d+)?)/iu

/** A plain or broken number: "12.5", "5/8", "1-1/16", "1 1/2". null where it is none. */
const readNumber = (text: string): number | null => {
  const sign = text.startsWith('-') ? -1 : 1
  const bare = text.replace(/^[+-]/u, '')
  const broken = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/u.exec(bare)
  if (broken === null) return sign * Number(bare)
  const under = Number(broken[3])
  return under === 0 ? null : sign * (Number(broken[1] ?? 0) + Number(broken[2]) / under)
}

const withSmallLitre = (name: string): string => name.replace(/(^|[^A-Za-z])l(?=$|[^A-Za-z])/gu, '$1L')
const tidyUnit = (text: string): string =>
  withSmallLitre(
    text
      .replace(/\s?([/·])\s?/gu, '$1')
      .replace(/\s+/gu, ' ')
      .trim(),
  )

/** Value times factor; by division where the factor is one over a whole number, so that 35 % is 0.35 to the last digit. */
const scaled = (value: number, factor: number): number => {
  const divisor = Math.round(1 / factor)
  return divisor > 1 && 1 / divisor === factor ? value / divisor : value * factor
}

const findUnit = (dimension: Dimension, text: string): UnitRow | undefined =>
  DIMENSIONS[dimension].units.find((row) => row.names.includes(text))

const dimensionOf = (text: string): Dimension | undefined =>
  (Object.keys(DIMENSIONS) as Dimension[]).find((dimension) => findUnit(dimension, text) !== undefined)

/** A unit of the dimension that differs in capitals, dots or a degree sign only; null where there is none. */
const unitMeant = (dimension: Dimension, text: string): string | null => {
  const bare = (name: string): string => name.toLowerCase().replace(/[\s.°·^]|deg(?:rees)?/gu, '')
  const row = DIMENSIONS[dimension].units.find(({ names }) => names.some((name) => bare(name) === bare(text)))
  return row?.names[0] ?? null
}

/** Both readings of a number with a comma, so that the writer can choose; one where the rest of it tells which is meant. */
export const commaReadings = (number: string): readonly string[] => {
  const without = number.replaceAll(',', '')
  const commas = number.length - without.length
  const [point, comma] = [number.indexOf('.'), number.lastIndexOf(',')]
  if (point >= 0 && point < number.indexOf(',') && commas === 1)
    return [`${number.slice(0, comma).replaceAll('.', '')}.${number.slice(comma + 1)}`]
  return point >= 0 || commas > 1 ? [without] : [without, number.replace(',', '.')]
}

const listOf = (dimension: Dimension): string => unitNames(dimension).join(', ')

const fault = (code: QuantityFault, message: string, expected: string, remedy: string | null = null) =>
  ({ ok: false, problem: { code, message, expected, remedy } }) as const

interface NumberWithUnit {
  readonly value: number
  readonly unit: string
}

const splitNumber = (text: string): NumberWithUnit | { readonly code: QuantityFault; readonly detail: string } => {
  const comma = /^[+-]?\d[\d.]*(?:,\d+)+(?:\.\d+)?/u.exec(text)
  if (comma !== null) return { code: 'comma-in-number', detail: comma[0] }
  const match = NUMBER.exec(text)
  if (match === null) return { code: 'number-unreadable', detail: text }
  const rest = text.slice(match[0].length)
  if (/^[\d.,_/]/u.test(rest)) return { code: 'number-unreadable', detail: text }
  const value = readNumber(match[0])
  if (value === null) return { code: 'number-unreadable', detail: match[0] }
  if (!Number.isFinite(value) || Math.abs(value) > 1e12) return { code: 'number-out-of-reach', detail: match[0] }
  return { value, unit: tidyUnit(rest) }
}

/** Half-width in SI: relative in % (of a share: in points), or in a unit of the same dimension. null where unreadable. */
const readTolerance = (dimension: Dimension, text: string, si: number): number | null => {
  const read = splitNumber(text)
  if ('code' in read || read.value < 0) return null
  const points = dimension === 'share' || dimension === 'grade'
  if (read.unit === '%' && !points) return (Math.abs(si) * read.value) / 100
  const row = findUnit(dimension, read.unit)
  if (row !== undefined) return scaled(read.value, row.factor)
  const difference = dimension === 'temperature' ? findUnit('temperature difference', read.unit) : undefined
  return difference === undefined ? null : scaled(read.value, difference.factor)
}

/**
 * Reads one quantity of the dimension that the place asks for.
 *
 * @param text what the file says; a bare number is refused, with the units that would do
 * @param dimension what the place wants
 * @returns the quantity in SI with its tolerance and where it comes from, or what is wrong with it. At most 60 characters.
 */
export const parseQuantity = <D extends Dimension>(text: string | number, dimension: D): QuantityResult<D> => {
  const { article } = DIMENSIONS[dimension]
  const expected = `${article} with its unit: ${listOf(dimension)}`
  const first = unitNames(dimension)[0] ?? ''
  if (typeof text === 'number')
    return fault('unit-missing', `${text} has no unit`, expected, `write ${text} ${first} if that is what you mean`)
  if (text.length > LONGEST)
    return fault('quantity-too-long', `a quantity of ${text.length} characters`, `at most ${LONGEST} characters`)

  const whole = normalise(text)
  // A bracket after "/" or "·" belongs to the unit: "12 W/(m2·K)".
  const bracket = /^(.*[^\s/·])\s*\(([^()]*)\)$/u.exec(whole)
  const from = WRITTEN_FROM.find((known) => known === bracket?.[2]?.trim())
  if (bracket !== null && from === undefined) {
    const words = WRITTEN_FROM.map((known) => `(${known})`).join(', ')
    return fault('provenance-unknown', `"(${bracket[2] ?? ''})" does not say where the figure comes from`, words)
  }
  const bare = bracket?.[1] ?? whole

  const [main = '', spread, ...more] = bare.split('±').map((piece) => piece.trim())
  const read = splitNumber(main)
  if ('code' in read) {
    if (read.code === 'comma-in-number')
      return fault(
        'comma-in-number',
        `"${read.detail}" can be read in two ways`,
        'a number without a comma',
        `write ${commaReadings(read.detail).join(' or ')}`,
      )
    if (read.code === 'number-out-of-reach')
      return fault('number-out-of-reach', `"${read.detail}" is beyond any machine`, expected)
    return fault('number-unreadable', `"${text}" is not a number with a unit`, expected)
  }
  if (read.unit === '')
    return fault('unit-missing', `"${main}" has no unit`, expected, `write ${main} ${first} if that is what you mean`)
  const row = findUnit(dimension, read.unit)
  if (row === undefined) {
    const other = dimensionOf(read.unit)
    if (other === undefined) {
      const meant = unitMeant(dimension, read.unit)
      const remedy = meant === null ? null : `write ${NUMBER.exec(main)?.[0]} ${meant} if that is what you mean`
      return fault('unit-unknown', `the unit "${read.unit}" is not known`, expected, remedy)
    }
    const hint =
      dimension === 'temperature difference' && other === 'temperature'
        ? `write ${main.replace(/\s*°?(?:deg)?[CF]$/u, '')} ${read.unit} diff for a difference`
        : null
    return fault(
      'unit-of-another-dimension',
      `"${read.unit}" is a unit of ${DIMENSIONS[other].article}, and ${article} is wanted`,
      expected,
      hint,
    )
  }
  const si = scaled(read.value, row.factor) + (row.offset ?? 0)
  if (spread === undefined)
    return { ok: true, quantity: { dimension, si, text, tolerance: null, from: from ?? 'stated' } }
  const tolerance = more.length > 0 ? null : readTolerance(dimension, spread, si)
  if (tolerance === null)
    return fault(
      'tolerance-unreadable',
      `the tolerance "± ${[spread, ...more].join(' ± ')}" cannot be read`,
      `± a share in %, or ± ${article} in ${listOf(dimension)}`,
    )
  return { ok: true, quantity: { dimension, si, text, tolerance, from: from ?? 'stated' } }
}
