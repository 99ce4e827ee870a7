/** From the arguments to the list of reports: files, folders of them, fleets; each with a folder of its own. */
import { folderName } from './folder-name.ts'
import { scenariosIn, unitsOf } from './load.ts'

export interface Task {
  readonly scenario: string
  /** Name and place of the unit of a fleet; null for a scenario that is none. */
  readonly unit: { readonly name: string; readonly index: number } | null
  /** Under the output folder; a unit of a fleet has one inside its fleet's. */
  readonly folder: string
}

const slug = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .toLowerCase() || 'unit'

export interface Tasks {
  readonly tasks: readonly Task[]
  /** Folders that were named and hold no scenario. */
  readonly empty: readonly string[]
}

/** Every question of every scenario, each with a folder of its own; a name that comes again gets a number. */
export const tasksOf = (named: readonly string[], cwd: string): Tasks => {
  const seen = new Map<string, number>()
  const own = (name: string): string => {
    const count = (seen.get(name) ?? 0) + 1
    seen.set(name, count)
    return count === 1 ? name : `${name}-${count}`
  }
  const empty: string[] = []
  const scenarios = named.flatMap((path) => {
    const inside = scenariosIn(path, cwd)
    if (inside?.length === 0) empty.push(path)
    return inside ?? [path]
  })
  const tasks = scenarios.flatMap((scenario): readonly Task[] => {
    const units = unitsOf(scenario, cwd)
    const base = own(folderName(scenario))
    if (units === null) return [{ scenario, unit: null, folder: base }]
    return units.map((name, index) => ({ scenario, unit: { name, index }, folder: own(`${base}/${slug(name)}`) }))
  })
  return { tasks, empty }
}
