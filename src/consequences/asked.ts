/**
 * What an option itself replaces or adds: the list of changes in plain words, the parts and jobs they take, and where a new
 * port no longer matches the hose that is screwed into it.
 */
import type { Change, Consequence } from '../evaluation.ts'
import type { Circuit, Machine, QuadraticRestriction } from '../machine.ts'
import type { Json } from '../question.ts'
import type { PartKind, Shop } from '../shop.ts'
import { lineUses } from './asked-lines.ts'
import { coolerBrings, filterBrings, joinCompanions, shiftLineBrings } from './companions.ts'
import { componentViews, type View } from './component-views.ts'
import { flowWords } from './names.ts'
import { type Job, type JobUse, joinUses, type PartUse, type Uses } from './uses.ts'

export interface AskedInput {
  readonly before: Machine
  readonly after: Machine
  /** The option's merge patch. */
  readonly changes: Json
  readonly shop: Shop
  /** Name of the option, where every chain begins. */
  readonly option: string
}

export interface AskedResult extends Uses {
  readonly changes: readonly Change[]
  /** Adapters, and what a cooler, a filter or two-speed motors bring with them. */
  readonly consequences: readonly Consequence[]
}

type Mapping = { readonly [key: string]: Json }

const mapping = (value: Json | undefined): Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Mapping) : {}

/** Small parts that the machine file names but no figure of the machine shows. */
const FITTED: readonly (readonly [component: string, kind: PartKind])[] = [
  ['breather', 'breather'],
  ['alternator', 'alternator'],
  ['lamp-set', 'lamp set'],
  ['thermostat', 'thermostat'],
  ['harness', 'harness'],
  ['cooler-bypass', 'oil cooler bypass'],
]

const fitted = (changes: Json, shop: Shop): { readonly changes: Change[]; readonly uses: PartUse[] } => {
  const found = FITTED.flatMap(([component, kind]) => {
    const id = mapping(mapping(changes)[component]).part
    const part = shop.parts.find((known) => known.id === id)
    if (part === undefined) return []
    const use: PartUse = { component, kind, part: part.id, what: part.name, quantity: 1 }
    return [{ change: { component, from: 'as it is', to: part.name }, use }]
  })
  return { changes: found.map(({ change }) => change), uses: found.map(({ use }) => use) }
}

/** Id of the part that a patch names at a place: the machine keeps none of a sprocket or a reservoir. */
const writtenPart = (changes: Json, path: readonly string[]): string | null => {
  let at: Json | undefined = changes
  for (const key of path) at = mapping(at)[key]
  const { part } = mapping(at)
  return typeof part === 'string' ? part : null
}

/** The patch writes something at, above or under a component. */
const isWritten = (changes: Json, path: readonly string[]): boolean => {
  let at: Json | undefined = changes
  for (const key of path) {
    const here = mapping(at)
    if (!(key in here)) return false
    at = here[key]
    if (typeof at !== 'object' || at === null || Array.isArray(at)) return true
  }
  return true
}

/** A component as it is before and after; one of the two may not be there. */
interface Pair {
  readonly component: string
  readonly was: View | null
  readonly is: View | null
  /** Part that takes the place. */
  readonly part: string | null
  /** Only what is set on it changes: a pressure, a place in the wind. */
  readonly onlySet: boolean
  /** It belongs to a circuit that was not there. */
  readonly inNewCircuit: boolean
}

/** Circuits that give the attachment over to one that was not there: their lines to it and what they work are no change of theirs. */
const givenOver = ({ before, after }: AskedInput): ReadonlySet<string> => {
  const works = (circuit: Circuit | undefined) => circuit?.works.includes('attachment') === true
  const isTaken = after.circuits.some((one) => works(one) && before.circuits.every(({ name }) => name !== one.name))
  const lost = before.circuits.filter(
    (one) => works(one) && !works(after.circuits.find(({ name }) => name === one.name)),
  )
  return new Set(isTaken ? lost.map(({ name }) => name) : [])
}

const changedPairs = (input: AskedInput): readonly Pair[] => {
  const over = givenOver(input)
  const was = componentViews(input.before, input.shop)
  const is = componentViews(input.after, input.shop)
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((component) => {
    const [one, other] = [was.get(component) ?? null, is.get(component) ?? null]
    const path = (other ?? one)?.path ?? []
    if (one?.signature === other?.signature || !isWritten(input.changes, path)) return []
    const part = other?.part ?? writtenPart(input.changes, path)
    const onlySet = part === (one?.part ?? null) && one !== null && other !== null && one.fixed === other.fixed
    const [top, name] = path
    const inNewCircuit = top === 'circuits' && !was.has(`circuits.${name}.pump`)
    // What a new circuit is for goes with its name; it is no part that changes.
    if (inNewCircuit && other?.kind === null) return []
    const isGiven = name !== undefined && over.has(name) && ['auxiliary', 'works'].includes(path[2] ?? '')
    if (top === 'circuits' && isGiven && (other === null || path[2] === 'works')) return []
    return [{ component, was: one, is: other, part, onlySet, inNewCircuit }]
  })
}

/** Of these the machine keeps no part, so that its own words are figures; what is fitted has a name on the list. */
const NAMED_BY_PATCH: ReadonlySet<PartKind | null> = new Set(['sprocket', 'reservoir'] as const)

const changeOf = ({ component, was, is, part }: Pair, shop: Shop): Change => {
  const fitted = NAMED_BY_PATCH.has(is?.kind ?? null) ? shop.parts.find(({ id }) => id === part)?.name : undefined
  const from = was?.words ?? 'none'
  const to = fitted ?? is?.words ?? 'none'
  return { component, from, to: from === to ? `${to}, other figures` : to }
}

const jobsOf = ({ component, was, is, onlySet, inNewCircuit }: Pair, machine: Machine): readonly JobUse[] => {
  if (is === null) return []
  const job = (name: Job, quantity = 1): JobUse[] => [{ component, job: name, quantity }]
  if (is.kind === 'pump' || is.kind === 'tandem pump') return job(was === null ? 'fit second pump' : 'replace pump')
  // Fitting a second pump is the whole circuit: valve, relief, coupling and hoses.
  if (inNewCircuit) return []
  if (is.kind === 'relief') return job(onlySet ? 'set relief' : 'replace relief')
  if (onlySet) return []
  if (is.kind === 'motor') return job('replace motor', machine.travel.motors)
  if (is.kind === 'sprocket') return job('replace sprocket', machine.travel.motors)
  const jobs: { readonly [kind in PartKind]?: Job } = {
    swivel: 'replace swivel',
    valve: 'replace valve',
    coupling: 'replace coupling',
    cooler: 'fit cooler',
    filter: 'fit filter',
    // The strainer sits in the tank, which is drained for it; so is the tank itself.
    strainer: 'change oil',
    reservoir: 'change oil',
    oil: 'change oil',
  }
  const name = is.kind === null ? undefined : jobs[is.kind]
  return name === undefined ? [] : job(name)
}

/** Pieces of a part that a component stands for: motors and sprockets come on every side. */
const piecesOf = (kind: PartKind, machine: Machine): number =>
  kind === 'motor' || kind === 'sprocket' ? machine.travel.motors : 1

const partsOf = ({ component, was, is, part, onlySet }: Pair, machine: Machine): readonly PartUse[] => {
  // Oil is counted by what the jobs drain, hoses with their ends; a setting is no part.
  if (is === null || is.kind === null || is.kind === 'oil' || is.kind === 'hose' || onlySet) return []
  if (part !== null && part === was?.part && is.section === was?.section) return []
  return [{ component, kind: is.kind, part, what: is.name, quantity: piecesOf(is.kind, machine) }]
}

/** One tandem pump has a section in each circuit, but is bought and fitted once: as a second pump where it is one. */
const tandemsOnce = <T extends PartUse | JobUse>(
  list: readonly T[],
  is: (component: string) => View | null,
): readonly T[] => {
  const seen = new Set<string>()
  const second = (use: T): number => ('job' in use && use.job === 'fit second pump' ? 0 : 1)
  return list
    .toSorted((one, other) => second(one) - second(other))
    .filter(({ component }) => {
      const view = is(component)
      if (view?.kind !== 'tandem pump' || view.part === null) return true
      if (seen.has(view.part)) return false
      seen.add(view.part)
      return true
    })
}

const companions = (input: AskedInput) => {
  const { before, after, changes, shop, option } = input
  const named = new Set(Object.keys(mapping(changes)))
  const because: readonly string[] = []
  const chain = [option]
  const hadTwoSpeeds = before.travel.motor.secondDisplacement !== null
  return joinCompanions([
    ...(after.cooler !== null && before.cooler === null
      ? [coolerBrings(after.cooler.part, after, shop, named, true, because, chain)]
      : []),
    ...(after.filter !== null && before.filter === null
      ? [filterBrings(after, shop, named, true, because, chain)]
      : []),
    ...(after.travel.motor.secondDisplacement !== null && !hadTwoSpeeds
      ? [shiftLineBrings(after, shop, because, chain)]
      : []),
  ])
}

/** The format knows neither part nor job for quick couplers: both stay visible, a pair a circuit, without a price. */
const couplers = ({ before, after }: AskedInput): { readonly changes: Change[]; readonly uses: PartUse[] } => {
  const words = (coupler: QuadraticRestriction | null) =>
    coupler === null ? 'none' : `quick couplers, ${flowWords(coupler.flow)}`
  // Those of a circuit that lost its lines to the attachment change over to the new one.
  const left = before.circuits.find(
    ({ name, auxiliary }) =>
      auxiliary !== null && after.circuits.some((one) => one.name === name && one.auxiliary === null),
  )
  const found = after.circuits.flatMap((circuit) => {
    const is = circuit.auxiliary?.coupler ?? null
    const same = before.circuits.find(({ name }) => name === circuit.name) ?? left
    const was = same?.auxiliary?.coupler ?? null
    if (is === null || (was !== null && was.flow === is.flow && was.drop === is.drop)) return []
    const component = `circuits.${circuit.name}.auxiliary.coupler`
    const use: PartUse = {
      component,
      kind: 'fitting',
      part: null,
      what: `Quick couplers, ${flowWords(is.flow)}, and fitting them`,
      quantity: 2,
    }
    return [{ change: { component, from: words(was), to: words(is) }, use }]
  })
  return { changes: found.map(({ change }) => change), uses: found.map(({ use }) => use) }
}

/**
 * Lists what the option itself changes and what that takes.
 * @param input the machine before and as asked (both calibrated alike), the patch, the shop
 * @returns changes in words; parts, jobs; consequences of the change itself: adapters and companions
 */
export const askedChanges = (input: AskedInput): AskedResult => {
  const { after, changes, shop } = input
  const pairs = changedPairs(input)
  const views = new Map(pairs.map((pair) => [pair.component, pair.is]))
  const viewOf = (component: string) => views.get(component) ?? null
  const small = fitted(changes, shop)
  const coupled = couplers(input)
  const lines = lineUses(input, pairs)
  const brought = companions(input)
  const own: Uses = {
    uses: tandemsOnce(
      pairs.flatMap((pair) => partsOf(pair, after)),
      viewOf,
    ),
    jobs: tandemsOnce(
      pairs.flatMap((pair) => jobsOf(pair, after)),
      viewOf,
    ),
  }
  return {
    ...joinUses([own, { uses: [...small.uses, ...coupled.uses], jobs: [] }, lines, brought]),
    changes: [...pairs.map((pair) => changeOf(pair, input.shop)), ...small.changes, ...coupled.changes],
    consequences: [...lines.consequences, ...brought.consequences],
  }
}
