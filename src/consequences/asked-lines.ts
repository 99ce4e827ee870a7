/** Hoses of an option as asked: those that it makes new, and those that stay on a port that it changed. */
import type { Consequence } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { type LinePlace, linePlaces } from './line-places.ts'
import { adaptHose, hadOf, type LineWork, likeHose, newHose } from './line-work.ts'
import { inWords } from './names.ts'
import { joinUses, type Uses } from './uses.ts'

export interface AskedLines {
  readonly before: Machine
  readonly after: Machine
  readonly shop: Shop
  readonly option: string
}

/** A line that the option changes itself. */
export interface ChangedLine {
  readonly component: string
  /** It belongs to a circuit that was not there: its hoses are part of fitting the second pump. */
  readonly inNewCircuit: boolean
}

/** How far the joints of a line bring something with them: a part, one that is to be had nowhere, a port that is too small. */
const lineConsequence = (
  place: LinePlace,
  work: LineWork,
  isNew: boolean,
  { after, shop, option }: AskedLines,
): readonly Consequence[] => {
  const { available, specialOrder, lacking } = hadOf(work, shop, isNew)
  const remade = !isNew && work.jobs.length > 0
  const isJoined = work.uses.some(({ kind }) => kind === 'adapter')
  if (!remade && !isJoined && lacking.length === 0 && work.tooSmall.length === 0) return []
  // What is to be had nowhere is told before what is.
  const kind = remade ? 'hose' : (lacking[0]?.kind ?? (isJoined ? 'adapter' : 'hose'))
  const told = (remade || lacking.length === 0 ? work.uses : lacking).filter((use) => use.kind === kind)
  const name = inWords(place.line.id, after)
  const joined = isNew ? `${name} joined to its ports` : `${name} joined to the new port`
  const small = work.tooSmall.map(
    ({ owner, connection }) =>
      `${inWords(owner, after)} with ${connection.text}: more than one size below the hose, and it stays`,
  )
  return [
    {
      component: place.line.id,
      kind,
      action: remade ? 'replace' : 'adapt',
      part: told[0]?.part ?? null,
      quantity: kind === 'hose' ? place.count : told.reduce((sum, { quantity }) => sum + quantity, 0),
      because: [],
      connections: work.connections,
      available,
      specialOrder,
      chain: [option, joined, ...lacking.map(({ what }) => `not on the list: ${what}`), ...small],
    },
  ]
}

/** Lines that the option makes new, and lines that stay on a port that it changed. */
export const lineUses = (
  input: AskedLines,
  pairs: readonly ChangedLine[],
): Uses & { readonly consequences: readonly Consequence[] } => {
  const { before, after, shop } = input
  const were = new Map(linePlaces(before).map((place) => [place.line.id, place]))
  const changed = new Set(pairs.map(({ component }) => component))
  const works = linePlaces(after).flatMap((place) => {
    const was = were.get(place.line.id) ?? null
    const { line } = place
    if (changed.has(line.id)) {
      const part = shop.parts.find(({ id }) => id === line.part) ?? likeHose(line, shop)?.part ?? null
      const what = `${line.kind ?? 'Hose'}${line.dash === null ? '' : ` -${line.dash}`}, metre`
      const work = newHose(place, was, { part, what, dash: line.dash, bore: line.bore }, shop)
      const inNewCircuit = pairs.some((pair) => pair.component === line.id && pair.inNewCircuit)
      const consequences = lineConsequence(place, work, true, input)
      return [{ work: inNewCircuit ? { ...work, jobs: [] } : work, consequences }]
    }
    const work = was === null ? null : adaptHose(place, was, shop)
    if (work === null) return []
    return [{ work, consequences: lineConsequence(place, work, false, input) }]
  })
  return {
    ...joinUses(works.map(({ work }) => work)),
    consequences: works.flatMap(({ consequences }) => consequences),
  }
}
