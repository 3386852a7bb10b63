import { readSource } from '../source/read-source.ts'
import { readCsv } from './csv.ts'

/** By the ending of its name; without one by its first line, which in a table has columns and no colon. */
export function isCsv(bytes: Uint8Array | string, file: string): boolean {
  if (/\.csv$/i.test(file)) return true
  if (/\.(ya?ml|json)$/i.test(file)) return false
  const text = typeof bytes === 'string' ? bytes : new TextDecoder().decode(bytes.subarray(0, 4096))
  const first = text.split('\n').find((line) => line.trim() !== '' && !line.startsWith('#')) ?? ''
  return first.includes(',') && !first.includes(':')
}

/**
 * What a file probably is: a list of moves by its moves or the columns of its table, a job by keys that no list has.
 */
export function sortOfFile(bytes: Uint8Array | string, file: string): 'moves' | 'job' | null {
  if (isCsv(bytes, file)) return /(^|,) *action *(,|$)/m.test(readCsv(bytes, file).text) ? 'moves' : null
  const { data } = readSource(bytes, file)
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return null
  if ('moves' in data) return 'moves'
  return ['features', 'part', 'lathe'].some((key) => key in data) ? 'job' : null
}
