import * as z from 'zod/mini'
import { latheFileSchema } from '../lathe/schema.ts'
import { jobSchema, toolboxSchema } from './schema.ts'

export type SchemaName = 'job' | 'lathe' | 'toolbox'

/** What a file may hold, as JSON Schema (draft 7), for editors. Combinations of keys are checked only when the file is read. */
export const jsonSchema = (name: SchemaName): object =>
  z.toJSONSchema(SCHEMAS[name], { io: 'input', target: 'draft-7' })

const SCHEMAS = { job: jobSchema, lathe: latheFileSchema, toolbox: toolboxSchema } as const
