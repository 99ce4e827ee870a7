/**
 * What would have to be true, worked out from what stops: only where it follows from the finding's value and its limit.
 * Engine: the power that the pumps ask for. Swivel: the bore at which the oil keeps its guide velocity; velocity goes with
 * 1/bore^2, so bore = bore there x sqrt(value / limit). Room: the length of the pump. Pull: what grade or turn need.
 */
import type { Finding } from '../evaluation.ts'

/** Rounded up, so that it is enough. */
const up = (value: number, decimals: number): string => {
  const scale = 10 ** decimals
  return (Math.ceil(value * scale - 1e-9) / scale).toString()
}

type Rule = (value: number, limit: number, finding: Finding) => string | null

const kilonewtons = (newtons: number): string => up(newtons / 1000, 1)

const RULES: { readonly [check: string]: Rule } = {
  'engine-power': (value) => `an engine of ${up(value, 1)} kW`,
  'pump-room': (value) => `room for a pump of ${up(value, 0)} mm`,
  'grade-start': (_, limit) => `motors that pull ${kilonewtons(limit)} kN on the steepest slope`,
  'turn-start': (_, limit) => `motors that pull ${kilonewtons(limit)} kN to turn on the spot`,
  'pull-lost': (_, limit) => `motors that pull ${kilonewtons(limit)} kN on the steepest slope`,
  'pump-speed': (value) => `a pump of that size for ${up(value, 0)} rpm`,
  'pump-pressure': (value) => `a pump of that size for ${up(value, 0)} bar`,
  'motor-speed': (value) => `motors of that size for ${up(value, 0)} rpm`,
  'motor-flow': (value) => `motors of that size for ${up(value, 0)} L/min`,
  'motor-pressure': (value) => `motors of that size for ${up(value, 0)} bar`,
  'valve-flow': (value) => `a valve for ${up(value, 0)} L/min`,
  'swivel-pressure': (value) => `a swivel for ${up(value, 0)} bar`,
  'oil-temperature': () => 'a cooler that sheds more than any on the list',
}

/**
 * @param swivelBoreMm bore of the swivel that the stopped ways have [mm]; null where nobody has read it
 * @returns in plain words, each once, in the order of the findings
 */
export const wouldTakeOf = (stops: readonly Finding[], swivelBoreMm: number | null): readonly string[] => {
  const words = stops.flatMap((finding): readonly string[] => {
    const { check, value, limit } = finding
    if (check === 'swivel-velocity')
      return swivelBoreMm !== null && typeof value === 'number' && typeof limit === 'number'
        ? [`a swivel with ${up(swivelBoreMm * Math.sqrt(value / limit), 1)} mm drillings`]
        : []
    if (typeof value !== 'number' || typeof limit !== 'number') return []
    const told = RULES[check]?.(value, limit, finding) ?? null
    return told === null ? [] : [told]
  })
  return [...new Set(words)]
}
