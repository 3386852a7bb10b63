import { Composer, type CST, type Document, Lexer, type ParsedNode, Parser } from 'yaml'

/** No file of ours is nested deeper than about six levels. */
export const DEEPEST = 64

/**
 * Words, signs and stretches of blanks: some thirty for each move of a list of four thousand. What is made of each of
 * them takes a hundred times its room, and of nothing but commas there would be a quarter of a million.
 */
export const MOST_LEXEMES = 120_000

/** `many` = there are more words and signs than are read; `deep` = offset of the first thing nested too deep; `second` = offset of a second document. Either null. */
export type Composed = {
  readonly document: Document.Parsed | null
  readonly deep: number | null
  readonly second: number | null
  readonly many?: true
}

/**
 * The same as parseDocument, in its two halves: the parser keeps its own stack, the composer recurses. A file of
 * nothing but brackets would overflow the stack in the composer, where the engine may abort the whole process, so depth
 * is measured between the two.
 */
export function compose(text: string): Composed {
  const tokens = tokensOf(text)
  if (tokens === null) return { document: null, deep: null, second: null, many: true }
  const deep = tooDeep(tokens)
  if (deep !== null) return { document: null, deep, second: null }
  const composer = new Composer<ParsedNode, true>({
    // to-data.ts finds keys that are given twice: the library would compare each with each. Messages get their source
    // lines when printed.
    version: '1.2',
    schema: 'core',
    merge: false,
    strict: true,
    uniqueKeys: false,
    prettyErrors: false,
    logLevel: 'error',
  })
  let document: Document.Parsed | null = null
  for (const next of composer.compose(tokens, true, text.length)) {
    if (document) return { document, deep: null, second: next.range[0] }
    document = next
  }
  return { document, deep: null, second: null }
}

/** Null if there are too many of them. */
function tokensOf(text: string): CST.Token[] | null {
  const parser = new Parser()
  const tokens: CST.Token[] = []
  let lexemes = 0
  for (const lexeme of new Lexer().lex(text)) {
    if (++lexemes > MOST_LEXEMES) return null
    for (const token of parser.next(lexeme)) tokens.push(token)
  }
  for (const token of parser.end()) tokens.push(token)
  return tokens
}

/** Walks the tokens with a stack of its own; returns the offset of the first token below the deepest level. */
function tooDeep(tokens: readonly CST.Token[]): number | null {
  const todo: { token: CST.Token; depth: number }[] = tokens.map((token) => ({ token, depth: 0 }))
  for (let next = todo.pop(); next; next = todo.pop()) {
    const { token, depth } = next
    if (depth > DEEPEST) return token.offset
    if (token.type === 'document' && token.value) todo.push({ token: token.value, depth })
    if (!('items' in token)) continue
    for (const { key, value } of token.items) {
      if (key) todo.push({ token: key, depth: depth + 1 })
      if (value) todo.push({ token: value, depth: depth + 1 })
    }
  }
  return null
}
