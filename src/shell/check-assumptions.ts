/** What the answer hangs on though nobody read it, and what is asked about, as the terminal lists it. */
import type { ResultDocument } from '../evaluation.ts'
import { count, quantity, type Units } from '../report/format.ts'
import { pathName } from '../report/names.ts'

/** Effects that a customer would notice: half a per cent of speed, half a kelvin of oil; as in the report. */
const NOTICED = 0.5
const MOST = 5

const shownValue = (value: number | string, unit: string, units: Units): string => {
  if (typeof value === 'string') return value
  return unit === '' ? count(value) : quantity(value, unit, units)
}

/** Assumptions that the answer rests on, then the readings that would replace others, that which matters most first. */
export const assumptionLines = (result: ResultDocument, units: Units): readonly string[] => {
  const { assumptions, restsOn, readings } = result
  const carrying = assumptions
    .filter(({ path }) => restsOn.includes(path))
    .map(({ path, value, unit, from, tolerance }) => {
      const where = from === 'default' ? 'taken, because nothing is written' : 'assumed'
      return `  ${pathName(path)}: ${shownValue(value, unit, units)}${tolerance === null ? '' : ` ${tolerance}`} (${where}); the answer rests on it`
    })
  const worth = readings
    .map(({ label, how, effectOnSpeedPercent: speed, effectOnOilK: oil }) => {
      const effects = [
        ...(speed !== null && speed >= NOTICED ? [`speed by ${quantity(speed, '%', units)}`] : []),
        ...(oil >= NOTICED ? [`oil by ${quantity(oil, 'K', units)}`] : []),
      ]
      return effects.length === 0 ? null : `  ${label}: may move ${effects.join(' and ')}. ${how}`.trimEnd()
    })
    .filter((line) => line !== null)
    .slice(0, MOST)
  if (carrying.length + worth.length === 0) return []
  const all = assumptions.length === 1 ? '1 figure was' : `${assumptions.length} figures were`
  return [
    ...(carrying.length === 0 ? [] : ['Not read, and the answer rests on it:', ...carrying]),
    ...(worth.length === 0 ? [] : ['Worth reading next, that which matters most first:', ...worth]),
    `  ${all} assumed in all; the report lists them.`,
    '',
  ]
}

/** Figures that were worked with as they are written, and are hardly right. */
export const askedAboutLines = ({ askedAbout }: ResultDocument): readonly string[] =>
  askedAbout.length === 0
    ? []
    : ['Asked about:', ...askedAbout.map(({ path, text, source }) => `  ${text} [${path}; ${source}]`), '']
