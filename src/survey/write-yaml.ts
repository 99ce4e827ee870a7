/** The two files to fill in beside the sheet: every key of the table with its comment, and what is already known. */
import type { Json } from '../question.ts'
import { SURVEY } from './entries.ts'
import type { SurveyEntry, SurveyGroup } from './entry.ts'
import { isGroup, type Known, NOTHING_KNOWN, standOf, valueAt, written } from './known.ts'
import { TRAVEL_HOSES } from './travel-entries.ts'

const WIDTH = 116

interface Branch {
  readonly entry: SurveyEntry | null
  readonly children: Map<string, Branch>
}

const branch = (entry: SurveyEntry | null = null): Branch => ({ entry, children: new Map() })

/** Entries as a tree of keys, in their order. */
const treeOf = (entries: readonly SurveyEntry[]): Branch => {
  const root = branch()
  for (const entry of entries) {
    const steps = entry.path.split('.')
    let at = root
    for (const step of steps.slice(0, -1)) {
      const next = at.children.get(step) ?? branch()
      at.children.set(step, next)
      at = next
    }
    at.children.set(steps.at(-1) ?? '', branch(entry))
  }
  return root
}

const comment = (text: string, indent: string): readonly string[] => {
  const lines: string[] = []
  for (const word of text.split(' ').filter((part) => part !== '')) {
    const last = lines.at(-1)
    if (last !== undefined && indent.length + 2 + last.length + 1 + word.length <= WIDTH)
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(word)
  }
  return lines.map((line) => `${indent}# ${line}`)
}

/** Names that stand in place of `*`. */
export const namesAt = (path: readonly string[], data: Json): readonly string[] => {
  const group = valueAt(data, path)
  const own = isGroup(group) ? Object.keys(group) : []
  if (own.length > 0) return own
  return path.at(-1) === 'circuits' ? ['main'] : TRAVEL_HOSES
}

const MARKS = {
  read: '',
  open: '',
  assumed: 'assumed: read it',
  default: 'taken until it is read:',
  part: 'comes with the part',
  missing: 'missing: nothing can be worked out without it',
} as const

class Writer {
  readonly #lines: string[]
  readonly #known: Known
  readonly #told = new Set<string>()

  constructor(head: readonly string[], known: Known) {
    this.#lines = [...head]
    this.#known = known
  }

  text(): string {
    return `${this.#lines.join('\n')}\n`
  }

  /** What was said of an entry once is not said again of the next circuit or hose. */
  #explain({ label, unit, how, usualError, wrong, source }: SurveyEntry, indent: string): void {
    const title = unit === '' ? label : `${label} [${unit}]`
    const said = [
      how,
      usualError === undefined ? '' : `Usual error: ${usualError}.`,
      wrong === undefined ? '' : `A wrong reading: ${wrong}`,
      source === undefined ? '' : `Source: ${source}.`,
    ].filter((part) => part !== '')
    const key = said.join(' ')
    const repeated = this.#told.has(key) || key === ''
    this.#told.add(key)
    this.#lines.push(...comment(repeated ? title : `${title}: ${key}`, indent))
  }

  #leaf(key: string, entry: SurveyEntry, path: readonly string[], indent: string): void {
    this.#explain(entry, indent)
    const { standing, text } = standOf(entry, path, this.#known)
    const value = standing === 'read' || standing === 'assumed' ? ` ${written(valueAt(this.#known.data, path))}` : ''
    // A blank survey has nothing to be marked against; there an example helps more.
    const blank = this.#known.data === null
    const hint = blank
      ? `such as ${entry.example}${entry.needed ? ' (needed)' : ''}`
      : standing === 'default'
        ? `${MARKS.default} ${text}`
        : MARKS[standing]
    this.#lines.push(`${indent}${key}:${value}${hint === '' ? '' : `  # ${hint}`}`)
  }

  group(at: Branch, path: readonly string[], indent: string): void {
    const data = valueAt(this.#known.data, path)
    for (const [key, child] of at.children) {
      const names = key === '*' ? namesAt(path, this.#known.data) : [key]
      for (const name of names) {
        const own = [...path, name]
        if (child.entry !== null) this.#leaf(name, child.entry, own, indent)
        else {
          this.#lines.push(`${indent}${name}:`)
          this.group(child, own, `${indent}  `)
        }
      }
    }
    if (!isGroup(data) || at.children.has('*')) return
    for (const [key, value] of Object.entries(data))
      if (!at.children.has(key) && value !== null && key !== 'format')
        this.#lines.push(`${indent}${key}: ${written(value)}`)
  }
}

const entriesOf = (file: SurveyGroup['file']): readonly SurveyEntry[] =>
  SURVEY.filter((group) => group.file === file).flatMap(({ entries }) => entries)

const fileText = (file: SurveyGroup['file'], head: readonly string[], known: Known): string => {
  const writer = new Writer(head, known)
  writer.group(treeOf(entriesOf(file)), [], '')
  return writer.text()
}

const UNITS =
  'A quantity carries its unit, and if wanted its tolerance and where it comes from: 24.5 L/min, 250 cm3/rev ± 3 %, 140 bar (measured), 6 mm (assumed). What nobody has read stays blank.'

/**
 * The machine file to fill in.
 * @param schema address of the machine's schema, for the editor
 */
export const machineYaml = (schema: string, known: Known): string =>
  fileText(
    'machine',
    [
      `# yaml-language-server: $schema=${schema}`,
      ...comment(
        `Survey of a machine. ${UNITS} A machine with a pump for each track has two circuits, left and right, that drive "left track" and "right track"; a second circuit that shares a suction line says suction: {same-as: left}. A machine without a swivel has one travel hose, valve-to-motor. A pump, motor or valve of the parts list may be named in place of its figures: pump: {part: its id}.`,
        '',
      ),
      'format: 1',
    ],
    known,
  )

/**
 * The scenario file to fill in.
 * @param schema address of the scenario's schema
 * @param machine path of the machine file from this one
 */
export const scenarioYaml = (schema: string, machine: string): string => {
  const text = fileText(
    'scenario',
    [
      `# yaml-language-server: $schema=${schema}`,
      ...comment(
        `A customer's question about a machine. ${UNITS} The folder shop/ with rates and parts list stands beside this file or a folder above it.`,
        '',
      ),
      'format: 1',
    ],
    NOTHING_KNOWN,
  )
  return text.replace(/^machine:.*$/mu, () => `machine: ${written(machine)}`)
}
