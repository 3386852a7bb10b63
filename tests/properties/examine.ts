import { compile, sheetFor } from '../../src/compile.ts'
import { printJson } from '../../src/print/json/print.ts'
import { bruteForce } from '../brute/brute-force.ts'
import { budgetProblems } from '../brute/budget.ts'
import { formProblems, sizeProblems } from '../brute/expected.ts'
import type { Sheet } from '../brute/sheet-shape.ts'
import { tableProblems } from '../brute/tables.ts'
import type { RandomJob } from './drawn.ts'
import type { Sort } from './sorts.ts'
import { SORTS, sortsOf } from './sorts.ts'

export type Tallies = {
  jobs: number
  features: number
  planned: number
  proven: number
  refused: Map<string, number>
  sorts: Map<Sort, number>
  /** Rows of tables that were followed, and sizes whose worst case was worked out once more. */
  rows: number
  ends: number
}

export function tallies(): Tallies {
  return { jobs: 0, features: 0, planned: 0, proven: 0, refused: new Map(), sorts: new Map(), rows: 0, ends: 0 }
}

/** Tables and error budgets take their time: a campaign follows them all, else every tenth job and one row of each table by turns. */
const ALL = process.env.GROOVEWRIGHT_CAMPAIGN !== undefined
const TENTH = 10

/** Runs one random job through the program, and everything that the brute force has against the sheet. */
export function examine(job: RandomJob, counts: Tallies): string[] {
  counts.jobs++
  const made = sheetOf(job.text, job.files)
  if (!made.ok) return made.problems
  const problems = examineSheet(job, made.sheet, counts)
  return ALL || counts.jobs % TENTH === 0 ? [...problems, ...examinePromises(job, made.sheet, counts)] : problems
}

export function sheetOf(
  text: string,
  files: Readonly<Record<string, string>> = {},
): { ok: true; sheet: Sheet } | { ok: false; problems: string[] } {
  const result = compile('job.yaml', (path) => {
    const found = files[path] ?? (path === 'job.yaml' ? text : undefined)
    if (found === undefined) return { ok: false, message: `there is no file ${path}`, hint: 'none was drawn' }
    return { ok: true, file: path, bytes: new TextEncoder().encode(found) }
  })
  const errors = result.diagnostics.map((one) => `not readable: ${one.message}`)
  if (errors.length > 0 || result.plan === null)
    return { ok: false, problems: errors.length > 0 ? errors : ['no plan'] }
  return { ok: true, sheet: JSON.parse(printJson(sheetFor(result.plan))) as Sheet }
}

function examineSheet(job: RandomJob, sheet: Sheet, counts: Tallies): string[] {
  const brute = bruteForce(sheet)
  const problems = [...brute.problems]
  for (const drawn of job.features) {
    counts.features++
    const index = sheet.features.findIndex((feature) => feature.name === drawn.name)
    const feature = sheet.features[index]
    if (feature === undefined) {
      problems.push(`${drawn.name}: not on the sheet`)
    } else if (feature.status === 'refused') {
      const reason = feature.refusal?.code ?? feature.refusal?.reason ?? ''
      if (reason === '') problems.push(`${drawn.name}: refused without a reason`)
      count(counts.refused, reason)
    } else {
      counts.planned++
      for (const sort of sortsOf(sheet, index, drawn, job.traits)) count(counts.sorts, sort)
      const one = brute.features.find((found) => found.index === index)!
      const found = [...formProblems(sheet, one, drawn), ...sizeProblems(sheet, one)]
      problems.push(...found)
      if (found.length === 0 && brute.problems.length === 0) counts.proven++
    }
  }
  return problems
}

/** What the sheet promises beside its form: the rows of its tables, and how far the sizes may be off. */
function examinePromises(job: RandomJob, sheet: Sheet, counts: Tallies): string[] {
  const turn = Math.floor(counts.jobs / TENTH)
  const all = (rows: number): number[] => Array.from({ length: rows }, (_, at) => at)
  const tables = tableProblems(sheet, ALL ? all : (rows) => (rows > 0 ? [turn % rows] : []))
  const budget = budgetProblems(sheet, job.errors)
  counts.rows += tables.rows
  counts.ends += budget.sizes
  return [...new Set([...tables.problems, ...budget.problems])]
}

function count<T>(counts: Map<T, number>, one: T): void {
  counts.set(one, (counts.get(one) ?? 0) + 1)
}

export function summaryOf(counts: Tallies): string {
  const reasons = [...counts.refused].sort((a, b) => b[1] - a[1]).map(([reason, count]) => `    ${count} ${reason}`)
  return [
    `${counts.jobs} jobs with ${counts.features} features: ${counts.planned} planned, of them`,
    ...SORTS.map((sort) => `    ${counts.sorts.get(sort) ?? 0} ${sort}`),
    `  ${counts.proven} proven by the brute force, with ${counts.rows} rows of tables and ${counts.ends} worst cases; refused:`,
    ...reasons,
  ].join('\n')
}
