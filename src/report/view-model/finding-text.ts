/** A finding as text: its value, the limit it is held against, and where that comes from. */
import type { Finding } from '../../evaluation.ts'
import { against, quantity, typeset, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'

export interface FindingRow {
  readonly what: string
  readonly because: string
  readonly value: string
  readonly limit: string
  readonly source: string
}

/** An engine has two limits: what it may give all day, and its most, which is the one that stops. */
export const namedLimit = ({ check, severity }: Finding, limit: string): string =>
  check !== 'engine-power' ? limit : severity === 'stop' ? en.answer.power.peak(limit) : en.answer.power.allDay(limit)

/** Oil that does not settle up to here settles nowhere [°C]. */
const HOTTEST = 150

/** Value and limit of a finding as text. */
export const findingValues = (finding: Finding, units: Units): { value: string; limit: string } => {
  const { value, limit, unit } = finding
  if (typeof value === 'number' && typeof limit === 'number') {
    const both = against(value, limit, unit, units)
    return { value: both.value, limit: namedLimit(finding, both.limit) }
  }
  // Nothing to weigh: the oil found no balance up to the hottest that is worked out.
  if (finding.check === 'oil-temperature' && value === null && typeof limit === 'number')
    return { value: en.above(quantity(HOTTEST, unit, units)), limit: quantity(limit, unit, units) }
  const text = (side: number | string | null, missing: string) =>
    typeof side === 'number' ? quantity(side, unit, units) : (side ?? missing)
  return { value: text(value, en.notRead), limit: text(limit, en.dash) }
}

export const findingRow = (finding: Finding, units: Units): FindingRow => ({
  what: typeset(`${en.capital(componentName(finding.component))}: ${finding.heading}`),
  because: typeset(finding.because),
  ...findingValues(finding, units),
  source: typeset(finding.source),
})
