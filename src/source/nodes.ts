import { Scalar } from 'yaml'

/** Raw characters are checked in the text; only double quotes can add others by an escape. */
export const isEscaped = (node: Scalar, text: string): boolean =>
  node.type === Scalar.QUOTE_DOUBLE && !!node.range && text.slice(node.range[0], node.range[1]).includes('\\')

export const hasTag = (node: unknown): node is { tag: string } =>
  typeof node === 'object' && node !== null && typeof (node as { tag?: unknown }).tag === 'string'

/** The tag as written: the library only keeps its meaning and the offset where the value begins. */
export function tagBefore(value: number, tag: string, text: string): { at: [number, number]; text: string } {
  const from = Math.max(0, value - 200)
  const match = /(![^\s]*)(?:\s+&\S+)?\s*$/.exec(text.slice(from, value))
  if (!match) return { at: [value, value + 1], text: shorten(tag) }
  const written = match[1] as string
  return { at: [from + match.index, from + match.index + written.length], text: shorten(written) }
}

export function rangeOf(node: unknown): readonly [number, number] | null {
  const range = (node as { range?: readonly number[] | null } | null | undefined)?.range
  return range ? [range[0] as number, range[1] as number] : null
}

export const shorten = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text)
