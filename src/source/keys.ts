import { isAlias, isScalar, type Pair, type Scalar } from 'yaml'
import type { Code } from '../diagnostics/codes.ts'
import { hasTag, isEscaped, rangeOf, shorten, tagBefore } from './nodes.ts'
import type { Place } from './source.ts'
import { forbiddenCharacter } from './text.ts'
import type { Context } from './to-data.ts'

type Range = readonly [from: number, to: number]
type Problem = { readonly code: Code; readonly message: string; readonly hint: string; readonly at?: Range }

/**
 * The name of a key as written; null (and a diagnostic) if it cannot be used. `within` is the mapping that holds it.
 */
export function readKey(
  pair: Pair,
  seen: ReadonlyMap<string, Place>,
  flow: boolean,
  within: Range,
  context: Context,
): string | null {
  const range = rangeOf(pair.key) ?? within
  const problem =
    problemOf(pair.key, range, context.text) ??
    (flow ? decimalComma(pair, range, context.text) : null) ??
    duplicate(nameOf(pair.key as Scalar), seen, context)
  if (!problem) return nameOf(pair.key as Scalar)
  const [from, to] = problem.at ?? range
  context.diagnostics.push(context.report(problem.code, from, to, problem.message, problem.hint))
  return null
}

/** A name is the text as written: 007 stays 007. */
const nameOf = (key: Scalar): string => key.source ?? String(key.value)

function problemOf(key: unknown, range: Range, text: string): Problem | null {
  if (isAlias(key)) return { code: 'source-alias', message: `an alias: *${key.source}`, hint: 'write the key itself' }
  if (hasTag(key)) {
    const tag = tagBefore(range[0], key.tag, text)
    return { code: 'source-tag', message: `a tag: ${tag.text}`, hint: 'write the key without a tag', at: tag.at }
  }
  if (!isScalar(key) || key.value === null) {
    const message = isScalar(key) ? 'a key is missing before the colon' : 'a key that is not a single word or name'
    return { code: 'source-key', message, hint: 'write a name before the colon' }
  }
  const name = nameOf(key)
  const hidden = isEscaped(key, text) ? forbiddenCharacter(name) : null
  if (hidden) {
    return { code: 'source-character', message: `a character that cannot be seen: ${hidden}`, hint: 'take it out' }
  }
  if (name !== '__proto__') return null
  return { code: 'source-key', message: '"__proto__" cannot be a key', hint: 'choose another name' }
}

/** `{ width: 0,5 }` is a width of 0 and a key 5 to YAML; nobody means that. */
function decimalComma(pair: Pair, [from, to]: Range, text: string): Problem | null {
  const empty = pair.value === null || (isScalar(pair.value) && pair.value.value === null)
  const before = /[\d.]*\d,$/.exec(text.slice(Math.max(0, from - 40), from))?.[0]
  if (!empty || before === undefined || !/^\d/.test(text.slice(from, to))) return null
  const written = before + text.slice(from, to)
  return {
    code: 'source-comma',
    message: `"${shorten(written)}" has a comma in it`,
    hint: `use a point: ${shorten(written.replace(',', '.'))}`,
    at: [from - before.length, to],
  }
}

function duplicate(name: string, seen: ReadonlyMap<string, Place>, { report }: Context): Problem | null {
  const first = seen.get(name)?.key
  if (!first) return null
  const line = report('source-duplicate', first[0], first[1], '', '').span?.line
  const message = `"${shorten(name)}" is here twice: the first is on line ${line}`
  return { code: 'source-duplicate', message, hint: 'keep one of the two' }
}
