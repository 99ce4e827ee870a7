/**
 * Plain names for the ids and paths of the machine file: "circuits.left.pump" is "left pump". The words themselves are in
 * wording.ts; here is only which of them belongs to which id.
 */
import { en } from './wording.ts'

export interface PlainName {
  readonly name: string
  /** What it is, for someone who does not know the word; '' where the word says it. */
  readonly gloss: string
  /** What is left of the id behind the component: "efficiency.volumetric"; '' for a component. */
  readonly rest: string
}

const spaced = (text: string) => text.replaceAll('-', ' ').replaceAll('.', ', ')

/** The longest known beginning of these segments. */
const known = (segments: readonly string[], prefix: string): { key: string; used: number } | null => {
  for (let used = segments.length; used > 0; used -= 1) {
    const key = prefix + segments.slice(0, used).join('.')
    if (en.components[key] !== undefined) return { key, used }
  }
  return null
}

const travelLine = (segments: readonly string[]): PlainName => ({
  name: en.travelHose(spaced(segments[1] ?? '')),
  gloss: '',
  rest: segments.slice(2).join('.'),
})

const named = (segments: readonly string[], prefix: string): PlainName => {
  const found = known(segments, prefix)
  const [name, gloss] = (found === null ? undefined : en.components[found.key]) ?? [spaced(segments[0] ?? ''), '']
  return { name, gloss, rest: segments.slice(found?.used ?? 1).join('.') }
}

/**
 * Name of a component or of a path in the machine file.
 * @param id "circuits.main.pump", "travel.lines.swivel-to-motor", "cooler", "engine.torque-rise"
 */
export const plainName = (id: string): PlainName => {
  const [first = '', second = '', ...others] = id.split('.')
  if (first === 'travel') {
    if (second === 'lines' && others.length > 0) return travelLine([second, ...others])
    return second === '' ? named(['travel'], '') : named([second, ...others], 'travel.')
  }
  if (first !== 'circuits' || second === '') return named(id.split('.'), '')
  const inside = others.length === 0 ? named(['circuit'], '') : named(others, '')
  return second === 'main' ? inside : { ...inside, name: en.ofCircuit(inside.name, second) }
}

/** Name of a component for running text. */
export const componentName = (id: string): string => plainName(id).name

/** Name of a figure in the machine or scenario file: "pump: lowest pressure at its inlet". */
export const pathName = (path: string): string => {
  const { name, rest } = plainName(path)
  if (rest === '') return en.capital(name)
  return en.capital(`${name}: ${en.paths[rest] ?? spaced(rest)}`)
}
