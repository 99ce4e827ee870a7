/**
 * The published schemas are those of the code: `npx vitest run test/survey/editor-schemas.test.ts -u` writes them anew. Every
 * key says what it is, every figure how it may be written, so that completion and hover help.
 */
import { describe, expect, test } from 'vitest'
import { editorSchemas } from '../../src/survey/editor-schemas.ts'
import { KEY_WORDS } from '../../src/survey/key-words.ts'
import { DIMENSIONS, type Dimension } from '../../src/units/dimensions.ts'
import { parseQuantity } from '../../src/units/quantity.ts'

interface Node {
  readonly type?: string | readonly string[]
  readonly description?: string
  readonly examples?: readonly unknown[]
  readonly required?: readonly string[]
  readonly additionalProperties?: Node | boolean
  readonly properties?: { readonly [key: string]: Node }
  readonly items?: Node
  readonly anyOf?: readonly Node[]
  readonly oneOf?: readonly Node[]
}

const schemas = editorSchemas() as unknown as { readonly [file: string]: Node }

describe('published for editors', () => {
  test.each(Object.entries(schemas))('%s', async (file, schema) => {
    await expect(`${JSON.stringify(schema, null, 1)}\n`).toMatchFileSnapshot(
      `../../scenarios/schema/${file}.schema.json`,
    )
  })
})

/** Every property with its path, those of all branches and entries of lists too. */
const keysOf = (node: Node, path: string): readonly (readonly [string, Node])[] => [
  ...Object.entries(node.properties ?? {}).flatMap(([key, child]) => [
    [`${path}.${key}`, child] as const,
    ...keysOf(child, `${path}.${key}`),
  ]),
  ...(typeof node.additionalProperties === 'object' ? keysOf(node.additionalProperties, `${path}.*`) : []),
  ...(node.items === undefined ? [] : keysOf(node.items, `${path}.[]`)),
  ...[...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap((branch) => keysOf(branch, path)),
]
const keys = Object.entries(schemas).flatMap(([file, schema]) => keysOf(schema, file))

/** A figure with a unit: its description lists the units. */
const dimensionOf = ({ description }: Node): Dimension | null =>
  (Object.keys(DIMENSIONS) as Dimension[]).find((name) =>
    new RegExp(`(?:^|— )${name}, such as "`, 'u').test(description ?? ''),
  ) ?? null

describe('an editor is told', () => {
  test('of every key what it is', () => {
    expect(keys.length).toBeGreaterThan(300)
    expect(keys.filter(([, { description }]) => (description ?? '').length < 5).map(([path]) => path)).toEqual([])
  })

  test('of every figure its units, and an example that can be read', () => {
    const figures = keys.filter(([, node]) => dimensionOf(node) !== null)
    expect(figures.length).toBeGreaterThan(150)
    for (const [path, node] of figures) {
      expect(node.description, path).toMatch(/units: \S/u)
      const dimension = dimensionOf(node) as Dimension
      expect(node.examples?.length, path).toBe(1)
      expect(parseQuantity(String(node.examples?.[0]), dimension).ok, `${path}: ${node.examples?.[0]}`).toBe(true)
    }
  })

  test('what is taken where nothing is written, at the end', () => {
    const at = new Map(keys)
    expect(at.get('machine.engine.governor-droop')?.description).toMatch(/default: 8 %$/u)
    expect(at.get('machine.other-cooling-surface')?.description).toMatch(/default: 0 m2$/u)
  })

  test('in no figure’s description an example of nothing', () => {
    for (const [path, { description }] of keys) expect(description, path).not.toMatch(/such as "1 /u)
  })

  test('of no row what belongs nowhere', () => {
    const ends = (path: string, row: string) => `.${path.split('.').slice(1).join('.')}`.endsWith(`.${row}`)
    const withNames = [...keys.map(([path]) => path), 'machine.circuits.*', 'machine.travel.lines.*']
    const unused = KEY_WORDS.filter(
      ({ file, path }) => !withNames.some((key) => (file === null || key.startsWith(`${file}.`)) && ends(key, path)),
    )
    expect(unused.map(({ path }) => path)).toEqual([])
  })
})
