import type { YAMLError } from 'yaml'
import { compose } from './compose.ts'

/** A line that is too far left or right, and the columns at which the file can be read, the likeliest first. */
export type Shifted = {
  readonly offset: number
  readonly length: number
  readonly indent: number
  readonly columns: readonly Column[]
}

/** The number of blanks, and the line `like` that has a key (or a dash) at that column. */
type Column = { readonly column: number; readonly with: string; readonly like: number; readonly moved: number }

/** Every try reads the whole file. */
const MOST_CHARACTERS = 32 * 1024
const MOST_LINES_BACK = 40

/**
 * The one line whose indentation breaks a file; null if no single line can be moved to fix it. It is tried, not
 * guessed: the parser reports where it got lost, which may be the line before or after, and each column at which lines
 * near it begin is tried there. Of the columns that fix it, the one that moves the line least comes first; the line may
 * belong to something further out.
 */
export function shiftedLine(text: string, errors: readonly YAMLError[]): Shifted | null {
  const [first] = errors
  if (first === undefined || text.length > MOST_CHARACTERS) return null
  if (errors.some(({ code }) => code === 'TAB_AS_INDENT')) return null
  const lines = text.split('\n')
  const at = text.slice(0, first.pos[0]).split('\n').length - 1
  const near = first.code === 'BLOCK_AS_IMPLICIT_KEY' ? [at + 1, at, at - 1] : [at, at + 1, at - 1]
  const tries = near
    .filter((line) => lines[line] !== undefined && isWritten(lines[line]))
    .flatMap((line) => columnsFor(lines, line).map((column) => ({ line, ...column })))
    .sort((one, other) => one.moved - other.moved)
  const found = tries.find(({ line, column }) => reads(movedTo(lines, line, column)))
  if (found === undefined) return null
  const { line } = found
  const columns = tries.filter((one) => one.line === line && reads(movedTo(lines, line, one.column)))
  const indent = indentOf(lines[line]!)
  const offset = lines.slice(0, line).join('\n').length + (line > 0 ? 1 : 0) + indent
  return { offset, length: lines[line]!.trim().length, indent, columns }
}

/**
 * The columns where the lines above it and the next line below begin, nearest first: their dashes for an entry of a
 * list, otherwise their keys.
 */
function columnsFor(lines: readonly string[], line: number): Column[] {
  const entry = lines[line]!.trimStart().startsWith('- ')
  const indent = indentOf(lines[line]!)
  const below = lines.findIndex((each, index) => index > line && isWritten(each))
  const above = Array.from({ length: Math.min(line, MOST_LINES_BACK) }, (_, back) => line - 1 - back)
  const columns = new Map<number, Column>()
  for (const other of below < 0 ? above : [...above, below]) {
    const written = lines[other]!
    const dash = /^ *- +/.exec(written)?.[0]
    if (!isWritten(written) || (entry && dash === undefined)) continue
    const column = entry ? indentOf(written) : (dash?.length ?? indentOf(written))
    const key = entry ? '-' : (/^[^:]*/.exec(written.slice(column))?.[0] ?? '')
    if (column !== indent && !columns.has(column))
      columns.set(column, { column, with: key, like: other + 1, moved: Math.abs(column - indent) })
  }
  return [...columns.values()]
}

const isWritten = (line: string): boolean => line.trim() !== '' && !line.trimStart().startsWith('#')

const indentOf = (line: string): number => line.length - line.trimStart().length

const movedTo = (lines: readonly string[], line: number, column: number): string =>
  lines.map((each, index) => (index === line ? `${' '.repeat(column)}${each.trimStart()}` : each)).join('\n')

const reads = (text: string): boolean => {
  const { document, deep, second } = compose(text)
  return document !== null && deep === null && second === null && document.errors.length === 0
}
