/** Names in a patch that the machine does not have: misspelt ones, and figures for a component that is not there. */
import type { Json } from '../question.ts'
import { isMapping, type Mapping } from './patch.ts'
import { didYouMean, type Flaw, oneOf, type Path } from './problems.ts'

/** One component of a patch, where the patch writes figures for it. */
const onlyKey = (data: Json, key: string): Json =>
  isMapping(data) && isMapping(data[key]) ? { [key]: data[key] ?? null } : {}

/**
 * Keys that a patch takes out though no machine can have them: removing is the one change that the schema never sees.
 * @param keysAt keys that the machine file takes at a path; none where names are free
 */
export const strayRemovals = (patch: Json, keysAt: (path: Path) => readonly string[], path: Path = []): Flaw[] => {
  if (!isMapping(patch)) return []
  const known = keysAt(path)
  return Object.entries(patch).flatMap(([key, value]): Flaw[] => {
    if (value !== null) return strayRemovals(value, keysAt, [...path, key])
    if (known.length === 0 || known.includes(key)) return []
    const at = [...path, key]
    return [
      {
        code: 'path-unknown',
        path: at,
        atKey: true,
        message: `the machine has no "${at.join('.')}" to take out`,
        expected: oneOf(known),
        remedy: didYouMean(key, known),
      },
    ]
  })
}

/**
 * Names in a patch that the machine does not have and that do not stand for a whole new thing: a misspelt circuit or work
 * line would else be added as a fragment.
 */
export const strayNames = (target: Json, patch: Json): Flaw[] => {
  const stray = (
    names: Json | undefined,
    known: Json | undefined,
    path: Path,
    whole: (value: Mapping) => boolean,
  ): Flaw[] => {
    if (!isMapping(names)) return []
    const has = isMapping(known) ? Object.keys(known) : []
    return Object.entries(names).flatMap(([name, value]) =>
      has.includes(name) || (isMapping(value) && whole(value))
        ? []
        : [
            {
              code: 'path-unknown' as const,
              path: [...path, name],
              atKey: true,
              message: `the machine has no "${[...path, name].join('.')}"`,
              expected: has.length > 0 ? has.map((h) => `"${h}"`).join(', ') : null,
              remedy: didYouMean(name, has),
            },
          ],
    )
  }
  const of = (data: Json, key: string): Json | undefined => (isMapping(data) ? data[key] : undefined)
  const lines = (data: Json): Json | undefined => {
    const travel = of(data, 'travel')
    return travel === undefined ? undefined : of(travel, 'lines')
  }
  const circuits = (data: Json): Mapping => {
    const all = of(data, 'circuits')
    return isMapping(all) ? all : {}
  }
  const valves = Object.keys(circuits(patch)).flatMap((name) => {
    const [changed, known] = [circuits(patch)[name], circuits(target)[name]]
    return isMapping(changed) && isMapping(known)
      ? stray(onlyKey(changed, 'valve'), known, ['circuits', name], (value) => 'part' in value || 'rated-flow' in value)
      : []
  })
  const travel = (data: Json): Json => of(data, 'travel') ?? null
  return [
    ...valves,
    ...stray(
      onlyKey(patch, 'filter'),
      target,
      [],
      (value) => 'part' in value || 'rated-flow' in value || 'drop' in value,
    ),
    ...stray(
      onlyKey(travel(patch), 'swivel'),
      travel(target),
      ['travel'],
      (value) => 'part' in value || ('passages' in value && ('bore' in value || 'drop-at' in value)),
    ),
    ...stray(
      of(patch, 'circuits'),
      of(target, 'circuits'),
      ['circuits'],
      (value) => 'pump' in value && 'drives' in value,
    ),
    ...stray(lines(patch), lines(target), ['travel', 'lines'], (value) => 'length' in value),
  ]
}
