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

/** Names that are given once; one that comes again gets a number. Disks that do not tell capitals apart are thought of. */
const distinct = (): ((name: string) => string) => {
  const taken = new Set<string>()
  return (name) => {
    let own = name
    for (let count = 2; taken.has(own.toLowerCase()); count++) own = `${name}-${count}`
    taken.add(own.toLowerCase())
    return own
  }
}

/** Every question of every scenario, each with a folder of its own. */
export const tasksOf = (named: readonly string[], cwd: string): Tasks => {
  const own = distinct()
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
