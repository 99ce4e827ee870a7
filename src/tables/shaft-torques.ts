/**
 * What pump shafts usually carry, by shaft end. No standard rates them by torque: the figures are ranges from memory of
 * makers' data for hardened shafts, but for the 25.4 mm taper. Above the low end a shaft is watched; only a torque that
 * is stated for the pump can condemn one.
 */
import type { Metres, NewtonMetres } from '../units/si.ts'

export interface ShaftTorque {
  /** Low end of the usual range. */
  readonly low: NewtonMetres
  readonly high: NewtonMetres
  readonly source: string
}

const SPLINE = 'usual for a splined shaft end of SAE J744 / ISO 3019-1 (torque from memory)'
const KEYED = 'usual for a keyed shaft end of SAE J744 / ISO 3019-1 (torque from memory)'
const TAPER = 'usual for the 1:8 taper of European gear pumps (from memory)'

interface SplineRow extends ShaftTorque {
  readonly teeth: number
  readonly pitch: string
}

const spline = (teeth: number, pitch: string, low: NewtonMetres, high: NewtonMetres): SplineRow => ({
  teeth,
  pitch,
  low,
  high,
  source: SPLINE,
})

export const splinedShafts: readonly SplineRow[] = [
  spline(9, '20/40', 20, 35),
  spline(9, '16/32', 55, 80),
  spline(11, '16/32', 120, 160),
  spline(13, '16/32', 190, 300),
  spline(15, '16/32', 320, 450),
  spline(14, '12/24', 600, 850),
  spline(17, '12/24', 1000, 1200),
  spline(13, '8/16', 1500, 2000),
]

interface RoundRow extends ShaftTorque {
  /** Of a taper: its large end. */
  readonly diameter: Metres
}

const round = (diameter: Metres, low: NewtonMetres, high: NewtonMetres, source: string): RoundRow => ({
  diameter,
  low,
  high,
  source,
})

export const keyedShafts: readonly RoundRow[] = [
  round(0.0127, 15, 30, KEYED),
  round(0.01588, 40, 80, KEYED),
  round(0.01905, 80, 120, KEYED),
  round(0.02222, 130, 210, KEYED),
  round(0.0254, 200, 350, KEYED),
  round(0.03175, 450, 650, KEYED),
  round(0.0381, 800, 1000, KEYED),
]

export const taperedShafts: readonly RoundRow[] = [
  round(0.0098, 25, 50, TAPER),
  round(0.017, 130, 150, TAPER),
  round(0.022, 270, 350, TAPER),
  round(0.0254, 405, 540, 'SAE J501 / ISO 3019-1 code 25-3, rated 405 and at most 540 N·m (one published source)'),
]

const INCH: Metres = 0.0254

/** Diameter in a text such as "5/8 in keyed", "1-1/4 in keyed", "22.2 mm keyed"; null where it names none. */
const diameterIn = (text: string): Metres | null => {
  const metric = /(\d+(?:\.\d+)?)\s*mm\b/.exec(text)
  if (metric) return Number(metric[1]) / 1000
  const inch = /(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)\s*in\b/.exec(text)
  if (inch) return (Number(inch[1] ?? 0) + Number(inch[2]) / Number(inch[3])) * INCH
  const whole = /(\d+(?:\.\d+)?)\s*in\b/.exec(text)
  return whole ? Number(whole[1]) * INCH : null
}

/** Diameters are written rounded: 5/8 in, 15.9 mm and 15.875 mm are one shaft. */
const SAME_DIAMETER: Metres = 0.0002

const byDiameter = (rows: readonly RoundRow[], diameter: Metres | null): ShaftTorque | null =>
  diameter === null ? null : (rows.find((row) => Math.abs(row.diameter - diameter) <= SAME_DIAMETER) ?? null)

/**
 * Usual torque of a shaft end, looked up by what its text says: teeth and pitch of a spline, diameter of a key or taper.
 * @param shaft text as the shop writes it, "9T 16/32 DP", "3/4 in keyed", "taper 1:8 17 mm"
 * @returns range [N·m], or null where the text names no row; never the nearest one.
 */
export const usualShaftTorque = (shaft: string): ShaftTorque | null => {
  const text = shaft.toLowerCase()
  const teeth = /(\d+)\s*-?\s*t(?:eeth|ooth)?\b.*?(\d+\s*\/\s*\d+)/.exec(text)
  if (teeth) {
    const pitch = (teeth[2] ?? '').replaceAll(/\s/g, '')
    return splinedShafts.find((row) => row.teeth === Number(teeth[1]) && row.pitch === pitch) ?? null
  }
  if (text.includes('taper')) return byDiameter(taperedShafts, diameterIn(text))
  if (text.includes('key')) return byDiameter(keyedShafts, diameterIn(text))
  return null
}
