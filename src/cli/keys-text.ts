import type { Key } from '../job/keys.ts'
import { beside, COLUMNS, wrap } from '../print/text/columns.ts'

/**
 * Keys for a terminal, a few lines each: where they are allowed, what they mean, what applies without them, and an
 * example as written in a file.
 */
export const keysText = (keys: readonly Key[]): string => `${keys.map(block).join('\n\n')}\n`

const INDENT = '    '
const LABEL = 13

const block = (key: Key): string =>
  [
    ...wrap(key.paths.join(', '), COLUMNS),
    ...wrap(key.says, COLUMNS - INDENT.length).map((line) => `${INDENT}${line}`),
    ...rows(key).flatMap(([label, text]) => beside(`${INDENT}${label}`, LABEL, text)),
  ].join('\n')

const rows = ({ only, words, required, byDefault, ...key }: Key): (readonly [string, string])[] => [
  ...(only.length > 0 ? [['only in', only.join(', ')] as const] : []),
  ...(words.length > 0 ? [['one of', words.join(', ')] as const] : []),
  ['default', byDefault ?? (required ? 'none: it must be given' : 'none')],
  ['example', exampleOf(key)],
]

/** The key with a value, as YAML on one line. */
export const exampleOf = ({ paths, example }: Pick<Key, 'paths' | 'example'>): string =>
  `${paths[0]!.split('.').at(-1)}: ${flow(example)}`

const flow = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`
  if (typeof value !== 'object' || value === null) return String(value)
  return `{ ${Object.entries(value)
    .map(([key, inner]) => `${key}: ${flow(inner)}`)
    .join(', ')} }`
}
