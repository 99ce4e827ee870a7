/** What the YAML parser finds wrong, in words for a shop, and where it begins: an open quote is shown where it was opened. */
import { type Document, isCollection, isScalar, type Node, visit, type YAMLError } from 'yaml'
import type { Flaw } from './problems.ts'

/** A mistake of the text, and how much of it is meant. */
export interface SyntaxMistake {
  readonly from: number
  readonly to: number
  readonly flaw: Flaw
}

const plainMessage = (message: string): string => (message.split('\n')[0] ?? message).replace(/ at line \d+.*$/u, '')

/** In our words where the parser's speak to programmers. */
const MESSAGES: { readonly [code: string]: string } = {
  MULTIPLE_DOCS: 'a second document starts here',
  TAB_AS_INDENT: 'a tab stands where spaces belong',
  TAG_RESOLVE_FAILED: 'tags (!) are not taken',
  MULTILINE_IMPLICIT_KEY: 'no colon stands after this key',
  MISSING_CHAR: 'a colon, a comma, a quote or a bracket is missing here',
  BAD_INDENT: 'this line is not indented like its neighbours',
  UNEXPECTED_TOKEN: 'this does not belong here',
  BAD_SCALAR_START: 'no text begins with this sign',
  BAD_DQ_ESCAPE: 'a backslash in double quotes stands for another sign',
}

/** A line without a colon that would be a key and its value with one; null where it is none. */
export const withColon = (line: string): string | null => {
  const match = /^\s*(?:- )?([A-Za-z][A-Za-z0-9-]*) +([^\s:#][^:#]*?)\s*$/u.exec(line)
  return match === null ? null : `${match[1]}: ${match[2]}`
}

const hint = (code: string, line: string): string => {
  const meant = withColon(line)
  if (meant !== null) return `did you mean "${meant}"?`
  if (code === 'TAB_AS_INDENT') return 'indent with spaces'
  if (code === 'MULTIPLE_DOCS') return 'take the "---" out'
  if (code === 'TAG_RESOLVE_FAILED') return 'take the tag out'
  if (code === 'BAD_DQ_ESCAPE') return "write it twice, or put ' around the text"
  return 'a text with ": " or " #" in it, or one that begins with a sign, goes in quotes'
}

const flaw = (message: string, expected: string, remedy: string): Flaw => ({
  code: 'yaml-syntax',
  path: [],
  message,
  expected,
  remedy,
})

const isQuoted = (node: Node): boolean =>
  isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE')

/** Where the innermost node begins that fits and that the parser gave up at a place; null where there is none. */
const openedAt = (tree: Document, end: number, fits: (node: Node) => boolean): number | null => {
  let start: number | null = null
  visit(tree, {
    Node(_, node) {
      if (fits(node) && node.range?.[1] === end) start = node.range[0]
    },
  })
  return start
}

const lineBefore = (text: string, at: number): string => text.slice(text.lastIndexOf('\n', at - 1) + 1, at)
const lineFrom = (text: string, at: number): string => {
  const end = text.indexOf('\n', at)
  return text.slice(at, end < 0 ? text.length : end).trimEnd()
}

const isClosing = (text: string, at: number): boolean => text[at] === ']' || text[at] === '}'

const openQuote = (text: string, at: number): SyntaxMistake => {
  const [quote, rest, before] = [text[at] ?? '"', lineFrom(text, at), lineBefore(text, at)]
  // In brackets, or before a comment, only the writer knows where the text was to end.
  const whole = !/[[{]/u.test(before) && !/[\]}#]/u.test(rest) && rest.length > 1
  const remedy = whole
    ? `write ${before.trim()} ${rest}${quote} if that is what you mean`
    : `write ${quote} where the text ends, too`
  return { from: at, to: at + rest.length, flaw: flaw('this quote is not closed', 'a text between two quotes', remedy) }
}

/** A quote of the same kind inside a text in quotes has ended it. */
const quoteInside = (text: string, start: number, end: number): SyntaxMistake => {
  const rest = lineFrom(text, end)
  const other = text[start] === '"' ? "'" : '"'
  const twice = text[start] === '"' ? 'with \\ before it' : 'twice'
  const remedy = `a quote inside the text is written ${twice}, or put ${other} around the whole`
  return { from: end, to: end + rest.length, flaw: flaw('this stands after the closing quote', 'nothing more', remedy) }
}

const openBracket = (text: string, at: number): SyntaxMistake => {
  const [open, close] = text[at] === '[' ? ['[', ']'] : ['{', '}']
  const rest = lineFrom(text, at)
  const expected = open === '[' ? 'a list between [ and ]' : 'a group of keys between { and }'
  const remedy = `write ${close} where it ends; what goes on over lines is indented further than its key`
  return { from: at, to: at + rest.length, flaw: flaw(`this ${open} is not closed`, expected, remedy) }
}

/** A key and its value where a value stands: on the same line, or on the next one, further in. */
const keyInValue = (text: string, at: number): SyntaxMistake => {
  const [before, rest] = [lineBefore(text, at), lineFrom(text, at)]
  const value = rest.replaceAll('"', "'")
  if (/:(?:\s|$)/u.test(rest)) {
    const remedy = `write ${before.trim()} "${value}" if that is what you mean`
    return { from: at, to: at + rest.length, flaw: flaw('a second ": " stands in this line', 'one key', remedy) }
  }
  const message = 'the next line is indented further than this one'
  return {
    from: at,
    to: at + rest.length,
    flaw: flaw(message, 'a value, or keys under it', 'begin both in the same column'),
  }
}

const byItself = (text: string, { code, message, pos }: YAMLError): SyntaxMistake => {
  // Past the last line there is nothing to show: the line that should have gone on is.
  const from = Math.max(0, Math.min(pos[0], text.trimEnd().length - 1))
  const line = lineBefore(text, from) + lineFrom(text, from)
  return { from, to: from + 1, flaw: flaw(MESSAGES[code] ?? plainMessage(message), 'YAML', hint(code, line)) }
}

/** One mistake; null where it only follows from another one. */
const mistakeOf = (tree: Document, text: string, error: YAMLError, all: readonly YAMLError[]): SyntaxMistake | null => {
  const [at] = error.pos
  const isOpenQuote = ({ code, message }: YAMLError) => code === 'MISSING_CHAR' && message.includes('closing')
  const quote = openedAt(tree, at, isQuoted)
  if (quote !== null && isOpenQuote(error)) return openQuote(text, quote)
  if (error.code === 'UNEXPECTED_TOKEN') {
    const closed = openedAt(tree, text.slice(0, at).trimEnd().length, isQuoted)
    if (closed !== null) return quoteInside(text, closed, at)
    if (isClosing(text, at))
      return { from: at, to: at + 1, flaw: flaw(`this ${text[at]} closes nothing`, 'nothing more', 'take it out') }
  }
  if (error.code === 'BLOCK_AS_IMPLICIT_KEY') return keyInValue(text, at)
  const isSame = (other: YAMLError) => other.code === 'BLOCK_AS_IMPLICIT_KEY' && other.pos[0] === at
  if (error.code === 'MULTILINE_IMPLICIT_KEY' && all.some(isSame)) return null
  if (error.code === 'BAD_INDENT' && error.message.includes('end with a')) {
    if (all.some((other) => isOpenQuote(other) && other.pos[0] === at)) return null
    const bracket = openedAt(tree, at, (node) => isCollection(node) && node.flow === true)
    if (bracket !== null) return openBracket(text, bracket)
  }
  return byItself(text, error)
}

/**
 * What is wrong with a text as YAML, in the order of the parser; keys that are written twice aside.
 * @param most mistakes that are told: a file that is none of ours has thousands
 */
export const syntaxMistakes = (tree: Document, text: string, most: number): readonly SyntaxMistake[] => {
  const all = [...tree.errors, ...tree.warnings].filter(({ code }) => code !== 'DUPLICATE_KEY')
  // A tab makes nonsense of everything after it, and so does a bracket that closes nothing.
  const tabs = all.filter(({ code }) => code === 'TAB_AS_INDENT')
  const surplus = all.findIndex(({ code, pos }) => code === 'UNEXPECTED_TOKEN' && isClosing(text, pos[0]))
  const told = (tabs.length > 0 ? tabs : all.slice(0, surplus < 0 ? most : surplus + 1)).slice(0, most)
  return told.flatMap((error) => mistakeOf(tree, text, error, told) ?? [])
}
