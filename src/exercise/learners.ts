import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { Load } from '../job/read-files.ts'
import type { SourceFile } from '../source/source.ts'
import { readCsv } from '../written/csv.ts'
import type { Learner } from './exercise.ts'
import { problem } from './inline.ts'

/** A table of learners: who, and what is only theirs. The path of a lathe file is relative to the table. */
export const readLearners = (
  path: string,
  from: SourceFile,
  load: Load,
  diagnostics: Diagnostic[],
): readonly Learner[] => {
  const loaded = load(path, from.file)
  if (!loaded.ok) {
    diagnostics.push(problem(from.file, ['learners'], 'unreadable', loaded.message, loaded.hint))
    return []
  }
  const table = readCsv(loaded.bytes, loaded.file, 'learner,lathe')
  diagnostics.push(...table.diagnostics)
  const rows = (table.data as { moves: readonly Readonly<Record<string, string>>[] }).moves
  return rows.flatMap((row, index): Learner[] => {
    const { learner, ...own } = row
    if (learner === undefined) {
      diagnostics.push({
        ...problem(loaded.file, [], 'learner', 'the row names no learner', 'give a name in the column learner'),
        span: table.locate(['moves', index], 'value'),
      })
      return []
    }
    return [{ name: learner, own: new Map(Object.entries(own)), from: loaded.file }]
  })
}
