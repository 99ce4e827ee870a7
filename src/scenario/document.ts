/** One YAML file: its text, its tree with places, and its plain data. Pure; the text comes from the shell. */
import {
  type Document,
  isAlias,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  type Scalar,
  visit,
} from 'yaml'
import type { Json } from '../question.ts'
import type { Flaw, Path, Problem } from './problems.ts'
import { rememberedByText } from './remembered.ts'
import { syntaxMistakes, withColon } from './syntax.ts'

/** Larger files are no scenario: parsing cost grows faster than size. */
export const MOST_BYTES = 256 * 1024
const DEEPEST = 50

export interface SourceDocument {
  readonly file: string
  readonly text: string
  readonly tree: Document
  readonly lines: LineCounter
  readonly data: Json
  /** What is wrong with the text itself, and does not keep the rest from being read. */
  readonly mistakes: readonly Problem[]
  /** Where a path of the data stands in the text, where the two differ: a unit of a fleet. */
  readonly placeOf?: (path: Path) => Path
}

/** `problems` where the text cannot be read on. */
export type DocumentResult = { readonly document: SourceDocument } | { readonly problems: readonly Problem[] }

const excerptAt = (text: string, line: number): string => text.split(/\r?\n/u)[line - 1] ?? ''

const problemAt = (file: string, text: string, lines: LineCounter, from: number, to: number, flaw: Flaw): Problem => {
  const { line, col } = lines.linePos(from)
  const excerpt = excerptAt(text, line || 1)
  const width = Math.max(1, Math.min(to - from, excerpt.length - col + 1))
  return { ...flaw, file, line: line || 1, column: col || 1, excerpt, width }
}

const flawOf = (
  code: Flaw['code'],
  message: string,
  expected: string | null = null,
  remedy: string | null = null,
): Flaw => ({
  code,
  path: [],
  message,
  expected,
  remedy,
})

/** A problem with a file as a whole. */
export const fileProblem = (file: string, flaw: Flaw): Problem => ({
  ...flaw,
  file,
  line: 1,
  column: 1,
  excerpt: '',
  width: 0,
})

const depthOf = (tree: Document): { readonly deepest: number; readonly aliases: readonly Node[] } => {
  let deepest = 0
  const aliases: Node[] = []
  visit(tree, {
    Node(_, node, path) {
      deepest = Math.max(deepest, path.length)
      if (isAlias(node)) aliases.push(node)
    },
  })
  return { deepest, aliases }
}

/** Signs that no text has, and that a terminal would obey; tab and line breaks are none. */
const CONTROL = /(?![\t\n\r])\p{Cc}/u

const controlled = (tree: Document): Scalar[] => {
  const found: Scalar[] = []
  visit(tree, {
    Scalar(_, node) {
      if (typeof node.value === 'string' && CONTROL.test(node.value)) found.push(node)
    },
  })
  return found
}

/** Nesting as the bare text shows it: the parser works by recursion and must not meet a file that is made to break it. */
const looksTooDeep = (text: string): boolean => {
  if (/^ {200}/mu.test(text) || /^ *(?:[-?][ \t]+){50}/mu.test(text)) return true
  let open = 0
  for (const sign of text) {
    if (sign === '[' || sign === '{') open += 1
    else if (sign === ']' || sign === '}') open = Math.max(0, open - 1)
    if (open > 2 * DEEPEST) return true
  }
  return false
}

export const tooLarge = (file: string, bytes: number): Problem =>
  fileProblem(file, flawOf('file-too-large', `the file has ${Math.round(bytes / 1024)} kB`, 'at most 256 kB'))

const tooDeep = (file: string): DocumentResult => ({
  problems: [fileProblem(file, flawOf('too-deep', 'the file is nested too deeply', `at most ${DEEPEST} levels`))],
})

/** At most so many of one kind: a file that is none of ours has thousands. */
const MOST_OF_A_KIND = 20

const readText = (file: string, text: string): DocumentResult => {
  if (text.length > MOST_BYTES) return { problems: [tooLarge(file, text.length)] }
  if (looksTooDeep(text)) return tooDeep(file)
  const lines = new LineCounter()
  const tree = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true, logLevel: 'error' })
  const at = (from: number, to: number, flaw: Flaw): Problem => problemAt(file, text, lines, from, to, flaw)
  const syntax = syntaxMistakes(tree, text, MOST_OF_A_KIND)
  if (syntax.length > 0) return { problems: syntax.map(({ from, to, flaw }) => at(from, to, flaw)) }
  const told = tree.errors.slice(0, MOST_OF_A_KIND).map(({ pos: [from] }) => {
    const key = /^[^\s:]+/u.exec(text.slice(from))?.[0] ?? ' '
    return at(
      from,
      from + key.length,
      flawOf('duplicate-key', 'this key is written twice', 'each key once', 'keep one of them'),
    )
  })
  const { deepest, aliases } = depthOf(tree)
  if (deepest > 2 * DEEPEST) return tooDeep(file)
  const controls = controlled(tree)
    .slice(0, MOST_OF_A_KIND)
    .map((node) => {
      const [from, to] = spanOf(node)
      const sign = (CONTROL.exec(String(node.value))?.[0] ?? '').charCodeAt(0).toString(16).padStart(4, '0')
      const found = flawOf('control-character', `a control character (U+${sign.toUpperCase()}) stands here`)
      return at(from, to, { ...found, expected: 'text', remedy: 'type it again' })
    })
  const mistakes = [...told, ...controls]
  // What an alias stands for may be a thousand times the file.
  if (aliases.length > 0) {
    const flaw = flawOf('alias-refused', 'anchors and aliases (&, *) are not taken', 'the value itself')
    const refused = aliases.slice(0, MOST_OF_A_KIND).map((node) => at(...spanOf(node), flaw))
    return { problems: [...mistakes, ...refused] }
  }
  const data = tree.toJS() as Json
  if (data === null || data === undefined || typeof data !== 'object') {
    const expected = 'keys with values, beginning with "format: 1"'
    const first = isNode(tree.contents) ? tree.contents : null
    if (data === null || data === undefined || first === null)
      return { problems: [fileProblem(file, flawOf('empty-file', 'the file holds nothing', expected))] }
    const [from, to] = spanOf(first)
    const line = excerptAt(text, lines.linePos(from).line)
    const meant = withColon(line)
    const remedy = meant === null ? null : `did you mean "${meant}"?`
    return {
      problems: [at(from, to, flawOf('empty-file', 'the file holds a word alone, and no key', expected, remedy))],
    }
  }
  return { document: { file, text, tree, lines, data, mistakes } }
}

const spanOf = (node: Node): [number, number] => [node.range?.[0] ?? 0, node.range?.[1] ?? 1]

/**
 * Reads a YAML text.
 * @param file name as it is shown
 * @returns the document with what is wrong in its text, or every problem that keeps it from being read
 */
export const readDocument = rememberedByText(readText, (read) => ('document' in read ? read.document.data : null))

/** Deepest node on a path, and how much of the path it covers. */
const nodeAt = (document: SourceDocument, path: Path, atKey: boolean): { node: Node | null; depth: number } => {
  let node: Node | null = isNode(document.tree.contents) ? document.tree.contents : null
  let found = node
  let depth = 0
  for (const [i, step] of path.entries()) {
    if (isMap(node)) {
      // Of a key written twice, the later one is what was read.
      const pair = node.items.findLast(
        (item) => String(isScalar(item.key) ? item.key.value : item.key) === String(step),
      )
      if (pair === undefined) break
      const last = i === path.length - 1
      const key = isNode(pair.key) ? pair.key : null
      node = isNode(pair.value) ? pair.value : null
      found = (last && atKey) || node === null || isEmptyScalar(node) || isBlock(node) ? (key ?? node) : node
    } else if (isSeq(node)) {
      const item = node.items[Number(step)]
      if (!isNode(item)) break
      node = item
      found = item
    } else break
    depth = i + 1
    if (node === null) break
  }
  return { node: found, depth }
}

/** A group written over several lines is shown at its key. */
const isBlock = (node: Node): boolean => (isMap(node) || isSeq(node)) && node.flow !== true

const isEmptyScalar = (node: Node): boolean =>
  isScalar(node) && node.range !== null && node.range !== undefined && node.range[0] === node.range[1]

/** How much of a path the file has. */
export const depthIn = (document: SourceDocument, path: Path): number => {
  const place = document.placeOf?.(path) ?? path
  return nodeAt(document, place, false).depth - (place.length - path.length)
}

/** Key of the mapping that a path ends in: where a missing key is to be shown. */
export const locate = (document: SourceDocument, found: Flaw): Problem => {
  const flaw = document.placeOf === undefined ? found : { ...found, path: document.placeOf(found.path) }
  const { node, depth } = nodeAt(document, flaw.path, flaw.atKey ?? false)
  const missing = depth < flaw.path.length
  const place = missing ? nodeAt(document, flaw.path.slice(0, depth), true).node : node
  const [from, to] = place?.range ?? [0, 1]
  return problemAt(document.file, document.text, document.lines, from, to, flaw)
}
