/** What the schemas say by themselves; as they are published they are held in test/survey/editor-schemas.test.ts. */
import { describe, expect, test } from 'vitest'
import { jsonSchemas } from '../../src/scenario/json-schema.ts'

const schemas = jsonSchemas()

type Node = { readonly [key: string]: Node } & {
  readonly enum?: readonly string[]
  readonly required?: readonly string[]
}

describe('an editor is told', () => {
  const { machine } = schemas as unknown as { readonly machine: Node }
  test('which keys must be there', () =>
    expect(machine.required).toEqual(['format', 'machine', 'engine', 'fluid', 'reservoir', 'circuits', 'travel']))
  test('which words serve', () =>
    expect(machine.properties?.machine?.properties?.type?.enum).toContain('tracked excavator'))
  test('which units serve', () =>
    expect(String(machine.properties?.engine?.properties?.['net-power']?.description)).toContain('kW, hp, PS'))
  test('that other keys are none', () =>
    expect((machine as unknown as { additionalProperties: unknown }).additionalProperties).toBe(false))
})
