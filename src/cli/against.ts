import { basename, join } from 'node:path'
import { toData } from '../print/json/print.ts'
import { buildSheet } from '../sheet/build.ts'
import type { Plan } from '../sheet/plan.ts'
import type { Io } from './io.ts'
import { codeOf, reasonOf } from './io.ts'

/** How the sheet that is kept of a job compares with what is planned today. */
export type Compared = {
  readonly outcome: 'same' | 'different' | 'missing' | 'unreadable'
  readonly lines: readonly string[]
}

/** `NAME.json` in the folder, as `sheet --format json` wrote it, against the plan of `NAME.yaml`. */
export const compareWith = (folder: string, job: string, plan: Plan, io: Io): Compared => {
  const file = join(folder, `${basename(job).replace(/\.ya?ml$/i, '')}.json`)
  let text: string
  try {
    text = new TextDecoder().decode(io.readFile(file))
  } catch (error) {
    const outcome = codeOf(error) === 'ENOENT' ? 'missing' : 'unreadable'
    return {
      outcome,
      lines: [outcome === 'missing' ? `no sheet is kept: ${file}` : `cannot read ${file}: ${reasonOf(error)}`],
    }
  }
  const stored = parsed(text)
  if (stored === null)
    return { outcome: 'unreadable', lines: [`${file} is no sheet: it should be what sheet --format json prints`] }
  // Through text and back, so that what a file cannot hold (undefined, -0) is no difference.
  const today = JSON.parse(JSON.stringify(toData(buildSheet(plan)))) as Data
  const lines = differences(stored, today)
  return lines.length === 0 ? { outcome: 'same', lines } : { outcome: 'different', lines: shortened(lines) }
}

type Data = { readonly steps?: unknown; readonly say?: unknown; readonly [key: string]: unknown }

const parsed = (text: string): Data | null => {
  try {
    const data: unknown = JSON.parse(text)
    return isData(data) && Array.isArray(data.steps) ? data : null
  } catch {
    return null
  }
}

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value)

/** What is kept (-) and what is planned today (+). Steps are told by what they say, so that one more step does not change all behind it. */
const differences = (stored: Data, today: Data): string[] => {
  const { steps: before, ...restBefore } = stored
  const { steps: now, ...restNow } = today
  const told = [...inSteps(before as readonly unknown[], now as readonly unknown[])]
  const inFigures = told.length === 0 ? changes('steps', before, now) : []
  return [...changes('', restBefore, restNow), ...told, ...inFigures]
}

/** Every value that is another one, by its path. */
const changes = (path: string, before: unknown, now: unknown): string[] => {
  if (Object.is(before, now)) return []
  if (isData(before) && isData(now))
    return [...new Set([...Object.keys(before), ...Object.keys(now)])].flatMap((key) =>
      changes(path === '' ? key : `${path}.${key}`, before[key], now[key]),
    )
  if (Array.isArray(before) && Array.isArray(now))
    return Array.from({ length: Math.max(before.length, now.length) }).flatMap((_, i) =>
      changes(`${path}.${i + 1}`, before[i], now[i]),
    )
  return [`${path}: ${shown(before)} -> ${shown(now)}`]
}

const shown = (value: unknown): string => {
  if (value === undefined) return '(none)'
  const text = JSON.stringify(value)
  return text.length > 60 ? `${text.slice(0, 57)}...` : text
}

/** The longest run of steps that both have stays unsaid; what only one of them has is told with its number. */
const inSteps = (before: readonly unknown[], now: readonly unknown[]): string[] => {
  const [a, b] = [before.map(sayOf), now.map(sayOf)]
  const common: number[][] = Array.from({ length: a.length + 1 }, () => new Array<number>(b.length + 1).fill(0))
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      common[i]![j] = a[i] === b[j] ? common[i + 1]![j + 1]! + 1 : Math.max(common[i + 1]![j]!, common[i]![j + 1]!)
  const lines: string[] = []
  let [i, j] = [0, 0]
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      i++
      j++
    } else if (j >= b.length || (i < a.length && common[i + 1]![j]! >= common[i]![j + 1]!))
      lines.push(`- step ${i + 1} ${a[i++]}`)
    else lines.push(`+ step ${j + 1} ${b[j++]}`)
  }
  return lines
}

const sayOf = (step: unknown): string => (isData(step) ? String(step.say) : shown(step))

const MOST = 12
const shortened = (lines: readonly string[]): string[] =>
  lines.length <= MOST ? [...lines] : [...lines.slice(0, MOST), `and ${lines.length - MOST} more`]
