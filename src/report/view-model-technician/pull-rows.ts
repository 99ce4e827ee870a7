/** The parts to pull as rows, each with its joints, and what the notes under the table say of them. */

import type { Joint, Pull, Tightening } from '../../work-order.ts'
import { count, quantity, span, typeset, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'
import { technician } from '../wording-technician.ts'

export interface JointRow {
  readonly where: string
  readonly connection: string
  readonly standard: string
  readonly tighten: string
  /** Letter of its source, '' where it has none. */
  readonly mark: string
}

export interface PullRow {
  readonly number: string
  readonly what: string
  readonly notes: readonly string[]
  readonly quantity: string
  readonly length: string
  readonly bore: string
  readonly rated: string
  readonly shelf: string
  readonly joints: readonly JointRow[]
}

export interface PullsView {
  readonly words: typeof technician.pull
  readonly rows: readonly PullRow[]
  readonly hasRows: boolean
  readonly sources: readonly { readonly mark: string; readonly source: string }[]
  readonly hasSources: boolean
  readonly twice: readonly string[]
  readonly hasTwice: boolean
}

const words = technician.pull

/** Letters of the sources, in the order in which they are met. */
const sourcesOf = (pulls: readonly Pull[]): ReadonlyMap<string, string> => {
  const sources = pulls.flatMap(({ joints }) => joints.map(({ tightening }) => tightening?.source ?? null))
  const met = [...new Set(sources.filter((source) => source !== null))]
  return new Map(met.map((source, index) => [source, String.fromCharCode(97 + index)]))
}

const tightenText = (tightening: Tightening | null, units: Units): string => {
  if (tightening === null) return en.dash
  const { torqueNm, turns } = tightening
  const torque = torqueNm === null ? null : span(torqueNm[0], torqueNm[1], 'N·m', units)
  if (torque === null) return turns ?? words.makers
  return turns === null ? torque : words.turnsOr(torque, turns)
}

const whereText = ({ place, into }: Joint): string => {
  if (into === null) return words.places[place]
  const name = componentName(into)
  const told = {
    first: words.firstTo,
    second: words.secondTo,
    inlet: words.inletFrom,
    outlet: words.outletTo,
    work: words.workTo,
    port: words.workTo,
  }
  return told[place](name)
}

const jointRow = (joint: Joint, marks: ReadonlyMap<string, string>, units: Units): JointRow => {
  const adapter = joint.adapter === null ? '' : `; ${words.adapter(joint.adapter)}`
  // A pipe thread carries its name in its thread.
  const thread = joint.thread === null || joint.connection === null ? '' : joint.thread
  const named = thread.startsWith(joint.connection ?? '-')
    ? thread
    : [joint.connection, thread].filter(Boolean).join(', ')
  return {
    where: en.capital(`${whereText(joint)}${adapter}`),
    connection: joint.connection === null ? words.unread : typeset(named),
    standard: [joint.standard, joint.seal].filter((text) => text !== null).join('; ') || en.dash,
    tighten: tightenText(joint.tightening, units),
    mark: joint.tightening === null ? '' : (marks.get(joint.tightening.source) ?? ''),
  }
}

/** Two ends that are told alike are one row. */
const jointRows = (joints: readonly Joint[], marks: ReadonlyMap<string, string>, units: Units): readonly JointRow[] => {
  const rows = joints.map((joint) => jointRow(joint, marks, units))
  const [first, second] = joints
  const alike =
    rows.length === 2 &&
    first?.place === 'first' &&
    first.into === null &&
    second?.into === null &&
    first.connection === second.connection &&
    first.adapter === second.adapter
  return alike ? rows.slice(0, 1).map((row) => ({ ...row, where: en.capital(words.places.both) })) : rows
}

const quantityText = (pull: Pull, units: Units): string => {
  const whole = pull.unit === 'piece' ? count(pull.quantity) : quantity(pull.quantity, pull.unit, units)
  return pull.pieces === null ? whole : words.pieces(count(pull.pieces), whole)
}

const ratedText = ({ maxPressureBar, workingPressureBar }: Pull, units: Units): string => {
  const asked = workingPressureBar === null ? null : quantity(workingPressureBar, 'bar', units)
  if (maxPressureBar === null) return asked === null ? en.dash : words.atLeast(asked)
  const rated = quantity(maxPressureBar, 'bar', units)
  return asked === null ? rated : words.asked(rated, asked)
}

const shelfText = (pull: Pull): string => {
  if (pull.stock !== null && pull.stock >= pull.quantity) return words.shelfHas
  return pull.leadDays === null ? words.shelfAsk : words.shelfNot(en.days(count(pull.leadDays)))
}

const lengthText = ({ pieces, lengthM }: Pull, units: Units): string => {
  if (pieces === null) return en.dash
  return lengthM === null ? words.cutToFit : quantity(lengthM, 'm', units)
}

const pullRow = (pull: Pull, index: number, marks: ReadonlyMap<string, string>, units: Units): PullRow => ({
  number: String(index + 1),
  what: typeset(pull.what.replace(/, (?:metre|litre)$/u, '')),
  notes: [
    en.capital(componentName(pull.component)),
    pull.part === null ? words.toOrder : words.id(pull.part),
    ...(pull.mount === null ? [] : [words.mount(pull.mount)]),
    ...(pull.kit === null ? [] : [words.kit(typeset(pull.kit))]),
    ...(pull.oldPartBack ? [words.oldBack] : []),
  ],
  quantity: quantityText(pull, units),
  length: lengthText(pull, units),
  bore: pull.boreMm === null ? en.dash : quantity(pull.boreMm, 'mm', units),
  rated: ratedText(pull, units),
  shelf: shelfText(pull),
  joints: jointRows(pull.joints, marks, units),
})

/** Connections that have a look-alike, each once. */
const twiceOf = (pulls: readonly Pull[]): readonly string[] => {
  const met = new Map<string, Set<string>>()
  for (const { joints } of pulls)
    for (const { connection, mistakenFor } of joints)
      if (connection !== null && mistakenFor !== null)
        met.set(mistakenFor, (met.get(mistakenFor) ?? new Set()).add(connection))
  return [...met].map(([other, connections]) => words.twiceRow(typeset(en.list([...connections])), other))
}

export const pullsView = (pulls: readonly Pull[], units: Units): PullsView => {
  const marks = sourcesOf(pulls)
  const sources = [...marks].map(([source, mark]) => ({ mark, source: en.capital(source) }))
  const twice = twiceOf(pulls)
  return {
    words,
    rows: pulls.map((pull, index) => pullRow(pull, index, marks, units)),
    hasRows: pulls.length > 0,
    sources,
    hasSources: sources.length > 0,
    twice,
    hasTwice: twice.length > 0,
  }
}
