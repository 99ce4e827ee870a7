/** Hoses of an option as asked: those that it makes new, and those that stay on a port that it changed. */
import type { Consequence } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { type LinePlace, linePlaces } from './line-places.ts'
import { adaptHose, isMade, likeHose, newHose } from './line-work.ts'
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

const lineConsequence = (
  place: LinePlace,
  work: ReturnType<typeof newHose>,
  remade: boolean,
  chain: readonly string[],
  input: AskedLines,
): readonly Consequence[] => {
  const joints = work.connections.filter(({ adapter, from, to }) => adapter !== null || from !== to)
  if (joints.length === 0 && !remade) return []
  const kind = remade ? 'hose' : 'adapter'
  const part = work.uses.find((use) => use.kind === kind)
  const made = isMade(work)
  return [
    {
      component: place.line.id,
      kind,
      action: remade ? 'replace' : 'adapt',
      part: part?.part ?? null,
      quantity: remade ? place.count : joints.length * place.count,
      because: [],
      connections: work.connections,
      available: made,
      // A joint that the list cannot make is made up to order; it stays unpriced and visible.
      specialOrder: !made,
      chain: [...chain, `${inWords(place.line.id, input.after)} joined to the new port`],
    },
  ]
}

/** Lines that the option makes new, and lines that stay on a port that it changed. */
export const lineUses = (
  input: AskedLines,
  pairs: readonly ChangedLine[],
): Uses & { readonly consequences: readonly Consequence[] } => {
  const { before, after, shop, option } = input
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
      const extra = work.connections.some(({ adapter }) => adapter !== null)
      const consequences = extra ? lineConsequence(place, work, false, [option], input) : []
      return [{ work: inNewCircuit ? { ...work, jobs: [] } : work, consequences }]
    }
    const work = was === null ? null : adaptHose(place, was, shop)
    if (work === null) return []
    return [{ work, consequences: lineConsequence(place, work, work.jobs.length > 0, [option], input) }]
  })
  return {
    ...joinUses(works.map(({ work }) => work)),
    consequences: works.flatMap(({ consequences }) => consequences),
  }
}
