/** A scenario that is read without a mistake and does not say what is wanted: nothing to search for. */
import { fileProblem, locate, readDocument } from './document.ts'
import type { Flaw, Problem } from './problems.ts'
import type { SourceText } from './read.ts'

/** One line for each thing that can be wanted, as it is written into the scenario. */
export const WANTS_LINES: readonly string[] = [
  'wants: {travel-speed: 3 km/h}',
  'wants: {attachment: {flow: 38 L/min, pressure: 150 bar}}',
  'wants: {oil-below: 70 °C}',
]

/**
 * The problem, at the empty `wants` where there is one, else at the head of the file.
 * @param source the scenario's own text
 */
export const nothingWanted = (source: SourceText): Problem => {
  const flaw: Flaw = {
    code: 'nothing-wanted',
    path: [],
    message: 'the scenario does not say what is wanted',
    expected: '"wants" with a travel speed, flow and pressure of an attachment, or the highest oil temperature',
    remedy: 'write at least one of these three; several together are held at once',
  }
  const read = source.text === null ? null : readDocument(source.file, source.text)
  if (read === null || !('document' in read)) return fileProblem(source.file, flaw)
  const { data } = read.document
  const hasKey = typeof data === 'object' && data !== null && 'wants' in data
  return locate(read.document, hasKey ? { ...flaw, path: ['wants'], atKey: true } : flaw)
}
