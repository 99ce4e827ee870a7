/**
 * The JSON Schemas as editors take them: each key with what the survey says of it (how it is read, an example), or with the
 * words of key-words.ts, before units and default.
 */
import { type JsonSchemas, jsonSchemas } from '../scenario/json-schema.ts'
import { entryFor } from './entries.ts'
import type { SurveyEntry } from './entry.ts'
import { KEY_WORDS } from './key-words.ts'

interface Node {
  readonly description?: string
  readonly type?: string | readonly string[]
  readonly properties?: { readonly [key: string]: Node }
  readonly additionalProperties?: Node | boolean
  readonly items?: Node | boolean
  readonly anyOf?: readonly Node[]
  readonly oneOf?: readonly Node[]
}

type File = keyof JsonSchemas

const isNull = ({ type }: Node): boolean => type === 'null'

const fitsEnd = (pattern: string, path: readonly string[]): boolean => {
  const steps = pattern.split('.')
  const end = path.slice(-steps.length)
  return steps.length === end.length && steps.every((step, i) => step === end[i])
}

const wordsFor = (path: readonly string[], file: File) =>
  KEY_WORDS.filter((row) => (row.file === null || row.file === file) && fitsEnd(row.path, path)).sort(
    (a, b) => b.path.split('.').length - a.path.split('.').length,
  )[0]

/** An example as the file holds it: a number, or a text. Lists and groups are shown as they are written. */
const exampleOf = (text: string): string | number | null => {
  if (/^[[{]/u.test(text)) return null
  return /^-?\d+(?:\.\d+)?$/u.test(text) ? Number(text) : text
}

const ofEntry = ({ label, how, example }: SurveyEntry) => ({
  words: [label, how.replace(/\.$/u, '')].filter((text) => text !== '').join('. '),
  example: exampleOf(example),
})

/** What is said of a key by itself: units and default, where it is a figure; words are shown by the editor anyway. */
const own = (node: Node): string | undefined => {
  const text = node.description ?? (node.anyOf ?? node.oneOf)?.map(own).find(Boolean)
  return text?.replace(/^[^;]* \| [^;]*(?:; |$)/u, '')
}

const told = (node: Node, path: readonly string[], file: File): object => {
  const entry = file === 'shop' ? null : entryFor(path.join('.'), file)
  const said = entry === null ? wordsFor(path, file) : ofEntry(entry)
  if (said === undefined) return {}
  const description = [said.words, own(node)].filter(Boolean).join(' — ')
  const example = said.example ?? null
  return { description, ...(example === null ? {} : { examples: [example] }) }
}

const inside = (node: Node, path: readonly string[], file: File): Node => {
  const { properties, additionalProperties, items, anyOf, oneOf } = node
  const branches = (all: readonly Node[]) => all.map((one) => (isNull(one) ? one : inside(one, path, file)))
  return {
    ...node,
    ...(properties === undefined
      ? {}
      : {
          properties: Object.fromEntries(
            Object.entries(properties).map(([key, child]) => [key, decorated(child, [...path, key], file)]),
          ),
        }),
    ...(typeof additionalProperties === 'object'
      ? { additionalProperties: decorated(additionalProperties, [...path, '*'], file) }
      : {}),
    ...(typeof items === 'object' ? { items: inside(items, [...path, '[]'], file) } : {}),
    ...(anyOf === undefined ? {} : { anyOf: branches(anyOf) }),
    ...(oneOf === undefined ? {} : { oneOf: branches(oneOf) }),
  }
}

const decorated = (node: Node, path: readonly string[], file: File): Node => ({
  ...inside(node, path, file),
  ...told(node, path, file),
})

/** JSON Schemas (draft 2020-12) of the three kinds of file, with everything that an editor can show. */
export const editorSchemas = (): JsonSchemas => {
  const plain = jsonSchemas()
  const of = (file: File): object => inside(plain[file] as Node, [], file)
  return { machine: of('machine'), scenario: of('scenario'), shop: of('shop') }
}
