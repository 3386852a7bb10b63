import { codeOf, type Io, reasonOf } from './io.ts'

export type JsonRead =
  | { readonly ok: true; readonly data: unknown }
  | { readonly ok: false; readonly missing: boolean; readonly why: string }

/** No file that the program writes is nested deeper than a dozen levels: whatever walks through it may recurse. */
const DEEPEST = 64

/** A file that the program wrote and anyone may have edited since: its size and its depth are limited before it is read. */
export const readJson = (file: string, most: number, io: Io): JsonRead => {
  const wrong = (why: string, missing = false): JsonRead => ({ ok: false, missing, why })
  let bytes: Uint8Array
  try {
    bytes = io.readFile(file, { most, pipe: true })
  } catch (error) {
    return wrong(`cannot read ${file}: ${reasonOf(error)}`, codeOf(error) === 'ENOENT')
  }
  if (bytes.length > most) return wrong(`${file} is larger than anything that is read there`)
  const text = new TextDecoder().decode(bytes)
  if (isDeep(text)) return wrong(`${file} is nested deeper than anything that is read there`)
  try {
    return { ok: true, data: JSON.parse(text) }
  } catch {
    return wrong(`${file} is no JSON, as the program writes it`)
  }
}

/** Counts brackets outside of strings: whether they fit each other is for the parser to say. */
const isDeep = (text: string): boolean => {
  let depth = 0
  let quoted = false
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at)
    if (quoted) {
      if (unit === BACKSLASH) at++
      else if (unit === QUOTE) quoted = false
    } else if (unit === QUOTE) quoted = true
    else if (unit === BRACKET || unit === BRACE) depth++
    else if (unit === BRACKET + 2 || unit === BRACE + 2) depth--
    if (depth > DEEPEST) return true
  }
  return false
}

const [QUOTE, BACKSLASH, BRACKET, BRACE] = [0x22, 0x5c, 0x5b, 0x7b]
