/**
 * How fast oil may run in a line, by what the line does. Below `guide` nothing is said; above it the line is watched;
 * above `change` it is too small. Fluid-power guideline sheets and hose catalogues give 2 to 4 ft/s for suction and 15 to
 * 20 ft/s for pressure lines; 10 ft/s for return lines is from memory. Mineral oil, continuous duty.
 */
import type { MetresPerSecond } from '../units/si.ts'

export type LineRole = 'suction' | 'return' | 'pressure' | 'work' | 'auxiliary'

export interface VelocityLimit {
  readonly guide: MetresPerSecond
  /** Too small above this; for suction lines only where the pump's inlet is short of pressure as well. */
  readonly change: MetresPerSecond
  /** Too small above this whatever the inlet pressure; suction lines only. */
  readonly always: MetresPerSecond | null
  readonly source: string
}

/** A line is too small where its velocity passes the guide value by more than 15 %: common practice, no source. */
export const OVER_GUIDE = 1.15

const pressureBand = 'fluid-power guideline sheets and hose catalogues: 15 to 20 ft/s in pressure lines'

export const velocityLimits: { readonly [role in LineRole]: VelocityLimit } = {
  suction: {
    guide: 1.2,
    change: 1.2 * OVER_GUIDE,
    always: 1.8,
    source: 'fluid-power guideline sheets: 2 to 4 ft/s in suction lines',
  },
  return: { guide: 3, change: 4.5, always: null, source: 'common practice: 10 ft/s in return lines (from memory)' },
  pressure: { guide: 6.1, change: 6.1 * OVER_GUIDE, always: null, source: pressureBand },
  work: { guide: 6.1, change: 6.1 * OVER_GUIDE, always: null, source: pressureBand },
  auxiliary: { guide: 6.1, change: 6.1 * OVER_GUIDE, always: null, source: pressureBand },
}

/**
 * What a line does, read from its component id: `circuits.NAME.lines.suction`, `circuits.NAME.auxiliary.lines.out`,
 * `travel.lines.NAME`. A work line may bear any name, so only lines of a circuit are told apart by theirs.
 */
export const lineRole = (id: string): LineRole => {
  if (id.startsWith('travel.')) return 'work'
  if (id.includes('.auxiliary.')) return 'auxiliary'
  if (id.endsWith('.lines.suction')) return 'suction'
  if (id.endsWith('.lines.return')) return 'return'
  return 'pressure'
}
