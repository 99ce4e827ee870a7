/**
 * Hot oil that nobody has seen: the other cooling surface is 0 m2 unless the file states it (method), which no machine has,
 * so that a machine with nothing but its plates may be worked out too hot. Says so, and how much hangs on it.
 */
import type { Work } from '../circuit/duty.ts'
import type { Heat } from '../evaluation.ts'
import { type Evaluated, workOut } from '../findings/evaluate-machine.ts'
import type { Site } from '../machine.ts'
import type { Assumption, Readings } from '../question.ts'
import { otherOverReservoir } from '../tables/limits.ts'
import { classesBetter, NO_BALANCE_ABOVE } from '../tables/oil-risk.ts'
import type { Kelvins } from '../units/si.ts'

export interface UnreadCooling {
  /** Of the assumption. */
  readonly path: string
  /** How much cooler the oil may settle than worked out; oil that does not settle counts as 150 degC. */
  readonly cooler: Kelvins
  /** With the surface that machines usually have, the oil may be a class better, or settle where it did not. */
  readonly decides: boolean
  /** For the customer: what is not known, what it does, what to read. */
  readonly text: string
}

const PATH = 'other-cooling-surface'

const settled = ({ steadyOilC }: Heat): string => (steadyOilC === null ? 'not at all' : `${steadyOilC.toFixed(0)} °C`)

/** Of oil that runs hot or severe without the cooling of a surface that nobody measured, nor read the tank; null else. */
export const unreadCooling = (
  machine: Evaluated,
  assumptions: readonly Assumption[],
  readings: Readings,
  site: Site,
  work: Work,
): UnreadCooling | null => {
  const { heat } = machine.figures
  const isOpen = assumptions.some(({ path, from }) => path === PATH && from === 'default')
  if (!isOpen || readings.oilTemperature !== null || (heat.risk !== 'high' && heat.risk !== 'severe')) return null
  const having = (ratio: number): Heat => {
    const otherCoolingSurface = ratio * machine.machine.reservoir.coolingSurface
    return workOut({ ...machine.machine, otherCoolingSurface }, site, work).figures.heat
  }
  const { least, most } = otherOverReservoir
  const [hot, cool] = [having(least.value), having(most.value)]
  const degrees = ({ steadyOilC }: Heat): number => steadyOilC ?? NO_BALANCE_ABOVE
  return {
    path: PATH,
    cooler: degrees(heat) - degrees(cool),
    // A machine at work whose oil does not settle at all is one that was worked out wrongly.
    decides: heat.steadyOilC === null || classesBetter(heat.risk, cool.risk) > 0,
    text: `Nobody has measured the surface of cylinders, valve and steel lines, and with the tank alone to cool it ${heat.steadyOilC === null ? 'the oil does not settle below 150 °C' : `the oil settles at ${settled(heat)}`}; with ${least.value} to ${most.value} times the surface of the tank, as is usual, it settles at ${settled(cool)} to ${settled(hot)}. Read the temperature of the tank after an hour of work first.`,
  }
}
