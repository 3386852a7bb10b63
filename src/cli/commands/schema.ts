import type { Io } from '../io.ts'

/** The schema of a file that the program reads, or of the sheet that it writes. */
export const schemaCommand = async (kind: 'job' | 'lathe' | 'toolbox' | 'sheet' | 'moves', io: Io): Promise<number> => {
  const schema =
    kind === 'sheet'
      ? (await import('../../print/json/schema.ts')).sheetSchema()
      : kind === 'moves'
        ? (await import('../../written/json-schema.ts')).movesSchema()
        : (await import('../../job/json-schema.ts')).jsonSchema(kind)
  io.stdout.write(`${JSON.stringify(schema, null, 2)}\n`)
  return 0
}
