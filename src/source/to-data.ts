import { isAlias, isMap, isScalar, isSeq, type ParsedNode, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml'
import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { readKey } from './keys.ts'
import { hasTag, isEscaped, rangeOf, shorten, tagBefore } from './nodes.ts'
import type { Place, Report } from './source.ts'
import { forbiddenCharacter } from './text.ts'

type Read = { readonly data: unknown; readonly place: Place }
export type Context = { readonly text: string; readonly report: Report; readonly diagnostics: Diagnostic[] }

/**
 * Turns parsed nodes into plain data and a tree of places, and refuses what no job needs: aliases, tags, duplicate
 * keys, hidden characters.
 */
export function toData(
  contents: ParsedNode | null,
  text: string,
  report: Report,
): { data: unknown; root: Place; diagnostics: Diagnostic[] } {
  const context: Context = { text, report, diagnostics: [] }
  const { data, place } = read(contents, null, context)
  return { data, root: place, diagnostics: context.diagnostics }
}

function read(node: unknown, key: Place['key'], context: Context): Read {
  const at = rangeOf(node) ?? key ?? [0, 0]
  const refuse = (code: Code, message: string, hint: string): Read => {
    context.diagnostics.push(context.report(code, at[0], at[1], message, hint))
    return leaf(undefined, key, at)
  }
  if (isAlias(node)) return refuse('source-alias', `an alias: *${node.source}`, 'write the value itself')
  if (hasTag(node)) {
    const tag = tagBefore(at[0], node.tag, context.text)
    context.diagnostics.push(
      context.report('source-tag', ...tag.at, `a tag: ${tag.text}`, 'write the value without a tag'),
    )
    return leaf(undefined, key, at)
  }
  if (isMap(node)) return readMap(node as YAMLMap, key, at, context)
  if (isSeq(node)) return readList(node as YAMLSeq, key, at, context)
  return isScalar(node) ? readScalar(node, key, at, context) : leaf(null, key, at)
}

function readMap(map: YAMLMap, key: Place['key'], range: readonly [number, number], context: Context): Read {
  const data: Record<string, unknown> = {}
  const children = new Map<string, Place>()
  for (const pair of map.items) {
    const name = readKey(pair, children, map.flow === true, range, context)
    if (name === null) continue
    const value = read(pair.value, rangeOf(pair.key), context)
    children.set(name, value.place)
    // A refused key is kept without a value, so that nobody reports it again as missing.
    data[name] = value.data
  }
  const firstKey = map.flow ? null : rangeOf(map.items[0]?.key)
  return { data, place: { key, value: firstKey ?? range, written: true, scalar: undefined, children } }
}

function readList(list: YAMLSeq, key: Place['key'], range: readonly [number, number], context: Context): Read {
  const items = list.items.map((item) => read(item, null, context))
  const children = new Map(items.map((item, index): [string, Place] => [String(index), item.place]))
  return {
    data: items.map((item) => item.data),
    place: { key, value: range, written: true, scalar: undefined, children },
  }
}

function readScalar(node: Scalar, key: Place['key'], range: readonly [number, number], context: Context): Read {
  const { value } = node
  const refuse = (code: Code, message: string, hint: string): Read => {
    context.diagnostics.push(context.report(code, range[0], range[1], message, hint))
    return leaf(undefined, key, range)
  }
  if (typeof value === 'number' && !Number.isFinite(value)) {
    return refuse(
      'source-number',
      `"${shorten(node.source ?? '')}" is not a number that can be used`,
      'write a number like 0.125',
    )
  }
  const hidden = typeof value === 'string' && isEscaped(node, context.text) ? forbiddenCharacter(value) : null
  if (hidden) return refuse('source-character', `a character that cannot be seen: ${hidden}`, 'take it out')
  if (value === null) return leaf(null, key, range)
  const scalar = typeof value === 'string' ? value : (node.source ?? String(value))
  return { data: value, place: { key, value: range, written: true, scalar, children: new Map() } }
}

const leaf = (data: unknown, key: Place['key'], range: readonly [number, number]): Read => ({
  data,
  place: {
    key,
    value: range,
    written: data === undefined || range[1] > range[0],
    scalar: undefined,
    children: new Map(),
  },
})
