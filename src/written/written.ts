import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { suggest } from '../diagnostics/suggest.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Move } from '../moves/operation.ts'
import { readSource } from '../source/read-source.ts'
import type { SourceFile } from '../source/source.ts'
import type { Units } from '../units/length.ts'
import { readCsv } from './csv.ts'
import { moveOf, type Row, rowOf } from './row.ts'
import { isCsv } from './sort.ts'

/** What the words of a list refer to: the dials, and the features in the order of the sheet. */
export type Shop = {
  readonly lathe: Lathe
  readonly features: readonly string[]
  /** The units of places along the work; the lathe's if not given. */
  readonly units?: Units
}

/** The moves of one feature; `feature` is its index in `Shop.features`. */
type WrittenOperation = { readonly feature: number; readonly moves: readonly Move[] }

export type Written = {
  /** In the order of the list; null if something in it cannot be read. */
  readonly operations: readonly WrittenOperation[] | null
  readonly diagnostics: readonly Diagnostic[]
  readonly source: SourceFile
}

/**
 * A list of dial moves written by hand, YAML or CSV. Every problem is reported in one run, each with its place and a
 * remedy.
 */
export function readMoves(bytes: Uint8Array | string, file: string, shop: Shop): Written {
  const source = isCsv(bytes, file) ? readCsv(bytes, file) : readSource(bytes, file)
  if (isEmpty(source)) return { operations: null, diagnostics: [noMoves(source, isCsv(bytes, file))], source }
  const diagnostics: Diagnostic[] = [...source.diagnostics]
  if (source.data === undefined) return { operations: null, diagnostics, source }
  const count = rowCount(source, diagnostics)
  const operations: { feature: number; moves: Move[] }[] = []
  let feature: number | null = null
  for (let index = 0; index < count && diagnostics.length < MOST_TOLD; index++) {
    const row = rowOf(source, index, shop, diagnostics)
    if (row === null) continue
    const named = featureOf(row, shop.features, feature)
    const move = moveOf(row, file)
    if (named === null) continue
    if (named !== operations.at(-1)?.feature) {
      if (operations.some((one) => one.feature === named)) notTogether(row, shop.features[named]!)
      operations.push({ feature: named, moves: [] })
    }
    feature = named
    if (move !== null) operations.at(-1)!.moves.push(move)
  }
  const good = diagnostics.every(({ severity }) => severity !== 'error')
  return { operations: good ? operations : null, diagnostics, source }
}

/** Whoever has so many mistakes mends these first. */
const MOST_TOLD = 200

/** Nothing at all, or a heading with nothing below it. */
function isEmpty({ data, diagnostics }: SourceFile): boolean {
  if (diagnostics.some(({ code }) => code === 'source-empty' || code === 'csv-empty')) return true
  if (diagnostics.length > 0 || typeof data !== 'object' || data === null || !('moves' in data)) return false
  return data.moves === null || (Array.isArray(data.moves) && data.moves.length === 0)
}

const noMoves = ({ file }: SourceFile, csv: boolean): Diagnostic => ({
  code: 'moves-empty',
  severity: 'error',
  origin: { file, path: ['moves'] },
  at: 'key',
  message: 'the list has no moves: nothing would be cut',
  hint: `${
    csv
      ? 'begin with a line of columns, feature,action,slide,reading, and write one move a line below it'
      : 'write moves: and below it one line a move, each after a dash'
  }; groovewright sheet JOB --format csv prints a list to start from`,
})

function rowCount(source: SourceFile, diagnostics: Diagnostic[]): number {
  const wrong = (path: string[], at: 'key' | 'value', message: string, hint: string): number => {
    diagnostics.push({ code: 'moves-file', severity: 'error', origin: { file: source.file, path }, at, message, hint })
    return 0
  }
  const { data } = source
  const hint = 'write moves: and below it one line a move, each after a dash'
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return wrong([], 'value', 'there is no list of moves', hint)
  for (const key of Object.keys(data))
    if (key !== 'moves')
      wrong(
        [key],
        'key',
        `"${key}" is nothing that a list of moves has`,
        suggest(key, ['moves']) === null ? 'take it out: everything goes under moves:' : 'did you mean moves?',
      )
  const moves = (data as { moves?: unknown }).moves
  if (!Array.isArray(moves)) return wrong(['moves'], 'key', 'there is no list of moves', hint)
  return moves.length
}

/** By name, or by its number on the sheet; the feature of the row before if none is written. */
function featureOf(row: Row, names: readonly string[], before: number | null): number | null {
  const written = row.written('feature')
  if (written === undefined)
    return (
      before ??
      row.wrong(
        null,
        'moves-feature',
        'the first row does not say which feature it cuts',
        `give feature: ${names.join(', ')}`,
      )
    )
  const exact = names.indexOf(written)
  if (exact >= 0) return exact
  const same = names.flatMap((name, index) => (plain(name) === plain(written) ? [index] : []))
  if (same.length === 1) return same[0]!
  if (same.length > 1)
    return row.wrong(
      'feature',
      'moves-feature',
      `${same.length} features are called "${written}"`,
      `give its number on the sheet: ${same.map((index) => index + 1).join(' or ')}`,
    )
  const number = /^\d{1,4}$/.test(written) ? Number(written) : 0
  if (number >= 1 && number <= names.length) return number - 1
  const near = suggest(written, names)
  return row.wrong(
    'feature',
    'moves-feature',
    `the job has no feature "${written}"`,
    near === null ? `it has ${names.map((name, i) => `${i + 1} ${name}`).join(', ')}` : `did you mean ${near}?`,
  )
}

const plain = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()

const notTogether = (row: Row, name: string): null =>
  row.wrong(
    'feature',
    'moves-feature',
    `the moves of "${name}" are in two places`,
    'keep the moves of a feature together: one feature is cut after the other',
  )
