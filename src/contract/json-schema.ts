/** The JSON Schemas (draft 2020-12) of what the command prints, for whoever reads it by a program. */
import { z } from 'zod'
import { resultDocument } from './result-schema.ts'
import { search } from './search-schema.ts'

const schemaOf = (title: string, schema: z.ZodType): object => ({
  ...z.toJSONSchema(schema, { io: 'input', reused: 'inline' }),
  title,
})

/** Of `check --json` and of `reach --json`, each of one question; of several questions a list of these is printed. */
export const documentSchemas = (): { readonly result: object; readonly search: object } => ({
  result: schemaOf('Result of one question (check --json)', resultDocument),
  search: schemaOf('Search of one question (reach --json)', search),
})
