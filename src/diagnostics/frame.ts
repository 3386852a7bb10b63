import type { Diagnostic, Path, Span } from './diagnostic.ts'
import { type Cell, printable, toCells } from './display.ts'
import { brief } from './escaped.ts'

/** What printing needs to know about a file: its name as the user gave it, its text, and the range of a path in it. */
export type FramedSource = {
  readonly file: string
  readonly text: string
  locate(path: Path, at: 'key' | 'value'): Span
}

/** The number of problems that are printed in full; a user with more will fix these first. */
const MOST = 20
/** Cells of a source line that are shown, so that the caret stays on its line in a narrow window. */
const LINE_CELLS = 100
const INDENT = '    '

/**
 * Diagnostics as text, by file (in the order of `sources`, by name) and by line, each with its source line, a caret and
 * a remedy. Empty if there are none; otherwise it ends in a newline.
 */
export function printDiagnostics(
  diagnostics: readonly Diagnostic[],
  sources: ReadonlyMap<string, FramedSource>,
): string {
  const order = new Map([...sources.keys()].map((file, index) => [file, index]))
  const placed = diagnostics.map((diagnostic) => place(diagnostic, sources, order)).sort(byPlace)
  const printed = placed.slice(0, MOST).map((each) => print(each, sources.get(each.diagnostic.origin.file)))
  const rest = placed.length - MOST
  return [...printed, ...(rest > 0 ? [`and ${rest} more`] : [])].map((lines) => `${lines}\n`).join('')
}

type Placed = { readonly diagnostic: Diagnostic; readonly fileIndex: number; readonly span: Span | null }

function place(
  diagnostic: Diagnostic,
  sources: ReadonlyMap<string, FramedSource>,
  order: ReadonlyMap<string, number>,
): Placed {
  const { file } = diagnostic.origin
  const fileIndex = order.get(file) ?? -1
  const source = sources.get(file)
  const span = diagnostic.span ?? source?.locate(diagnostic.origin.path, diagnostic.at ?? 'value') ?? null
  return { diagnostic, fileIndex, span }
}

/** The sort keeps the order in which problems were found if they are at the same place. */
const byPlace = (one: Placed, other: Placed): number =>
  one.fileIndex - other.fileIndex ||
  (one.span?.line ?? 0) - (other.span?.line ?? 0) ||
  (one.span?.column ?? 0) - (other.span?.column ?? 0)

function print({ diagnostic, span }: Placed, source: FramedSource | undefined): string {
  const line = source && span ? lineOf(source.text, span.line) : ''
  const where = span ? `:${span.line}:${span.column}` : ''
  const head = `${printable(brief(diagnostic.origin.file))}${where}: ${diagnostic.severity}: ${printable(brief(diagnostic.message))}`
  const remedy = diagnostic.hint === undefined ? [] : [`  remedy: ${printable(brief(diagnostic.hint))}`]
  return [head, ...(span ? underline(line, span) : []), ...remedy].join('\n')
}

/** The source line and a line of carets under the span; nothing if the line is empty. */
function underline(line: string, span: Span): string[] {
  if (line.trim() === '') return []
  const from = span.column - 1
  const to = from + Math.max(1, span.length)
  const cells = trim(toCells(line), from)
  const before = width(cells.filter((cell) => cell.end <= from))
  const under = width(cells.filter((cell) => cell.end > from && cell.start < to))
  return [
    `${INDENT}${cells.map((cell) => cell.shown).join('')}`.trimEnd(),
    `${INDENT}${' '.repeat(before)}${'^'.repeat(Math.max(1, under))}`,
  ]
}

/** Cuts a long line to a window around the offset `from`, with … where something was cut off. */
function trim(cells: readonly Cell[], from: number): Cell[] {
  if (width(cells) <= LINE_CELLS) return [...cells]
  const target = cells.findIndex((cell) => cell.end > from)
  const first = Math.max(0, (target < 0 ? cells.length : target) - Math.floor(LINE_CELLS / 3))
  let end = first
  for (let used = 0; end < cells.length; end++) {
    used += (cells[end] as Cell).width
    if (used > LINE_CELLS) break
  }
  const kept = cells.slice(first, end)
  const head = first > 0 ? [ellipsis(kept[0]?.start ?? 0)] : []
  const tail = end < cells.length ? [ellipsis(Number.POSITIVE_INFINITY)] : []
  return [...head, ...kept, ...tail]
}

const ellipsis = (offset: number): Cell => ({ shown: '…', width: 1, start: offset, end: offset })

const width = (cells: readonly Cell[]): number => cells.reduce((sum, cell) => sum + cell.width, 0)

function lineOf(text: string, line: number): string {
  let start = 0
  for (let number = 1; number < line; number++) {
    const next = text.indexOf('\n', start)
    if (next < 0) return ''
    start = next + 1
  }
  const end = text.indexOf('\n', start)
  return text.slice(start, end < 0 ? text.length : end).replace(/\r$/, '')
}
