import type { SchemaName } from '../../job/json-schema.ts'
import type { Io } from '../io.ts'

export type SchemaKind = SchemaName | 'sheet' | 'moves' | 'exercise' | 'answers' | 'manifest' | 'grades'

/** The schema of a file that the program reads, or of data that it writes. */
export const schemaCommand = async (kind: SchemaKind, io: Io): Promise<number> => {
  io.stdout.write(`${JSON.stringify(await schemaOf(kind), null, 2)}\n`)
  return 0
}

const schemaOf = async (kind: SchemaKind): Promise<object> => {
  switch (kind) {
    case 'sheet':
      return (await import('../../print/json/schema.ts')).sheetSchema()
    case 'moves':
      return (await import('../../written/json-schema.ts')).movesSchema()
    case 'exercise':
      return (await import('../../exercise/json-schema.ts')).exerciseJsonSchema()
    case 'manifest':
      return (await import('../../exercise/json-schema.ts')).manifestSchema()
    case 'answers':
      return (await import('../../grading/json-schema.ts')).answersSchema()
    case 'grades':
      return (await import('../../grading/json-schema.ts')).gradesSchema()
    default:
      return (await import('../../job/json-schema.ts')).jsonSchema(kind)
  }
}
