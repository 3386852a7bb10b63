import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic, Path, Span } from '../diagnostics/diagnostic.ts'
import type { SourceFile } from '../source/source.ts'
import { decode, MOST_TABLE_BYTES } from '../source/text.ts'
import { type Cell, cellsOf, type Record } from './cells.ts'

/**
 * A table with a heading, as the same data that a YAML list of moves has: `{ moves: [{ column: text }] }`. Empty cells
 * are left out. `columns`: what its heading is, for who has to write one.
 */
export function readCsv(bytes: Uint8Array | string, file: string, columns = COLUMNS): SourceFile {
  const decoded = decode(bytes, file, MOST_TABLE_BYTES)
  const { text } = decoded
  const { records, open, over } = decoded.readable ? cellsOf(text) : { records: [], open: null, over: null }
  const [heading, ...rows] = records
  const problem = problemIn(file)
  const diagnostics: Diagnostic[] = [...decoded.diagnostics]
  if (open !== null) diagnostics.push(problem('csv-quote', open, 'a quote is never closed', 'close it with "'))
  if (over !== null)
    diagnostics.push(
      problem('csv-many', over, 'the list goes on further than is read', 'give a list of moves: one line a move'),
    )
  if (heading === undefined) {
    if (decoded.readable)
      diagnostics.push(problem('csv-empty', START, 'the list is empty', `begin with a line of columns: ${columns}`))
    return table(file, text, [], [], diagnostics)
  }
  diagnostics.push(...headingProblems(heading, problem))
  const names = heading.cells.map((cell) => cell.text.trim())
  for (const row of rows) {
    const extra = row.cells.slice(names.length).find((cell) => cell.text.trim() !== '')
    if (extra !== undefined) {
      const hint =
        'write one value a column; put a value that has a comma in it in double quotes, use a point in numbers'
      const message = `the row has ${row.cells.length} values, the heading ${names.length} columns`
      diagnostics.push(problem('csv-columns', extra.span, message, hint))
    }
  }
  return table(file, text, names, rows, diagnostics)
}

/** Of a list of moves. */
const COLUMNS = 'feature,action,slide,reading'

const START: Span = { line: 1, column: 1, length: 1 }

type Problem = (code: Code, span: Span, message: string, hint: string) => Diagnostic
const problemIn =
  (file: string): Problem =>
  (code, span, message, hint) => ({ code, severity: 'error', origin: { file, path: [] }, span, message, hint })

function headingProblems({ cells }: Record, problem: Problem): Diagnostic[] {
  const first = cells[0]!
  if (cells.length === 1 && /[;\t]/.test(first.text)) {
    return [problem('csv-comma', first.span, 'the columns are not separated by commas', 'save it with commas between')]
  }
  return cells.flatMap((cell, index) => {
    const name = cell.text.trim()
    if (name === '') return [problem('csv-column', cell.span, 'a column has no name', 'name it, or take it out')]
    const before = cells.findIndex((other) => other.text.trim() === name)
    if (before === index) return []
    return [problem('csv-column', cell.span, `"${name}" is here twice`, 'keep one of the two columns')]
  })
}

function table(
  file: string,
  text: string,
  names: readonly string[],
  rows: readonly Record[],
  diagnostics: readonly Diagnostic[],
): SourceFile {
  const columns = rows.map(
    (row) =>
      new Map<string, Cell>(
        row.cells.flatMap((cell, at) => (at < names.length && cell.text.trim() !== '' ? [[names[at]!, cell]] : [])),
      ),
  )
  const find = (path: Path): Cell | undefined => columns[Number(path[1])]?.get(String(path[2]))
  return {
    file,
    text,
    data: { moves: columns.map((row) => Object.fromEntries([...row].map(([key, cell]) => [key, cell.text.trim()]))) },
    diagnostics,
    locate: (path) => find(path)?.span ?? rows[Number(path[1])]?.span ?? START,
    scalarSource: (path) => find(path)?.text.trim(),
  }
}
