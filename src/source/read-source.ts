import { LineCounter, parseDocument, type YAMLError } from 'yaml'
import type { Diagnostic, Span } from '../diagnostics/diagnostic.ts'
import { locator } from './locate.ts'
import type { Place, SourceFile } from './source.ts'
import { decode } from './text.ts'
import { toData } from './to-data.ts'

/** Reads YAML that may be hostile. Never throws for what is in the file: every problem is a diagnostic, all of one run. */
export function readSource(bytes: Uint8Array | string, file: string): SourceFile {
  const decoded = decode(bytes, file)
  const { text } = decoded
  if (!decoded.readable) return unread(file, text, decoded.diagnostics)
  const lines = new LineCounter()
  const spanOf = (from: number, to: number): Span => spanIn(text, lines, from, to)
  const report = (code: string, from: number, to: number, message: string, hint: string): Diagnostic => ({
    code, severity: 'error', origin: { file, path: [] }, span: spanOf(from, to), message, hint,
  })
  const directives = directivesIn(text)
  // prettyErrors would only put source lines into the messages, and those are added once, when a diagnostic is printed.
  const document = parseDocument(withoutDirectives(text, directives), {
    lineCounter: lines, version: '1.2', schema: 'core', merge: false, strict: true, uniqueKeys: false, prettyErrors: false, logLevel: 'error',
  })
  const refusedDirectives = directives.map(([from, to]) =>
    report('source-directive', from, to, `a directive: ${text.slice(from, to)}`, 'take it out; files are read as YAML 1.2'))
  const broken = document.errors.map((error) => report('source-yaml', ...rangeOf(error), ...explain(error)))
  const before = [...decoded.diagnostics, ...refusedDirectives, ...broken]
  if (broken.length > 0) return unread(file, text, before.sort(byPlace))
  const read = toData(document.contents, text, report)
  const empty = read.data === null && before.length === 0
    ? [report('source-empty', 0, 1, 'the file is empty', 'write the job, lathe, toolbox or moves in it')] : []
  return {
    file, text,
    data: empty.length > 0 ? undefined : read.data,
    diagnostics: [...before, ...read.diagnostics, ...empty].sort(byPlace),
    ...locator(read.root, spanOf),
  }
}

/** A file whose text or YAML is broken: nothing in it has a place. */
function unread(file: string, text: string, diagnostics: readonly Diagnostic[]): SourceFile {
  const root: Place = { key: null, value: [0, 0], written: false, scalar: undefined, children: new Map() }
  return { file, text, data: undefined, diagnostics, ...locator(root, () => ({ line: 1, column: 1, length: 1 })) }
}

/** A span never runs beyond its first line. */
function spanIn(text: string, lines: LineCounter, from: number, to: number): Span {
  const { line, col } = lines.linePos(from)
  const end = text.slice(from, Math.max(from, to)).search(/\r?\n/)
  const written = text.slice(from, end < 0 ? to : from + end).trimEnd()
  return { line: Math.max(1, line), column: Math.max(1, col), length: Math.max(1, written.length) }
}

const rangeOf = ({ pos }: YAMLError): [number, number] => [pos[0], Math.max(pos[0] + 1, pos[1])]

/** Lines of directives, which can stand only before the first document. `%YAML 1.1` would make yes a boolean and 012 ten. */
function directivesIn(text: string): [from: number, to: number][] {
  const head = /^(?:[ \t]*(?:#[^\n]*)?\r?\n|%[^\n]*(?:\n|$))*/.exec(text)?.[0] ?? ''
  return Array.from(head.matchAll(/^%[^\r\n]*/gm), (match) => [match.index, match.index + match[0].length])
}

/** Made comments, so that the rest is read as YAML 1.2 and every offset stays. */
const withoutDirectives = (text: string, directives: readonly (readonly [number, number])[]): string =>
  directives.reduce((result, [from]) => `${result.slice(0, from)}#${result.slice(from + 1)}`, text)

const byPlace = ({ span: one }: Diagnostic, { span: other }: Diagnostic): number =>
  one && other ? one.line - other.line || one.column - other.column : 0

/** What the library says, in the reader's words where it helps, with a remedy. */
function explain({ code, message }: YAMLError): [message: string, hint: string] {
  const said = message.charAt(0).toLowerCase() + message.slice(1).replace(/\.$/, '')
  return [said, REMEDIES[code] ?? 'look at the indentation, colons and quotes of this line and the one before']
}

const REMEDIES: Partial<Record<YAMLError['code'], string>> = {
  TAB_AS_INDENT: 'indent with blanks, not with tabs',
  MULTIPLE_DOCS: 'give one document in a file: take out the --- line and what belongs elsewhere',
  BAD_INDENT: 'indent everything that belongs together by the same number of blanks',
  MISSING_CHAR: 'look for a colon, quote or bracket that is missing on this line',
  BLOCK_AS_IMPLICIT_KEY: 'put text that has a colon in it in quotes',
}
