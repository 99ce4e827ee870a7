/**
 * A machine file with its parts and patches: merged, checked against the schema and across its fields, located problems
 * or a machine ready to be resolved.
 */
import type { Draw, PreparedMachine } from '../loaded.ts'
import type { Json } from '../question.ts'
import type { Part } from '../shop.ts'
import { withoutBlanks } from './blanks.ts'
import { flawsOf } from './flaws.ts'
import { crossFlaws } from './machine-flaws.ts'
import { type MachineSpec, machineFile } from './machine-schema.ts'
import { applyPatch, type Patching } from './patch.ts'
import type { Flaw, Path } from './problems.ts'
import { resolveMachine } from './resolve-machine.ts'
import { keysAt, schemaAt } from './schema-walk.ts'
import { soundPart, type Unclear, unclearAt } from './sound.ts'
import { strayNames, strayRemovals } from './strays.ts'

export type MergedMachine =
  | { readonly spec: MachineSpec; readonly data: Json }
  | {
      /** None where the only thing wrong is a part that could not be read. */
      readonly flaws: readonly Flaw[]
      readonly data: Json
      /** Without what is wrong: to be read only where it is not unclear. */
      readonly sound: MachineSpec
      readonly unclear: Unclear
    }

/** True of a flaw that lies in none of the places. */
const outside =
  (places: readonly Path[]) =>
  (flaw: Flaw): boolean =>
    !places.some((path) => path.every((step, i) => flaw.path[i] === step))

/** Of a part that no place can take: where the place itself is unknown, its key is the mistake, and is told by the schema. */
const ofKnownPlaces = (flaws: readonly Flaw[]): readonly Flaw[] =>
  flaws.filter(
    ({ code, path }) => code !== 'part-of-wrong-kind' || schemaAt(machineFile, path.slice(0, -1)) !== undefined,
  )

/**
 * Merges patches over a machine file and checks the result.
 * @param machine plain data of the machine file
 * @param isUnread parts that are on the list and could not be read; nothing is said of a component that names one
 * @returns the checked file, or every flaw with its path in the machine
 */
export const mergeMachine = (
  machine: Json,
  patches: readonly Json[],
  parts: readonly Part[],
  isUnread: (id: string) => boolean = () => false,
): MergedMachine => {
  const unread: Path[] = []
  const into: Patching = { parts, flaws: [], isUnread, unread }
  let data = applyPatch({}, withoutBlanks(machine, machineFile), into)
  const strays: Flaw[] = []
  for (const patch of patches) {
    strays.push(...strayNames(data, patch), ...strayRemovals(patch, (path) => keysAt(machineFile, path)))
    data = applyPatch(data, patch, into)
  }
  const found = ofKnownPlaces(into.flaws)
  // What is wrong inside a misspelt name, or where a part could not be placed, says nothing that this does not.
  const unplaced = [...strays.map(({ path }) => path), ...found.map(({ path }) => path.slice(0, -1)), ...unread]
  const read = machineFile.safeParse(data)
  const shape = read.success ? [] : flawsOf(read.error, data, machineFile).filter(outside(unplaced))
  const unclear = unclearAt([...unplaced, ...shape.map(({ path }) => path)])
  // What is missing in it is unclear, and no check reads there.
  const sound = (read.success ? read.data : (soundPart(machineFile, data) ?? {})) as MachineSpec
  const flaws = [...found, ...strays, ...shape, ...crossFlaws(sound, unclear)]
  return read.success && flaws.length === 0 && unread.length === 0
    ? { spec: read.data, data }
    : { flaws, data, sound, unclear }
}

/**
 * What is wrong with a patch whatever the machine is, where the machine file could not be read: parts, keys and values.
 * @returns flaws with their path in the machine; nothing of what a machine may have, or may be missing
 */
export const patchFlaws = (patch: Json, parts: readonly Part[], isUnread: (id: string) => boolean): readonly Flaw[] => {
  const unread: Path[] = []
  const into: Patching = { parts, flaws: [], isUnread, unread }
  const data = applyPatch({}, patch, into)
  const found = ofKnownPlaces(into.flaws)
  const strays = strayRemovals(patch, (path) => keysAt(machineFile, path))
  const read = machineFile.safeParse(data)
  const shape = read.success ? [] : flawsOf(read.error, data, machineFile)
  const isOutside = outside([...found.map(({ path }) => path.slice(0, -1)), ...unread])
  return [...found, ...strays, ...shape.filter((flaw) => flaw.code !== 'key-missing' && isOutside(flaw))]
}

/** A merged machine as a function of a draw. */
export const prepared = (spec: MachineSpec): PreparedMachine => ({
  resolve: (draw?: Draw) => resolveMachine(spec, draw ?? null),
})
