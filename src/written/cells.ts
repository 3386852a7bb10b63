import type { Span } from '../diagnostics/diagnostic.ts'

export type Cell = { readonly text: string; readonly span: Span }
export type Record = { readonly cells: readonly Cell[]; readonly span: Span }

/**
 * The records of comma-separated text: quotes as spreadsheets write them. Empty lines and lines that begin with # are
 * skipped.
 */
export function cellsOf(text: string): { records: readonly Record[]; open: Span | null } {
  const records: Record[] = []
  const at: At = { text, offset: 0, line: 1, start: 0 }
  while (at.offset < text.length) {
    if (skipped(at)) continue
    const line = at.line
    const begin = at.offset
    const cells: Cell[] = []
    for (let more = true; more; ) {
      const { cell, closed } = oneCell(at)
      if (!closed) return { records, open: cell.span }
      cells.push(cell)
      more = text[at.offset] === ','
      if (more) at.offset++
    }
    const length = Math.max(1, text.slice(begin, at.offset).split('\n')[0]!.length)
    records.push({ cells, span: { line, column: 1, length } })
    newline(at)
  }
  return { records, open: null }
}

/** The current place of the reader; `start` is the offset of the line. */
type At = { readonly text: string; offset: number; line: number; start: number }

function newline(at: At): void {
  if (at.text[at.offset] === '\r') at.offset++
  if (at.text[at.offset] === '\n') at.offset++
  at.line++
  at.start = at.offset
}

function skipped(at: At): boolean {
  const end = at.text.indexOf('\n', at.offset)
  const line = at.text.slice(at.offset, end < 0 ? at.text.length : end).trim()
  if (!/^[,\s]*$/.test(line) && !line.startsWith('#')) return false
  at.offset = end < 0 ? at.text.length : end
  newline(at)
  return true
}

function oneCell(at: At): { cell: Cell; closed: boolean } {
  const { text, line } = at
  const from = at.offset
  const column = from - at.start + 1
  const blanks = /^[ \t]*"/.exec(text.slice(from, from + 200))
  if (blanks === null) {
    while (at.offset < text.length && !/[,\r\n]/.test(text[at.offset]!)) at.offset++
    return {
      cell: { text: text.slice(from, at.offset), span: spanOf(text.slice(from, at.offset), line, column) },
      closed: true,
    }
  }
  at.offset += blanks[0].length
  let written = ''
  for (;;) {
    const next = text[at.offset]
    if (next === undefined) return { cell: { text: written, span: { line, column, length: 1 } }, closed: false }
    if (next === '"' && text[at.offset + 1] !== '"') break
    if (next === '\n') {
      at.line++
      at.start = at.offset + 1
    }
    written += next
    at.offset += next === '"' ? 2 : 1
  }
  at.offset++
  while (at.offset < text.length && !/[,\r\n]/.test(text[at.offset]!)) written += text[at.offset++]
  return {
    cell: { text: written, span: { line, column, length: Math.max(1, at.line === line ? at.offset - from : 1) } },
    closed: true,
  }
}

/** The span of the written word, without the blanks around it. */
const spanOf = (written: string, line: number, column: number): Span => ({
  line,
  column: column + (written.length - written.trimStart().length),
  length: Math.max(1, written.trim().length),
})
