/**
 * Limits that belong to no one component: one row each with its unit and where it comes from. Checks, report and test
 * titles read them here. Guide velocities of lines are in velocity-limits.ts, torques of shafts in shaft-torques.ts;
 * ratings of components come with the machine.
 */
import { OIL_TEMPERATURE_LIMITS, OIL_VISCOSITY_LIMITS } from './oil-risk.ts'

export interface Limit {
  readonly value: number
  /** Unit as it is shown; '' for a ratio. */
  readonly unit: string
  readonly source: string
}

const COMMON = 'common practice, no source'

/** Source of a limit that the machine file or the parts list gives for the component itself. */
export const STATED = 'rating stated for this component'

/** Source of the lowest inlet pressure; 0.7 bar is the usual figure for gear pumps. */
export const INLET_SOURCE = 'stated for the pump; where nothing is stated 0.7 bar absolute (from memory)'

/** Source of what the engine can give. */
export const ENGINE_SOURCE =
  'net power of the engine, less 3 % per 300 m above 150 m (published rule) and 1 % per 5.5 K above 29 °C; for all day the stated share of it, else 85 % (from memory)'

/** Less air than this over a pump's inlet limit is the altitude's doing, and no hose cures it [bar]. */
export const thinAir: Limit = { value: 0.1, unit: 'bar', source: COMMON }

/** A change smaller than this share is no change: a worse value, a raised speed, a lost pull. */
export const noticeable: Limit = { value: 0.02, unit: '', source: COMMON }

/** Coupling torque over steady torque, medium load, by engine cylinders. */
export const serviceFactors: { readonly upToThreeCylinders: Limit; readonly fourAndMore: Limit } = {
  upToThreeCylinders: { value: 2.8, unit: '', source: 'AGMA 514.02: piston engine, 1 to 3 cylinders, medium load' },
  fourAndMore: { value: 2.3, unit: '', source: 'AGMA 514.02: piston engine, 4 to 12 cylinders, medium load' },
}

/** Standing losses with every lever in neutral, share of the derated engine power. */
export const standbyShare: Limit = { value: 0.1, unit: '', source: COMMON }

/** Time that the oil rests in the reservoir. */
export const dwell: Limit = {
  value: 60,
  unit: 's',
  source: 'air needs a minute or more to leave warm oil (from memory); under a minute is usual on small machines',
}

/**
 * Surface of cylinders, valve and steel lines over that of the reservoir, from and to: what an answer about hot oil is tried
 * with where nobody measured the former.
 */
export const otherOverReservoir: { readonly least: Limit; readonly most: Limit } = {
  least: { value: 2, unit: '', source: COMMON },
  most: { value: 4, unit: '', source: COMMON },
}

/** Comfortable up to here. */
export const warmOil: Limit = { value: OIL_TEMPERATURE_LIMITS.moderate, unit: '°C', source: COMMON }

/** Seals and hoses age fast above. */
export const hotOil: Limit = {
  value: OIL_TEMPERATURE_LIMITS.high,
  unit: '°C',
  source: 'trade literature (two sources): seals and hoses degrade quickly above 82 °C',
}

/** Lowest viscosity of settled oil. */
export const thinOil: Limit = {
  value: OIL_VISCOSITY_LIMITS.thin,
  unit: 'cSt',
  source: 'a gear-pump installation manual: 12 to 100 cSt',
}

/** Highest viscosity at a cold start. */
export const thickOil: Limit = {
  value: 1000,
  unit: 'cSt',
  source: 'start-up limit of gear pumps, 800 to 1600 cSt (from memory)',
}

/** Speed over the maker's figure that still counts as the maker's. */
export const overMakersSpeed: Limit = { value: 1.1, unit: '', source: "the maker's published travel speed and 10 %" }

/** Upper end of the braking standard for crawlers. */
export const crawlerBraking: Limit = {
  value: 20,
  unit: 'km/h',
  source: 'ISO 10265 covers crawlers up to 20 km/h, ISO 3450 what is faster (scopes of both)',
}

/** Energy of motion over that of before; 10 % more speed. */
export const motionEnergy: Limit = { value: 1.21, unit: '', source: COMMON }

/** A machine that works on steeper ground than this should hold its load back hydraulically. */
export const holdBackGrade: Limit = { value: 0.15, unit: '', source: COMMON }

/** Difference of the two tracks' speeds, share of their mean. */
export const drift: Limit = { value: 0.05, unit: '', source: COMMON }

/** After the work the relief is set to its figure within this share. */
export const reliefKept: Limit = { value: 0.03, unit: '', source: COMMON }

/** Speeds of the two ways of a course differ by no more than this share, or something is wrong with course or machine. */
export const bothWays: Limit = { value: 0.05, unit: '', source: COMMON }

/** Oil that a level speed is promised for [degC], and how far off it a run may be made [K]. */
export const oilOfRun = { promisedAt: 50, within: 10, source: COMMON } as const

/** Half of the last digit that a promise is printed with: what rounds to it keeps it. */
export const printedTo = { kmh: 0.05, celsius: 0.5 } as const
