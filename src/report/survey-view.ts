/** The survey sheet as strings and flags; no field is optional. Everything it says of an entry comes from src/survey/. */

import { SURVEY } from '../survey/entries.ts'
import type { SurveyEntry, SurveyGroup } from '../survey/entry.ts'
import { isGroup, type Known, NOTHING_KNOWN, standOf, valueAt } from '../survey/known.ts'
import { namesAt } from '../survey/write-yaml.ts'
import { typeset as typesetUnits } from './format.ts'
import { type Paper, pageStyle } from './page-style.ts'
import { surveyDrawing } from './survey-drawing.ts'
import { survey as words } from './wording-survey.ts'

export interface SurveyRow {
  /** '' where the drawing has no place for it. */
  readonly mark: string
  readonly label: string
  readonly unit: string
  readonly needed: string
  readonly value: string
  readonly standing: string
  /** It has to be read before an answer is given. */
  readonly urgent: boolean
  readonly how: string
  readonly error: string
  readonly wrong: string
  readonly source: string
}

export interface HoseRow {
  readonly mark: string
  readonly name: string
  readonly cells: readonly string[]
}

export interface SurveyGroupView {
  readonly heading: string
  readonly rows: readonly SurveyRow[]
  readonly hasRows: boolean
  readonly hoses: readonly HoseRow[]
  readonly hasHoses: boolean
  /** How the columns of the hoses are read. */
  readonly hoseHow: readonly string[]
}

export interface SurveyView {
  readonly words: typeof words
  readonly lang: string
  readonly title: string
  readonly style: string
  readonly lead: string
  readonly drawingSvg: string
  readonly places: readonly string[]
  readonly groups: readonly SurveyGroupView[]
}

/** A tolerance is not torn apart at the end of a line. */
const typeset = (text: string): string => typesetUnits(text).replace(/± /gu, '±\u00a0')

const sentence = (text: string): string => (text === '' || /[.?!…]$/u.test(text) ? text : `${text}.`)

const rowOf = (entry: SurveyEntry, path: readonly string[], known: Known): SurveyRow => {
  const { standing, text } = standOf(entry, path, known)
  return {
    mark: entry.mark === undefined ? '' : String(entry.mark),
    label: entry.label,
    unit: typeset(entry.unit),
    needed: entry.needed ? words.needed : '',
    value: typeset(text),
    standing: known.data === null ? '' : words.standing[standing],
    urgent: known.data !== null && (standing === 'missing' || standing === 'assumed' || standing === 'default'),
    how: typeset(entry.how),
    error: entry.usualError === undefined ? '' : words.error(typeset(entry.usualError)),
    wrong: entry.wrong === undefined ? '' : words.wrong(typeset(sentence(entry.wrong))),
    source: entry.source === undefined ? '' : words.source(entry.source),
  }
}

/** Paths of an entry: one for each circuit or travel hose that is known, else for the usual ones. */
const pathsOf = (entry: SurveyEntry, known: Known): readonly (readonly string[])[] =>
  entry.path
    .split('.')
    .reduce<readonly (readonly string[])[]>(
      (paths, step) =>
        paths.flatMap((path) => (step === '*' ? namesAt(path, known.data) : [step]).map((name) => [...path, name])),
      [[]],
    )

const circuitOf = (path: readonly string[]): string | null => (path[0] === 'circuits' ? (path[1] ?? null) : null)

/** Hoses of a group: one row each, a cell a column. */
const hoseRows = (entries: readonly SurveyEntry[], circuit: string | null, known: Known): readonly HoseRow[] => {
  const rows = new Map<string, { mark: string; name: string; cells: Map<string, string> }>()
  for (const entry of entries.filter(({ hose }) => hose !== undefined))
    for (const path of pathsOf(entry, known)) {
      if (circuitOf(path) !== circuit) continue
      const own = path.slice(0, -1)
      const name = entry.path.includes('lines.*') ? (own.at(-1) ?? '').replaceAll('-', ' ') : (entry.hose ?? '')
      const row = rows.get(own.join('.')) ?? { mark: String(entry.mark ?? ''), name, cells: new Map() }
      const shared = valueAt(known.data, [...own, 'same-as'])
      const text = shared === null ? standOf(entry, path, known).text : `= ${String(shared)}`
      row.cells.set(path.at(-1) ?? '', typeset(text))
      rows.set(own.join('.'), row)
    }
  return [...rows.values()].map(({ mark, name, cells }) => {
    const of = (key: string) => cells.get(key) ?? ''
    const size = of('hose') === '' ? of('bore') : of('hose')
    return { mark, name, cells: [size, of('kind'), of('length'), of('elbows'), of('ends')] }
  })
}

const hoseHow = (entries: readonly SurveyEntry[]): readonly string[] => {
  const first = entries.find(({ hose }) => hose !== undefined)?.hose
  return entries
    .filter(({ hose }) => hose !== undefined && hose === first)
    .map(({ label, unit, how, usualError, wrong, source }) =>
      typeset(
        [
          `${label.charAt(0).toUpperCase()}${label.slice(1)}${unit === '' ? '' : ` (${unit})`}: ${how}`,
          usualError === undefined ? '' : words.error(usualError),
          wrong === undefined ? '' : words.wrong(sentence(wrong)),
          source === undefined ? '' : words.source(source),
        ]
          .filter((part) => part !== '')
          .join(' '),
      ),
    )
}

const groupViews = ({ heading, entries }: SurveyGroup, known: Known): readonly SurveyGroupView[] => {
  const inCircuit = entries.some(({ path }) => path.startsWith('circuits.'))
  const circuits: readonly (string | null)[] = inCircuit ? namesAt(['circuits'], known.data) : [null]
  return circuits.map((circuit, i) => {
    const rows = entries
      .filter(({ hose }) => hose === undefined)
      .flatMap((entry) =>
        pathsOf(entry, known)
          .filter((path) => circuitOf(path) === circuit)
          .map((path) => rowOf(entry, path, known)),
      )
    const hoses = hoseRows(entries, circuit, known)
    return {
      heading: circuit === null || known.data === null ? heading : words.circuit(heading, circuit),
      rows,
      hasRows: rows.length > 0,
      hoses,
      hasHoses: hoses.length > 0,
      hoseHow: i === 0 ? hoseHow(entries) : [],
    }
  })
}

/** Name of the machine, where its file says one. */
const nameIn = (known: Known): string => {
  const name = isGroup(known.data) ? valueAt(known.data, ['machine', 'name']) : null
  return typeof name === 'string' ? name : ''
}

/**
 * The survey sheet.
 * @param known what the machine file says; NOTHING_KNOWN for a blank sheet
 */
export const surveyView = (known: Known, paper: Paper): SurveyView => {
  const machine = nameIn(known)
  return {
    words,
    lang: words.lang,
    title: words.title(machine),
    style: pageStyle({ paper, footer: words.footer(machine), accent: null }),
    lead: known.data === null ? words.lead : `${words.lead} ${words.leadKnown}`,
    drawingSvg: surveyDrawing(),
    places: words.places,
    groups: SURVEY.flatMap((group) => groupViews(group, group.file === 'machine' ? known : NOTHING_KNOWN)),
  }
}
