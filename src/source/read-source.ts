import { LineCounter, type YAMLError } from 'yaml'
import type { Diagnostic, Span } from '../diagnostics/diagnostic.ts'
import { type Composed, compose, DEEPEST, MOST_LEXEMES } from './compose.ts'
import { type Shifted, shiftedLine } from './indentation.ts'
import { locator } from './locate.ts'
import { shorten } from './nodes.ts'
import type { Place, Report, SourceFile } from './source.ts'
import { decode } from './text.ts'
import { toData } from './to-data.ts'

/**
 * Reads YAML that may be hostile. It never throws because of what is in the file: every problem is a diagnostic, and
 * one run reports all of them.
 */
export function readSource(bytes: Uint8Array | string, file: string): SourceFile {
  const decoded = decode(bytes, file)
  const { text } = decoded
  if (!decoded.readable) return unread(file, text, decoded.diagnostics)
  const lines = linesOf(text)
  const spanOf = (from: number, to: number): Span => spanIn(text, lines, from, to)
  const report: Report = (code, from, to, message, hint) => ({
    code,
    severity: 'error',
    origin: { file, path: [] },
    span: spanOf(from, to),
    message,
    hint,
  })
  const directives = directivesIn(text)
  const composed = compose(withoutDirectives(text, directives))
  const refused = directives.map(([from, to]) =>
    report(
      'source-directive',
      from,
      to,
      `a directive: ${text.slice(from, to)}`,
      'take it out: files are read as YAML 1.2',
    ),
  )
  const broken = problemsOf(composed, text, report)
  const before = [...decoded.diagnostics, ...refused, ...broken]
  if (broken.length > 0) return unread(file, text, before.sort(byPlace))
  const read = toData(composed.document?.contents ?? null, text, report)
  const empty = read.data === null && before.length === 0
  const nothing = report(
    'source-empty',
    0,
    1,
    'the file is empty',
    'write a job, a lathe or a toolbox in it: groovewright new job prints one to start from',
  )
  return {
    file,
    text,
    data: read.data === null ? undefined : read.data,
    diagnostics: [...before, ...read.diagnostics, ...(empty ? [nothing] : [])].sort(byPlace),
    ...locator(read.root, spanOf),
  }
}

/** A file whose text or YAML is broken: every path is located at its beginning. */
function unread(file: string, text: string, diagnostics: readonly Diagnostic[]): SourceFile {
  const root: Place = { key: null, value: [0, 0], written: false, scalar: undefined, children: new Map() }
  return { file, text, data: undefined, diagnostics, ...locator(root, () => ({ line: 1, column: 1, length: 1 })) }
}

/** Counted here, because the parser's own count leaves out empty lines after the end of a document. */
function linesOf(text: string): LineCounter {
  const lines = new LineCounter()
  lines.addNewLine(0)
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines.addNewLine(at + 1)
  return lines
}

/** A span never runs beyond its first line. */
function spanIn(text: string, lines: LineCounter, from: number, to: number): Span {
  const { line, col } = lines.linePos(from)
  const end = text.slice(from, Math.max(from, to)).search(/\r?\n/)
  const written = text.slice(from, end < 0 ? to : from + end).trimEnd()
  return { line, column: col, length: Math.max(1, written.length) }
}

/**
 * Lines of directives, which are only allowed before the first document. `%YAML 1.1` would make yes a boolean and 012
 * ten.
 */
function directivesIn(text: string): [from: number, to: number][] {
  const found: [number, number][] = []
  for (let from = 0; from < text.length; ) {
    const next = text.indexOf('\n', from)
    const line = text.slice(from, next < 0 ? text.length : next).trimEnd()
    if (line.startsWith('%')) found.push([from, from + line.length])
    else if (line !== '' && !line.trimStart().startsWith('#')) break
    from += next < 0 ? text.length : next - from + 1
  }
  return found
}

/** Turned into comments, so that the rest is read as YAML 1.2 and every offset stays the same. */
function withoutDirectives(text: string, directives: readonly (readonly [number, number])[]): string {
  const parts = directives.map(([from], index) => text.slice((directives[index - 1]?.[0] ?? -1) + 1, from))
  return [...parts, text.slice((directives.at(-1)?.[0] ?? -1) + 1)].join('#')
}

const byPlace = ({ span: one }: Diagnostic, { span: other }: Diagnostic): number =>
  one && other ? one.line - other.line || one.column - other.column : 0

function problemsOf({ document, deep, second, many }: Composed, text: string, report: Report): Diagnostic[] {
  if (many === true) {
    const hint = 'give a job, lathe, toolbox or moves file of ordinary size'
    return [report('source-too-large', 0, 1, `the file has more than ${MOST_LEXEMES} words and signs`, hint)]
  }
  // What is missing at the end of the file is shown at the last character written.
  const last = Math.max(0, text.trimEnd().length - 1)
  // After a tab in the indentation the parser is lost: what it reports next is about the tab, not about the file.
  const errors = document?.errors ?? []
  const tab = errors.findIndex(({ code }) => code === 'TAB_AS_INDENT')
  const shifted = shiftedLine(text, errors)
  if (shifted !== null) return [indentation(shifted, report)]
  const found = (tab < 0 ? errors : errors.slice(0, tab + 1)).map((error) => {
    const from = Math.min(error.pos[0], last)
    return report('source-yaml', from, Math.max(from + 1, error.pos[1]), ...explain(error))
  })
  if (deep !== null) {
    found.push(
      report(
        'source-depth',
        deep,
        deep + 1,
        `nested more than ${DEEPEST} levels deep`,
        'take out brackets, blanks or dashes that are too many',
      ),
    )
  }
  if (second !== null) {
    found.push(
      report(
        'source-documents',
        second,
        second + 3,
        'a second document begins here',
        'give each file one document: take out the --- line',
      ),
    )
  }
  return found
}

function indentation({ offset, length, indent, columns }: Shifted, report: Report): Diagnostic {
  const blanks = (count: number): string => (count === 0 ? 'no blanks' : `${count} ${count === 1 ? 'blank' : 'blanks'}`)
  const ways = columns
    .slice(0, 3)
    .map((one) => `${blanks(one.column)}, in line with "${shorten(one.with)}" of line ${one.like}`)
  return report(
    'source-yaml',
    offset,
    offset + length,
    `this line is indented by ${blanks(indent)}, which fits nothing around it`,
    `put before it ${ways.join('; or ')}`,
  )
}

/**
 * The library's message with a remedy; in the reader's own words where the library's message is about its internals.
 */
function explain({ code, message }: YAMLError): [message: string, hint: string] {
  const sentence = message.charAt(0).toLowerCase() + message.slice(1).replace(/\.$/, '')
  return [sentence, REMEDIES[code] ?? 'look at the indentation, colons and quotes of this line and the one before']
}

const REMEDIES: Partial<Record<YAMLError['code'], string>> = {
  TAB_AS_INDENT: 'indent with blanks',
  BAD_INDENT: 'indent everything that belongs together by the same number of blanks, and close every bracket',
  MISSING_CHAR: 'look for a colon, comma, quote or bracket that is missing',
  BLOCK_AS_IMPLICIT_KEY: 'put text that has a colon and a blank in it in quotes',
}
