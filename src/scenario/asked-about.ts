/**
 * Figures that can be, but that hardly any small machine has, and readings that do not go with each other: read, worked
 * with, and asked about.
 */
import type { AskedAbout } from '../evaluation.ts'
import { USUAL_OF_A_MACHINE, USUAL_OF_A_SCENARIO, USUAL_SOURCE, type UsualFigure } from '../tables/usual-figures.ts'
import type { Dimension } from '../units/dimensions.ts'
import { parseQuantity, type Quantity } from '../units/quantity.ts'
import type { MachineSpec } from './machine-schema.ts'
import type { ScenarioSpec } from './scenario-schema.ts'

interface Written {
  readonly path: readonly string[]
  readonly value: Quantity | number
}

const isQuantity = (value: object): value is Quantity => 'si' in value && 'dimension' in value && 'text' in value

const figuresIn = (spec: unknown, path: readonly string[] = []): readonly Written[] => {
  if (typeof spec === 'number') return [{ path, value: spec }]
  if (typeof spec !== 'object' || spec === null) return []
  if (isQuantity(spec)) return [{ path, value: spec }]
  return Object.entries(spec).flatMap(([key, value]) => figuresIn(value, [...path, key]))
}

const fits = (pattern: string, path: readonly string[]): boolean => {
  const steps = pattern.split('.')
  return steps.length === path.length && steps.every((step, i) => step === '*' || step === path[i])
}

/** A bound of the table as a number in the unit that figures are compared in. */
const bound = (text: string, dimension: Dimension | null): number => {
  if (dimension === null) return Number(text)
  const read = parseQuantity(text, dimension)
  if (!read.ok) throw new Error(`the table of usual figures holds "${text}", which is no ${dimension}`)
  return read.quantity.si
}

/** "40 to 350 bar": the unit once, where both have the same. */
const span = ({ least, most }: UsualFigure): string => {
  const [number = '', unit] = least.split(' ')
  return unit !== undefined && most.endsWith(` ${unit}`) ? `${number} to ${most}` : `${least} to ${most}`
}

const circuitOf = ([first, name]: readonly string[]): string =>
  first === 'circuits' && name !== undefined && name !== 'main' ? ` (circuit ${name})` : ''

const outside = (usual: readonly UsualFigure[], spec: unknown): readonly AskedAbout[] =>
  figuresIn(spec).flatMap(({ path, value }) => {
    const figure = usual.find(({ path: pattern }) => fits(pattern, path))
    if (figure === undefined) return []
    const [number, dimension] = typeof value === 'number' ? [value, null] : [value.si, value.dimension]
    if (number >= bound(figure.least, dimension) && number <= bound(figure.most, dimension)) return []
    const written = typeof value === 'number' ? String(value) : value.text
    return [
      {
        path: path.join('.'),
        option: null,
        written,
        usual: span(figure),
        text: `Is it right? ${figure.label}${circuitOf(path)}: ${written}, where small machines usually have ${span(figure)}.`,
        source: USUAL_SOURCE,
      },
    ]
  })

const asked = (path: string, written: string, usual: string, text: string): AskedAbout => ({
  path,
  option: null,
  written,
  usual,
  text: `Is it right? ${text}`,
  source: USUAL_SOURCE,
})

/** Ratio of ground contact to gauge of tracks that still turn and still stand. */
const CONTACT_OVER_GAUGE = { least: 0.7, most: 2.5 } as const

const askedOfTracks = ({ travel: { track } }: MachineSpec): readonly AskedAbout[] => {
  const [length, gauge] = [track?.['ground-contact-length'], track?.gauge]
  if (length == null || gauge == null) return []
  const ratio = length.si / gauge.si
  if (ratio >= CONTACT_OVER_GAUGE.least && ratio <= CONTACT_OVER_GAUGE.most) return []
  const usual = `${CONTACT_OVER_GAUGE.least} to ${CONTACT_OVER_GAUGE.most} times the gauge`
  const text = `length of track on the ground ${length.text} beside a gauge of ${gauge.text}; ${usual} is usual.`
  return [asked('travel.track.ground-contact-length', length.text, usual, text)]
}

/** Oil that worked for so long [s] is warmer than the air by at least so much [K]. */
const WORKED = { seconds: 1800, warmer: 3 } as const

const askedOfTemperatures = ({ site, measured }: ScenarioSpec): readonly AskedAbout[] => {
  const cold = site['coldest-start']
  const starts =
    cold != null && cold.si > site.ambient.si
      ? [
          asked(
            'site.coldest-start',
            cold.text,
            `not above ${site.ambient.text}`,
            `coldest start ${cold.text} above the air temperature of ${site.ambient.text}.`,
          ),
        ]
      : []
  const tank = measured?.['oil-temperature']
  const air = tank?.ambient ?? site.ambient
  if (tank == null || tank.after.si < WORKED.seconds || tank.reading.si >= air.si + WORKED.warmer) return starts
  const path = 'measured.oil-temperature.reading'
  const text = `oil of ${tank.reading.text} after ${tank.after.text} of work in air of ${air.text}.`
  return [...starts, asked(path, tank.reading.text, `warmer than ${air.text}`, text)]
}

/** Each place once: what it says first is enough. */
const once = (all: readonly AskedAbout[]): readonly AskedAbout[] =>
  all.filter(({ path }, i) => all.findIndex((other) => other.path === path) === i)

/** What is asked about a machine as it stands in its file, parts included. */
export const askedOfMachine = (spec: MachineSpec): readonly AskedAbout[] =>
  once([...outside(USUAL_OF_A_MACHINE, spec), ...askedOfTracks(spec)])

export const askedOfScenario = (spec: ScenarioSpec): readonly AskedAbout[] =>
  once([...askedOfTemperatures(spec), ...outside(USUAL_OF_A_SCENARIO, spec)])

/** What an option makes of the machine, where it was not asked about before. */
export const askedOfOption = (
  option: string,
  changed: MachineSpec,
  before: readonly AskedAbout[],
): readonly AskedAbout[] =>
  askedOfMachine(changed)
    .filter(({ text }) => !before.some((one) => one.text === text))
    .map((one) => ({ ...one, option, text: `${one.text.replace(/\.$/u, '')} (option “${option}”).` }))
