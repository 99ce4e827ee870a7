/** What every step of the layout reads: the circuit, its numbers, the texts beside its symbols, and the size of those. */
import type { Diagram } from '../../diagram.ts'
import type { Marks } from './marks.ts'
import { type Arrangement, type Block, blockOf } from './text.ts'

/** Words of the drawing that belong to no component of the machine file, and the headings of the motors by side. */
export interface DrawingWords {
  readonly cylinders: string
  readonly attachment: string
  readonly motors: { readonly left: string; readonly right: string }
  /** In place of a control valve that nobody has described. */
  readonly valveUnread: readonly string[]
}

/** Ready lines of text by component id; none where the symbol says enough. */
export type Texts = { readonly [id: string]: readonly string[] }

export interface Sheet {
  readonly diagram: Diagram
  readonly marks: Marks
  readonly texts: Texts
  readonly words: DrawingWords
  readonly size: number
  readonly arrangement: Arrangement
}

/** Whether this component must change. */
export const isMarked = (sheet: Sheet, id: string): boolean => sheet.marks.at.has(id)

/** Label of a component: its numbers and its text, here or with other lines in place of its own. */
export const blockFor = (sheet: Sheet, id: string, lines: readonly string[] = textsOf(sheet, id)): Block =>
  blockOf(lines, sheet.marks.at.get(id) ?? [], sheet.size, sheet.arrangement)

export const textsOf = (sheet: Sheet, id: string): readonly string[] =>
  Object.hasOwn(sheet.texts, id) ? (sheet.texts[id] ?? []) : []

/** Label of the motors of one side. */
export const motorBlock = (sheet: Sheet, side: 'left' | 'right'): Block => {
  const { id } = sheet.diagram.travel.motor
  return blockFor(sheet, id, [sheet.words.motors[side], ...textsOf(sheet, id)])
}

/** Label of something that is no component. */
export const plainBlock = (sheet: Sheet, lines: readonly string[]): Block =>
  blockOf(lines, [], sheet.size, sheet.arrangement)

/** The id under which a place is drawn: null where the machine has nothing there and nothing is to be put there. */
export const idIf = (sheet: Sheet, isThere: boolean, id: string): string | null =>
  isThere || isMarked(sheet, id) ? id : null

/** Ids of one circuit's parts. */
export const partId = (circuit: { readonly name: string }, part: string): string => `circuits.${circuit.name}.${part}`
