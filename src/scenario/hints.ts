/** What was probably meant: words that people use for a key, keys that belong elsewhere, values that want a group. */
import type { z } from 'zod'
import { isText } from './expected.ts'
import { didYouMean, type Path } from './problems.ts'
import { inside, keysAt, schemaAt } from './schema-walk.ts'

/** A path as a person reads it: "travel.track", "measured.flows 2". */
export const shownPath = (path: Path): string =>
  path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text} ${step + 1}`
    return text === '' ? step : `${text}.${step}`
  }, '')

type Meant = { readonly [word: string]: string }

/** Words of the yard for keys, by the group they are written in; a path where the key belongs elsewhere. */
const MEANT: { readonly [group: string]: Meant } = {
  machine: { weight: 'mass', model: 'name', kind: 'type', value: 'market-value', speed: 'design-travel-speed' },
  engine: {
    power: 'net-power',
    kw: 'net-power',
    hp: 'net-power',
    horsepower: 'net-power',
    speed: 'rated-speed',
    rpm: 'rated-speed',
    droop: 'governor-droop',
  },
  fluid: { oil: 'grade', type: 'grade', viscosity: 'viscosity-at-40C' },
  reservoir: { capacity: 'volume', size: 'volume', oil: 'volume', surface: 'cooling-surface', area: 'cooling-surface' },
  pump: { size: 'displacement', cc: 'displacement', pressure: 'max-pressure', speed: 'max-speed' },
  motor: { size: 'displacement', cc: 'displacement', pressure: 'max-pressure', speed: 'max-speed' },
  relief: { pressure: 'setting', set: 'setting', flow: 'rated-flow' },
  valve: { flow: 'rated-flow', drop: 'drop-at-rated-flow', pressure: 'max-pressure' },
  sprocket: { diameter: 'pitch-diameter' },
  track: { width: 'gauge', length: 'ground-contact-length' },
  wheel: { radius: 'rolling-radius' },
  lines: { feed: 'pressure', delivery: 'pressure', inlet: 'suction', tank: 'return' },
  circuit: {
    hoses: 'lines',
    hose: 'lines',
    motor: 'travel.motor',
    motors: 'travel.motor (its figures) and travel.motors (how many there are)',
  },
  line: { size: 'hose', dash: 'hose', diameter: 'bore', id: 'bore', type: 'kind', fittings: 'ends' },
  travel: { hoses: 'lines', hose: 'lines', wheels: 'wheel', tracks: 'track', ratio: 'final-drive-ratio' },
  site: { temperature: 'ambient', slope: 'steepest-grade', grade: 'steepest-grade', distance: 'trip', soil: 'ground' },
  measured: {
    run: 'travel',
    speed: 'travel',
    relief: 'relief-pressure',
    flow: 'flows',
    temperature: 'oil-temperature',
    oil: 'oil-temperature',
    rpm: 'engine-speed',
    engine: 'engine-speed',
    vacuum: 'inlet-pressure',
  },
  wants: { speed: 'travel-speed', oil: 'oil-below' },
  options: { change: 'changes', reason: 'why' },
  '': {
    oil: 'fluid',
    tank: 'reservoir',
    motor: 'travel.motor',
    motors: 'travel.motor (its figures) and travel.motors (how many there are)',
    pump: 'circuits.main.pump',
    pumps: 'circuits.main.pump',
    relief: 'circuits.main.relief',
    valve: 'circuits.main.valve',
    drives: 'circuits.main.drives',
    lines: 'circuits.main.lines (suction, pressure, return) and travel.lines',
    hoses: 'circuits.main.lines (suction, pressure, return) and travel.lines',
    hydraulics: 'circuits',
    circuit: 'circuits',
    brake: 'brakes',
    question: 'asked',
    client: 'customer',
    date: 'quote.date',
    readings: 'measured',
    measurements: 'measured',
    option: 'options',
    changes: 'options',
    temperature: 'site.ambient',
  },
}

/** Which group of words goes with a path: its last key, where that is no name of the writer's own. */
const groupOf = (path: Path): string => {
  const names = path.filter((step) => typeof step === 'string')
  const [last = '', above] = [names.at(-1), names.at(-2)]
  if (above === 'circuits') return 'circuit'
  return above === 'lines' ? 'line' : last
}

/** Every path at which a schema takes a key; of circuits under their usual name. */
const pathsOf = (schema: unknown, key: string, path: readonly string[] = []): readonly (readonly string[])[] => {
  const { shape, valueType } = inside(schema)
  if (path.length > 4) return []
  if (shape !== undefined)
    return Object.entries(shape).flatMap(([name, inner]) => [
      ...(name === key ? [path] : []),
      ...pathsOf(inner, key, [...path, name]),
    ])
  return valueType === undefined || path.at(-1) !== 'circuits' ? [] : pathsOf(valueType, key, [...path, 'main'])
}

const belongs = (key: string, schema: unknown): string | null => {
  const paths = pathsOf(schema, key).filter((path) => path.length > 0)
  const least = Math.min(...paths.map((path) => path.length))
  const shown = paths.filter((path) => path.length === least).map((path) => `"${path.join('.')}"`)
  return shown.length === 0 || shown.length > 3 ? null : `"${key}" belongs under ${shown.join(' or ')}`
}

/**
 * What an unknown key was probably meant to be: in other words, misspelt, or written in another place.
 * @param path of the group that the key stands in
 */
export const keyMeant = (key: string, path: Path, schema: unknown): string | null => {
  const known = keysAt(schema, path)
  const words = MEANT[groupOf(path)] ?? {}
  const meant = Object.hasOwn(words, key.toLowerCase()) ? words[key.toLowerCase()] : undefined
  if (meant !== undefined && known.includes(meant)) return `did you mean "${meant}"?`
  if (meant?.includes('.') && keysAt(schema, []).includes(meant.split('.')[0] ?? ''))
    return `it is written under ${meant.includes(' ') ? meant : `"${meant}"`}`
  return didYouMean(key, known) ?? belongs(key, schema)
}

/** Where a group of keys is wanted and one value stands: how it is written under the key that takes it; null else. */
export const groupFor = (value: unknown, path: Path, schema: unknown): string | null => {
  const { shape } = inside(schemaAt(schema, path))
  if (shape === undefined || (typeof value !== 'string' && typeof value !== 'number')) return null
  const takes = (key: string) => key !== 'part' && (shape[key] as z.ZodType).safeParse(value).success
  const needed = (key: string) => !(shape[key] as z.ZodType).safeParse(undefined).success
  const fitting = Object.keys(shape).filter(takes)
  // Any value is a text; a key that reads it as a figure is the likelier.
  const figures = fitting.filter((key) => !isText(shape[key]))
  const key = figures.find(needed) ?? figures[0] ?? fitting.find(needed) ?? fitting[0]
  if (key === undefined) return null
  const name = typeof path.at(-1) === 'string' ? `${path.at(-1)}: ` : ''
  return `write "${name}{${key}: ${String(value)}}"`
}
