/** The table of entries against the schemas of the files: nothing that can be written is left out, nothing is made up. */
import { describe, expect, test } from 'vitest'
import { jsonSchemas } from '../../src/scenario/json-schema.ts'
import { entryFor, SURVEY } from '../../src/survey/entries.ts'
import type { SurveyEntry } from '../../src/survey/entry.ts'

interface Node {
  readonly type?: string
  readonly properties?: { readonly [key: string]: Node }
  readonly additionalProperties?: Node | boolean
  readonly required?: readonly string[]
  readonly anyOf?: readonly Node[]
  readonly oneOf?: readonly Node[]
}

/** Of a key that may be left out: what stands there when it is not. */
const inner = (node: Node): Node => (node.anyOf ?? node.oneOf)?.find((one) => one.type !== 'null') ?? node

/** Every key that holds a value, as a path with `*` for names; with whether all on the way must be there. */
const leaves = (schema: Node, path: readonly string[] = [], needed = true): readonly (readonly [string, boolean])[] => {
  const node = inner(schema)
  const names = typeof node.additionalProperties === 'object' ? node.additionalProperties : null
  if (node.properties === undefined && names === null) return [[path.join('.'), needed]]
  return [
    ...Object.entries(node.properties ?? {}).flatMap(([key, child]) =>
      leaves(child, [...path, key], needed && (node.required ?? []).includes(key)),
    ),
    ...(names === null ? [] : leaves(names, [...path, '*'], needed)),
  ]
}

/** Written by hand where they are wanted: parts of the parts list, what has one word only, hoses' ratings (off the layline's table). */
const LEFT_OUT = [
  /(?:^|\.)part$/u,
  /^format$/u,
  /\.loop$/u,
  /\.section$/u,
  /\.same-as$/u,
  /\.min-bend-radius$/u,
  /lines\.[^.]+\.max-pressure$/u,
  /\.max-shaft-torque$/u,
  /^(?:breather|alternator|lamp-set|thermostat|harness|cooler-bypass)\./u,
  /^units$/u,
  /^duty\.work\./u,
]

const entriesOf = (file: 'machine' | 'scenario'): readonly SurveyEntry[] =>
  SURVEY.filter((group) => group.file === file).flatMap(({ entries }) => entries)

describe.each(['machine', 'scenario'] as const)('entries of the %s file', (file) => {
  const keys = leaves((jsonSchemas() as unknown as { readonly [kind: string]: Node })[file] as Node)
  const paths = entriesOf(file).map(({ path }) => path)

  test('every key that can be written has one', () => {
    const asked = keys.map(([path]) => path).filter((path) => !LEFT_OUT.some((pattern) => pattern.test(path)))
    expect(asked.filter((path) => !paths.includes(path))).toEqual([])
  })

  test('every entry has its key', () => {
    const known = new Set(keys.map(([path]) => path))
    expect(paths.filter((path) => !known.has(path) && path !== 'duty.work')).toEqual([])
  })

  test('each once', () => expect(new Set(paths).size).toBe(paths.length))

  test('what the schema needs is marked as needed', () => {
    const marked = new Set(
      entriesOf(file)
        .filter(({ needed }) => needed)
        .map(({ path }) => path),
    )
    const must = keys.filter(([path, needed]) => needed && path !== 'format').map(([path]) => path)
    expect([...marked].sort()).toEqual(must.sort())
  })
})

describe('the table', () => {
  test('places on the drawing are 1 to 12, each used', () => {
    const marks = new Set(
      SURVEY.flatMap(({ entries }) => entries.map(({ mark }) => mark)).filter((m) => m !== undefined),
    )
    expect([...marks].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
  })

  test('an entry is found by the path of one circuit', () => {
    expect(entryFor('circuits.left.relief.setting', 'machine')?.label).toBe('Relief: setting by the book')
    expect(entryFor('circuits.left.relief', 'machine')).toBeNull()
    expect(entryFor('site.ambient', 'machine')).toBeNull()
  })
})
