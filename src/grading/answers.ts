import type { Diagnostic, Span } from '../diagnostics/diagnostic.ts'
import { readSource } from '../source/read-source.ts'
import type { SourceFile } from '../source/source.ts'
import { readCsv } from '../written/csv.ts'

/** What one learner wrote: the text of each answer by the id of its blank, and where it stands. */
export type Answers = {
  readonly sheet: string
  readonly learner: string | null
  /** As on the form that was handed out; null where the form does not tell. */
  readonly set: string | null
  readonly values: ReadonlyMap<string, string>
  readonly at: (id: string) => Span
  readonly file: string
  readonly source: SourceFile
}

export type ReadAnswers = {
  /** Empty where the file cannot be read. */
  readonly answers: readonly Answers[]
  readonly diagnostics: readonly Diagnostic[]
  readonly source: SourceFile
}

const HINT = 'fill in the form as it was handed out: sheet, learner, and answers with an id and a value each'

/** A form as it was handed out (YAML), or a table with the columns sheet, id and value, of one learner or of many. */
export const readAnswers = (bytes: Uint8Array | string, file: string): ReadAnswers =>
  /\.csv$/i.test(file) ? fromTable(bytes, file) : fromForm(bytes, file)

const fromForm = (bytes: Uint8Array | string, file: string): ReadAnswers => {
  const source = readSource(bytes, file)
  const diagnostics: Diagnostic[] = [...source.diagnostics]
  const wrong = (path: (string | number)[], message: string): null => {
    diagnostics.push({ code: 'answers', severity: 'error', origin: { file, path }, message, hint: HINT })
    return null
  }
  if (diagnostics.length > 0 || source.data === undefined) return { answers: [], diagnostics, source }
  const { data } = source
  if (typeof data !== 'object' || data === null || Array.isArray(data)) wrong([], 'this is no answer form')
  const { sheet, learner, set, answers } = (data ?? {}) as Readonly<Record<string, unknown>>
  if (diagnostics.length === 0 && (typeof sheet === 'object' || sheet === undefined))
    wrong([], 'the form does not say which sheet it is')
  if (diagnostics.length === 0 && !Array.isArray(answers)) wrong(['answers'], 'there is no list of answers')
  const values = new Map<string, string>()
  const index = new Map<string, number>()
  for (const [i, one] of (Array.isArray(answers) ? (answers as unknown[]) : []).entries()) {
    const { id } = (typeof one === 'object' && one !== null ? one : {}) as { id?: unknown }
    const name = id === undefined || typeof id === 'object' ? null : (source.scalarSource(['answers', i, 'id']) ?? null)
    if (name === null) wrong(['answers', i], 'an answer has no id')
    else if (values.has(name)) wrong(['answers', i, 'id'], `${JSON.stringify(name)} is answered twice`)
    else {
      const value = (one as { value?: unknown }).value
      if (typeof value === 'object' && value !== null) wrong(['answers', i, 'value'], 'a value is one number or word')
      values.set(name, value == null ? '' : (source.scalarSource(['answers', i, 'value']) ?? '').trim())
      index.set(name, i)
    }
  }
  if (diagnostics.length > 0) return { answers: [], diagnostics, source }
  const at = (id: string): Span => source.locate(['answers', index.get(id) ?? 0, 'value'], 'value')
  return {
    answers: [
      {
        sheet: source.scalarSource(['sheet']) ?? '',
        learner: typeof learner === 'string' && learner !== '' ? learner : null,
        set: typeof set === 'string' && set !== '' ? set : null,
        values,
        at,
        file,
        source,
      },
    ],
    diagnostics,
    source,
  }
}

const fromTable = (bytes: Uint8Array | string, file: string): ReadAnswers => {
  const source = readCsv(bytes, file, 'sheet,learner,id,asks,value')
  const diagnostics: Diagnostic[] = [...source.diagnostics]
  const rows = (source.data as { moves: readonly Readonly<Record<string, string>>[] }).moves
  const sheets = new Map<string, { learner: string | null; values: Map<string, string>; index: Map<string, number> }>()
  for (const [i, { sheet, learner, id, value = '' }] of rows.entries()) {
    if (sheet === undefined || id === undefined) {
      const message = `the row has no ${sheet === undefined ? 'sheet' : 'id'}`
      const span = source.locate(['moves', i], 'value')
      diagnostics.push({ code: 'answers', severity: 'error', origin: { file, path: [] }, span, message, hint: HINT })
      continue
    }
    const known = sheets.get(sheet) ?? { learner: learner ?? null, values: new Map(), index: new Map() }
    known.values.set(id, value.replace(/^'(?=[-+=@])/, ''))
    known.index.set(id, i)
    sheets.set(sheet, known)
  }
  if (diagnostics.length > 0) return { answers: [], diagnostics, source }
  return {
    answers: [...sheets].map(([sheet, { learner, values, index }]) => ({
      sheet,
      learner,
      set: null,
      values,
      at: (id: string) => source.locate(['moves', index.get(id) ?? 0, 'value'], 'value'),
      file,
      source,
    })),
    diagnostics,
    source,
  }
}
