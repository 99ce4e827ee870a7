/**
 * What would have to be true, worked out from all that stops one way: what follows from a finding's value and its limit in
 * figures, else the finding in its own words.
 * Engine: the power that the pumps ask for at the relief settings, as a plate states it, before height and heat take their
 * share of it. Swivel: the bore at which the oil keeps its guide velocity; velocity goes with
 * 1/bore^2, so bore = bore there x sqrt(value / limit). Room: the length of the pump. Pull: what grade or turn need.
 */
import type { Finding } from '../evaluation.ts'
import type { Measure } from '../search.ts'

/** Rounded up, so that it is enough. */
const up = (value: number, decimals: number): string => {
  const scale = 10 ** decimals
  return (Math.ceil(value * scale - 1e-9) / scale).toString()
}

/** What is read of the machine of the way. */
export interface Taken {
  /** Bore of its swivel [mm]; null where nobody has read it. */
  readonly swivelBoreMm: number | null
  /** Power on the engine's plate over what it gives where the machine works. */
  readonly plateOver: number
}

type Rule = (value: number, limit: number, taken: Taken) => string | null

const kilonewtons = (newtons: number): string => up(newtons / 1000, 1)

const RULES: { readonly [check: string]: Rule } = {
  'engine-power': (value, _, { plateOver }) =>
    `an engine of ${up(value * plateOver, 1)} kW (or lower relief settings, at the cost of pull)`,
  'swivel-velocity': (value, limit, { swivelBoreMm: bore }) =>
    bore === null ? null : `a swivel with ${up(bore * Math.sqrt(value / limit), 1)} mm drillings`,
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

/** What is missing altogether. */
const MISSING: { readonly [check: string]: string } = {
  'holding-brake': 'a brake that holds it with the engine off',
  counterbalance: 'a counterbalance valve that holds it back downhill',
  'swivel-passages': 'a swivel with a passage free for the line that shifts the motors',
}

const inOwnWords = ({ heading }: Finding): string => `a way round this: "${heading.toLowerCase()}"`

/**
 * @param stands everything that stands against one way
 * @returns in plain words, each once, in the order of the findings
 */
export const wouldTakeOf = (stands: readonly Finding[], taken: Taken): readonly string[] => [
  ...new Set(
    stands.map((finding) => {
      const { check, value, limit } = finding
      const told = typeof value === 'number' && typeof limit === 'number' ? RULES[check]?.(value, limit, taken) : null
      return told ?? MISSING[check] ?? inOwnWords(finding)
    }),
  ),
]

/** Where even past the limits nothing of the list reaches it. */
export const listTakes: { readonly [measure in Measure]: string } = {
  'travel-speed': 'a bigger pump, smaller motors or bigger sprockets than any on the list',
  'attachment-flow': 'a pump that gives more than any on the list',
  'oil-temperature': 'a cooler that sheds more than any on the list',
}
