/** One finding on one line of the terminal, in plain words where there is no figure. */
import type { Finding } from '../evaluation.ts'
import { against, quantity, type Units } from '../report/format.ts'

/** Where a value is not worked out, why: of all checks it is the oil that may have no figure. */
const NO_FIGURE: { readonly [check: string]: string } = {
  'oil-temperature': 'it does not settle',
  'oil-viscosity-hot': 'the oil does not settle',
}

const textOf = (value: number | string, unit: string, units: Units): string => {
  if (typeof value === 'number') return quantity(value, unit, units)
  return value === 'not read' ? 'nobody has looked' : value
}

/** Value and limit, rounded alike where both are numbers. */
const valuesOf = ({ check, value, limit, unit }: Finding, units: Units): string => {
  if (typeof value === 'number' && typeof limit === 'number') {
    const both = against(value, limit, unit, units)
    return `${both.value} against ${both.limit}`
  }
  const is = value === null ? (NO_FIGURE[check] ?? 'no figure') : textOf(value, unit, units)
  if (limit === null) return `${is}; what there is for it, nobody has read`
  if (value === null) return `${is}; the limit is ${textOf(limit, unit, units)}`
  return `${is}, wanted: ${textOf(limit, unit, units)}`
}

/** A finding as the terminal lists it. */
export const findingLine =
  (units: Units) =>
  (finding: Finding): string =>
    `  ${finding.severity.padEnd(6)} ${finding.heading}: ${finding.component}: ${valuesOf(finding, units)}${finding.existing ? ' (was there before)' : ''}  [${finding.check}]`
