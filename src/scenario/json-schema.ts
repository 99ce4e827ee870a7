/**
 * The JSON Schema of each kind of file, made from the schemas that check them, so that an editor completes keys and shows
 * what belongs where. What spans several keys (shares that make 100 %, lines that exist) is checked by the reader alone.
 */
import { z } from 'zod'
import { machineFile } from './machine-schema.ts'
import { scenarioFile } from './scenario-schema.ts'
import { shopFile } from './shop-schema.ts'

export interface JsonSchemas {
  readonly machine: object
  readonly scenario: object
  /** Of every file in the shop's folder: letterhead and rates, parts, labour. */
  readonly shop: object
}

const schemaOf = (title: string, schema: z.ZodType): object => ({
  ...z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }),
  title,
})

/** JSON Schemas (draft 2020-12) of the three kinds of file. */
export const jsonSchemas = (): JsonSchemas => ({
  machine: schemaOf('Machine', machineFile),
  scenario: schemaOf('Scenario', scenarioFile),
  shop: schemaOf('Shop, parts and labour', shopFile),
})
