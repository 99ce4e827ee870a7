/** A machine file as far as it goes: for a survey, gaps are no mistakes. Pure. */
import type { Assumption, Json } from '../question.ts'
import type { Part } from '../shop.ts'
import { locate, readDocument } from './document.ts'
import { strangerIn } from './file-kind.ts'
import type { Flaw, Problem } from './problems.ts'
import { missingFile, type SourceText } from './read.ts'
import { mergeMachine, prepared } from './read-machine.ts'
import { readShop } from './read-shop.ts'

export type SurveyedMachine =
  | {
      /** As written. */
      readonly data: Json
      /** Empty where the machine has too many gaps to be worked out. */
      readonly assumptions: readonly Assumption[]
    }
  | { readonly problems: readonly Problem[] }

/** What is only not there yet; and parts, where no parts list is at hand. */
const isGap = ({ code }: Flaw, hasParts: boolean): boolean =>
  code === 'key-missing' ||
  code === 'running-gear-missing' ||
  code === 'nothing-drives' ||
  code === 'drive-incomplete' ||
  code === 'oil-unknown' ||
  (code === 'part-unknown' && !hasParts)

const partsOf = (files: readonly SourceText[], folder: string | null): readonly Part[] | null => {
  if (folder === null) return null
  const read = files.map(({ file, text }) => (text === null ? null : readDocument(file, text)))
  const documents = read.flatMap((one) => (one !== null && 'document' in one ? [one.document] : []))
  const shop = readShop(documents, folder, documents.length === files.length)
  return 'shop' in shop ? shop.shop.parts : null
}

/**
 * Reads a machine for its survey.
 * @param shopFiles, shopFolder of the shop beside or above it; none: parts cannot be looked up, which is no mistake here
 * @returns what is written and assumed, or what is written wrongly
 */
export const readForSurvey = (
  machine: SourceText,
  shopFiles: readonly SourceText[],
  shopFolder: string | null,
): SurveyedMachine => {
  if (machine.text === null) return { problems: [missingFile(machine, 'a machine file')] }
  const read = readDocument(machine.file, machine.text)
  if ('problems' in read) return read
  const { document } = read
  const stranger = strangerIn(document, 'machine')
  if (stranger !== null) return { problems: [...document.mistakes, stranger] }
  const parts = partsOf(shopFiles, shopFolder)
  const merged = mergeMachine(document.data, [], parts ?? [])
  if ('spec' in merged && document.mistakes.length === 0)
    return { data: document.data, assumptions: prepared(merged.spec).resolve().assumptions }
  const flaws = 'flaws' in merged ? merged.flaws : []
  const wrong = flaws.filter((flaw) => !isGap(flaw, parts !== null)).map((flaw) => locate(document, flaw))
  if (wrong.length + document.mistakes.length > 0) return { problems: [...document.mistakes, ...wrong] }
  return { data: document.data, assumptions: [] }
}
