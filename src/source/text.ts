import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic, Span } from '../diagnostics/diagnostic.ts'
import { HIDDEN } from '../diagnostics/escaped.ts'

/** Jobs have about forty lines; a file thousands of times larger is a mistake or an attack. */
export const MOST_BYTES = 256 * 1024

/** A table of moves has a line a move, and is read a line at a time: room for the longest sheet that is printed. */
export const MOST_TABLE_BYTES = 2 * 1024 * 1024

/** Decoded text and what is wrong with it; `readable` = it makes sense to go on and parse it. */
export type Decoded = { readonly text: string; readonly diagnostics: readonly Diagnostic[]; readonly readable: boolean }

/**
 * Turns bytes (or text) into text fit for parsing: UTF-8, no byte-order mark, no characters that hide or overwrite
 * others.
 */
export function decode(bytes: Uint8Array | string, file: string, most = MOST_BYTES): Decoded {
  const report = (code: Code, span: Span, message: string, hint: string): Diagnostic => ({
    code,
    severity: 'error',
    origin: { file, path: [] },
    span,
    message,
    hint,
  })
  const raw = typeof bytes === 'string' ? new TextEncoder().encode(bytes) : bytes
  if (raw.length > most) {
    const message = `the file is larger than the ${most / 1024} KB that are read of one`
    return {
      text: '',
      diagnostics: [
        report('source-too-large', START, message, 'give a job, lathe, toolbox or moves file of ordinary size'),
      ],
      readable: false,
    }
  }
  if (looksLikeUtf16(raw)) {
    return {
      text: '',
      diagnostics: [report('source-utf16', START, 'the file is in UTF-16', 'save it as UTF-8')],
      readable: false,
    }
  }
  const text = (typeof bytes === 'string' ? bytes : new TextDecoder('utf-8', { ignoreBOM: true }).decode(raw)).replace(
    /^\ufeff/,
    '',
  )
  const invalid = typeof bytes === 'string' ? -1 : firstInvalid(text, raw)
  if (invalid >= 0) {
    return {
      text,
      diagnostics: [
        report('source-not-utf8', spanAt(text, invalid, 1), 'the file is not valid UTF-8 here', 'save it as UTF-8'),
      ],
      readable: false,
    }
  }
  const loneReturn = /\r(?!\n)/.exec(text)
  if (loneReturn) {
    const span = spanAt(text, loneReturn.index, 1)
    return {
      text,
      diagnostics: [
        report('source-carriage-return', span, 'a carriage return without a line feed', 'end lines with LF or CR LF'),
      ],
      readable: false,
    }
  }
  return { text, diagnostics: forbiddenIn(text, report), readable: true }
}

const START: Span = { line: 1, column: 1, length: 1 }

/** Names the first character of a string that a file must not contain, raw or by an escape; null if there is none. */
export function forbiddenCharacter(text: string): string | null {
  const match = new RegExp(`[${HIDDEN}]`, 'u').exec(text)
  return match && named(match[0])
}

type Report = (code: Code, span: Span, message: string, hint: string) => Diagnostic

/** What nearly every file is made of. To look for anything else first costs a tenth of looking for what is forbidden. */
const UNUSUAL = /[^\t\n\r -~\u00a0-\u061b]/

function forbiddenIn(text: string, report: Report): Diagnostic[] {
  if (!UNUSUAL.test(text)) return []
  const place = lineFinder(text)
  const found = text.matchAll(new RegExp(`[${HIDDEN}]+`, 'gu'))
  return firstOf(found, MOST_TOLD).map((match) =>
    report(
      'source-character',
      { ...place(match.index), length: match[0].length },
      `a character that cannot be seen: ${named(match[0])}`,
      'take it out',
    ),
  )
}

/** Whoever has so many has more to do than to read of each. */
const MOST_TOLD = 200

const firstOf = <T>(items: Iterable<T>, most: number): T[] => {
  const found: T[] = []
  for (const item of items) if (found.push(item) === most) break
  return found
}

const named = (text: string): string =>
  `U+${(text.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`

/** Either byte-order mark, or zero bytes at every other place of the beginning, as Latin text has in UTF-16. */
function looksLikeUtf16(raw: Uint8Array): boolean {
  const [first, second] = raw
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return true
  const head = raw.subarray(0, 8)
  if (head.length < 4 || head.length % 2 !== 0) return false
  const zeros = (parity: number): boolean =>
    head.every((byte, index) => (index % 2 === parity ? byte === 0 : byte !== 0))
  return zeros(0) || zeros(1)
}

/** Decoding writes U+FFFD for bad bytes; the first U+FFFD that is not itself in the bytes marks the first bad place. */
function firstInvalid(text: string, raw: Uint8Array): number {
  if (!text.includes('\ufffd')) return -1
  let offset = raw[0] === 0xef && raw[1] === 0xbb && raw[2] === 0xbf ? 3 : 0
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index)
    if (unit === 0xfffd && !(raw[offset] === 0xef && raw[offset + 1] === 0xbf && raw[offset + 2] === 0xbd)) return index
    // Each half of a surrogate pair counts for two of its four bytes.
    offset += unit < 0x80 ? 1 : unit < 0x800 || (unit >= 0xd800 && unit < 0xe000) ? 2 : 3
  }
  return -1
}

const spanAt = (text: string, offset: number, length: number): Span => ({ ...lineFinder(text)(offset), length })

/** Line and column of offsets that are asked for in rising order. */
function lineFinder(text: string): (offset: number) => { line: number; column: number } {
  let line = 1
  let start = 0
  return (offset) => {
    for (let next = text.indexOf('\n', start); next >= 0 && next < offset; next = text.indexOf('\n', start)) {
      line++
      start = next + 1
    }
    return { line, column: offset - start + 1 }
  }
}
