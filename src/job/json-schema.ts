import * as z from 'zod/mini'
import { latheFileSchema } from '../lathe/schema.ts'
import { defaults } from '../units/measure-schema.ts'
import { jobSchema, toolboxSchema } from './schema.ts'

export type SchemaName = 'job' | 'lathe' | 'toolbox'

/**
 * What a file may contain, as JSON Schema (draft 7), for editors. Combinations of keys are checked only when the file
 * is read.
 */
export const jsonSchema = (name: SchemaName): object => jsonSchemaOf(SCHEMAS[name])

/** The same of any schema that is written like them. */
export const jsonSchemaOf = (schema: z.core.$ZodType): object =>
  z.toJSONSchema(schema, { io: 'input', target: 'draft-7', override: addDefault })

export const SCHEMAS = { job: jobSchema, lathe: latheFileSchema, toolbox: toolboxSchema } as const

/** An editor shows only the description, so the default is added at its end; a word is a default for the editor too. */
const addDefault = ({
  zodSchema,
  jsonSchema,
}: {
  zodSchema: z.core.$ZodTypes
  jsonSchema: z.core.JSONSchema.BaseSchema
}) => {
  const says = defaults.get(zodSchema)?.says
  if (says === undefined) return
  jsonSchema.description = `${jsonSchema.description} By default ${says}.`
  if (jsonSchema.enum?.includes(says)) jsonSchema.default = says
}
