/**
 * Merge patches over the machine file (RFC 7396) with parts by id: a patch that names a part replaces that component whole
 * before the figures beside it are merged; of a line only the hose changes, of a relief the setting stays.
 */
import type { Json } from '../question.ts'
import type { Part, PartKind } from '../shop.ts'
import { didYouMean, type Flaw, type Path } from './problems.ts'

export type Mapping = { readonly [key: string]: Json }

export const isMapping = (value: Json | undefined): value is Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Which kinds of part fit a place of the machine; null where no part can be named. */
export const kindsFor = (path: Path): readonly PartKind[] | null => {
  const [top, ...rest] = path.map(String)
  const last = rest.at(-1) ?? top
  if (top === 'circuits') {
    if (rest.length === 2 && last === 'pump') return ['pump', 'tandem pump']
    if (rest.length === 2 && last === 'coupling') return ['coupling']
    if (rest.length === 2 && last === 'relief') return ['relief']
    if (rest.length === 2 && last === 'valve') return ['valve']
    return rest.at(-2) === 'lines' ? ['hose'] : null
  }
  if (top === 'travel') {
    if (last === 'motor') return ['motor']
    if (last === 'swivel') return ['swivel']
    if (last === 'sprocket') return ['sprocket']
    return rest.at(-2) === 'lines' || rest.at(0) === 'lines' ? ['hose'] : null
  }
  if (rest.length > 0) return null
  const places: { readonly [key: string]: PartKind } = {
    filter: 'filter',
    cooler: 'cooler',
    strainer: 'strainer',
    reservoir: 'reservoir',
    fluid: 'oil',
    breather: 'breather',
    alternator: 'alternator',
    'lamp-set': 'lamp set',
    thermostat: 'thermostat',
    harness: 'harness',
    'cooler-bypass': 'oil cooler bypass',
  }
  const kind = top === undefined ? undefined : places[top]
  return kind === undefined ? null : [kind]
}

/** What of the old component stays when a part takes its place. */
const STAYS: { readonly [kind in PartKind]?: readonly string[] } = {
  hose: ['length', 'elbows', 'ends'],
  relief: ['setting', 'override'],
  reservoir: ['setting', 'heat-transfer'],
}

const pick = (from: Mapping, keys: readonly string[]): Mapping =>
  Object.fromEntries(Object.entries(from).filter(([key]) => keys.includes(key)))

/** Figures of a part as they stand in the machine; of a tandem, those of one section with the mount of the whole. */
const figuresOf = (part: Part, section: number | null): Mapping | null => {
  if (part.kind !== 'tandem pump') return part.figures
  const { sections, ...whole } = part.figures
  const one = Array.isArray(sections) ? sections[(section ?? 0) - 1] : undefined
  return isMapping(one) ? { ...one, ...whole } : null
}

export interface Patching {
  readonly parts: readonly Part[]
  readonly flaws: Flaw[]
  /** Parts that are on the list, and could not be read: what is wrong with them is told elsewhere. */
  readonly isUnread?: (id: string) => boolean
  /** Components that name such a part. */
  readonly unread?: Path[]
}

const place = (target: Json | undefined, patch: Mapping, path: Path, into: Patching): Mapping => {
  const id = String(patch.part)
  const part = into.parts.find((known) => known.id === id)
  const kinds = kindsFor(path)
  const at = [...path, 'part']
  const none: Mapping = isMapping(target) ? target : {}
  if (kinds === null) {
    into.flaws.push({
      code: 'part-of-wrong-kind',
      path: at,
      message: `no part can be named for "${path.at(-1)}"`,
      expected: 'figures',
      remedy: null,
    })
    return none
  }
  const fitting = into.parts.filter((known) => kinds.includes(known.kind)).map((known) => known.id)
  if (part === undefined && into.isUnread?.(id)) {
    into.unread?.push(path)
    return none
  }
  if (part === undefined) {
    into.flaws.push({
      code: 'part-unknown',
      path: at,
      message: `there is no part "${id}" on the parts list`,
      expected:
        fitting.length > 0
          ? `a part such as ${fitting.slice(0, 12).join(', ')}`
          : `a part of the kind ${kinds.join(' or ')}`,
      remedy: didYouMean(
        id,
        into.parts.map((known) => known.id),
      ),
    })
    return none
  }
  if (!kinds.includes(part.kind)) {
    into.flaws.push({
      code: 'part-of-wrong-kind',
      path: at,
      message: `"${id}" is a ${part.kind}, and a ${kinds.join(' or ')} belongs here`,
      expected: fitting.slice(0, 12).join(', ') || null,
      remedy: null,
    })
    return none
  }
  const section = typeof patch.section === 'number' ? patch.section : null
  if (part.kind !== 'tandem pump' && patch.section !== undefined && patch.section !== null)
    into.flaws.push({
      code: 'section-unknown',
      path: [...path, 'section'],
      message: `"${id}" is a single pump and has no sections`,
      expected: 'no section',
      remedy: null,
    })
  const figures = figuresOf(part, section)
  if (figures === null) {
    into.flaws.push({
      code: 'section-unknown',
      path: [...path, section === null ? 'part' : 'section'],
      message:
        section === null ? `"${id}" is a tandem pump; say which section` : `"${id}" has no section ${String(section)}`,
      expected: 'section: 1, section: 2 …',
      remedy: null,
    })
    return none
  }
  const stays = withoutRivals(pick(none, STAYS[part.kind] ?? []), figures, path)
  return { ...stays, ...figures, part: id, ...(part.kind === 'tandem pump' ? { section } : {}) }
}

/** Another section of the tandem that is there: as if its part were named again. */
const namesSection = (target: Json | undefined, patch: Mapping): boolean =>
  'section' in patch && isMapping(target) && typeof target.part === 'string'

/** What belongs to the hose that was there, and not to another one: its rating above all. */
const OF_THE_OLD_HOSE = ['part', 'bore', 'max-pressure', 'min-bend-radius']

/** Of a component that can be stated in two ways: what the first keys say takes the place of what the second said. */
const RIVALS = new Map<string, readonly (readonly [readonly string[], readonly string[]])[]>(
  Object.entries({
    fluid: [
      [['grade'], ['part', 'viscosity-at-40C', 'viscosity-at-100C', 'viscosity-index']],
      [['viscosity-index'], ['viscosity-at-100C']],
      [['viscosity-at-100C'], ['viscosity-index']],
    ],
    reservoir: [
      [['setting'], ['heat-transfer']],
      [['heat-transfer'], ['setting']],
    ],
    'travel.sprocket': [
      [['pitch-diameter'], ['teeth', 'pitch', 'links-per-turn']],
      [['teeth', 'pitch', 'links-per-turn'], ['pitch-diameter']],
    ],
  }),
)

/** What stays of a component when other figures are written over it: nothing that they say in another way. */
const withoutRivals = (old: Mapping, written: Mapping, path: Path): Mapping => {
  const gone = (RIVALS.get(path.join('.')) ?? [])
    .filter(([keys]) => keys.some((key) => (written[key] ?? null) !== null))
    .flatMap(([, rivals]) => rivals)
    .filter((key) => key !== 'part' || !('part' in written))
  return gone.length === 0 ? old : Object.fromEntries(Object.entries(old).filter(([key]) => !gone.includes(key)))
}

/** The component as a patch without a part finds it: another size or kind of hose does not keep the old one's rating. */
const kept = (old: Mapping, patch: Mapping, path: Path): Mapping => {
  // A line that becomes one with another's leaves its own figures behind.
  if (typeof patch['same-as'] === 'string') return {}
  const otherHose = kindsFor(path)?.[0] === 'hose' && ('hose' in patch || 'kind' in patch)
  return otherHose ? Object.fromEntries(Object.entries(old).filter(([key]) => !OF_THE_OLD_HOSE.includes(key))) : old
}

const merge = (target: Json | undefined, patch: Json, path: Path, into: Patching): Json => {
  if (!isMapping(patch)) return patch
  if (isMapping(target) && typeof target['same-as'] === 'string' && !('same-as' in patch)) {
    into.flaws.push({
      code: 'shared-line-patched',
      path,
      atKey: true,
      message: `this line is one with that of "${target['same-as']}"`,
      expected: `the change under "${target['same-as']}", or "same-as: null" with a line of its own`,
      remedy: null,
    })
    return target
  }
  const named = typeof patch.part === 'string' || namesSection(target, patch)
  const old: Mapping = isMapping(target) ? target : {}
  const base = named ? place(target, { part: old.part ?? null, ...patch }, path, into) : kept(old, patch, path)
  const result: { [key: string]: Json } = { ...withoutRivals(base, patch, path) }
  for (const [key, value] of Object.entries(patch)) {
    if (key === '__proto__' || (named && (key === 'part' || key === 'section'))) continue
    if (value === null) delete result[key]
    else result[key] = merge(result[key], value, [...path, key], into)
  }
  return result
}

/** Applies a patch to plain data; flaws are gathered with their path in the machine. */
export const applyPatch = (target: Json, patch: Json, into: Patching): Json => merge(target, patch, [], into)
