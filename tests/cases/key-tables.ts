import { type KeysName, keysFor } from '../../src/cli/commands/keys.ts'
import { exampleOf } from '../../src/cli/keys-text.ts'
import type { Key } from '../../src/job/keys.ts'

/** A table of keys in a page: of which file, the mappings that they stand in, and the kinds they are for: "keys of a job: features (groove)". */
const TABLE =
  /(<!-- keys of an? (job|lathe|toolbox|exercise)(?:: ([^(\n]*?))?(?: \(([^)\n]*)\))? -->\n)[\s\S]*?(<!-- end of keys -->)/g

/** The page with every table of keys as the schemas have it. */
export const withTables = (page: string): string =>
  page.replace(TABLE, (_, begin: string, ...[name, parents, kinds, end]: string[]) =>
    [begin, table(rowsOf(name as KeysName, list(parents), list(kinds)), list(parents), list(kinds)), end].join(''),
  )

/** The keys of one sort of file that stand in some table of the page. */
export const keysInTables = (page: string, name: KeysName): Key[] =>
  [...page.matchAll(TABLE)]
    .filter((match) => match[2] === name)
    .flatMap(([, , , parents, kinds]) => rowsOf(name, list(parents), list(kinds)))

const list = (written: string | undefined): string[] => written?.split(', ') ?? []

const parentOf = (path: string): string => path.split('.').slice(0, -1).join('.')
const nameOf = (path: string): string => path.split('.').at(-1)!

/** Keys that are first of all keys of these mappings; `kinds` none: those that every kind has. */
const rowsOf = (name: KeysName, parents: readonly string[], kinds: readonly string[]): Key[] =>
  keysFor(name).filter(
    ({ paths, only }) =>
      (parents.length > 0 ? parents : ['']).includes(parentOf(paths[0]!)) &&
      only.every((each) => kinds.some((kind) => isOf(kind, each))) &&
      kinds.every((kind) => only.some((each) => isOf(kind, each))),
  )

/** "radius" is every radius; "radius concave" only that. */
const isOf = (kind: string, each: string): boolean => each === kind || each.startsWith(`${kind} `)

const table = (keys: readonly Key[], parents: readonly string[], kinds: readonly string[]): string => {
  if (keys.length === 0) throw new Error(`no keys: ${[...parents, ...kinds].join(', ')}`)
  const rows = keys.map((key) => [
    code(nameOf(key.paths[0]!)),
    `${whose(key, parents, kinds)}${key.says}${key.words.length > 0 && !namesAll(key) ? ` One of ${key.words.map(code).join(', ')}.` : ''}`,
    key.byDefault ?? (key.required ? 'must be given' : 'none'),
    code(exampleOf(key)),
  ])
  return [['key', 'meaning', 'default', 'example'], ['---', '---', '---', '---'], ...rows]
    .map((cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |\n`)
    .join('')
}

/** Where the table is of several mappings or kinds and the key only of some. */
const whose = ({ paths, only }: Key, parents: readonly string[], kinds: readonly string[]): string => {
  const has = parents.filter((parent) => paths.some((path) => parentOf(path) === parent))
  const where =
    has.length < parents.length ? has : kinds.length === 1 && only.length === 1 ? only.map(restOf(kinds[0]!)) : []
  return where.filter(Boolean).length > 0 ? `Of ${where.map(code).join(', ')}: ` : ''
}

const restOf = (kind: string) => (each: string) => each.slice(kind.length + 1)

const namesAll = ({ says, words }: Key): boolean => words.every((word) => says.includes(word))

const code = (text: string): string => `\`${text}\``
