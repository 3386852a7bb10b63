import type { Span } from '../diagnostics/diagnostic.ts'
import { MOST_MOVES_OF_A_JOB } from '../moves/bounds.ts'

export type Cell = { readonly text: string; readonly span: Span }
export type Record = { readonly cells: readonly Cell[]; readonly span: Span }

/** `open`: a quote that is never closed. `over`: where there are more records, or more cells in one, than are read. */
export type Cells = { readonly records: readonly Record[]; readonly open: Span | null; readonly over: Span | null }

/** A heading, and as many moves as a job may have. */
const MOST_RECORDS = MOST_MOVES_OF_A_JOB + 1
/** Several times the columns that are known. */
const MOST_CELLS = 60

/**
 * The records of comma-separated text: quotes as spreadsheets write them. Empty lines and lines that begin with # are
 * skipped.
 */
export function cellsOf(text: string): Cells {
  const records: Record[] = []
  const at: At = { text, offset: 0, line: 1, start: 0 }
  while (at.offset < text.length) {
    if (skipped(at)) continue
    const line = at.line
    const begin = at.offset
    const cells: Cell[] = []
    for (let more = true; more; ) {
      const { cell, closed } = oneCell(at)
      if (!closed) return { records, open: cell.span, over: null }
      if (records.length === MOST_RECORDS || cells.length === MOST_CELLS)
        return { records, open: null, over: cell.span }
      cells.push(cell)
      more = text[at.offset] === ','
      if (more) at.offset++
    }
    const length = Math.max(1, text.slice(begin, at.offset).split('\n')[0]!.length)
    records.push({ cells, span: { line, column: 1, length } })
    newline(at)
  }
  return { records, open: null, over: null }
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
  const end = endOfQuoted(text, at.offset)
  if (end < 0) return { cell: { text: '', span: { line, column, length: 1 } }, closed: false }
  let written = text.slice(at.offset, end).replaceAll('""', '"')
  for (let next = text.indexOf('\n', at.offset); next >= 0 && next < end; next = text.indexOf('\n', next + 1)) {
    at.line++
    at.start = next + 1
  }
  at.offset = end + 1
  const behind = at.offset
  while (at.offset < text.length && !/[,\r\n]/.test(text[at.offset]!)) at.offset++
  written += text.slice(behind, at.offset)
  return {
    cell: { text: written, span: { line, column, length: Math.max(1, at.line === line ? at.offset - from : 1) } },
    closed: true,
  }
}

/** Of the quote that closes it: one that is not doubled; -1 if there is none. */
const endOfQuoted = (text: string, from: number): number => {
  let at = text.indexOf('"', from)
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2)
  return at
}

/** The span of the written word, without the blanks around it. */
const spanOf = (written: string, line: number, column: number): Span => ({
  line,
  column: column + (written.length - written.trimStart().length),
  length: Math.max(1, written.trim().length),
})
