import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { compile, sheetFor } from '../../src/compile.ts'
import type { Load } from '../../src/job/read-job.ts'
import type { Plan } from '../../src/plan/plan.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'

/** The jobs that are shipped, compiled for real. */
const FOLDERS = ['examples/jobs', 'examples/broken']

export const fromDisk: Load = (path, from) => {
  const file = from === null ? path : join(dirname(from), path)
  return { ok: true, file, bytes: readFileSync(file) }
}

const plans = new Map<string, Plan | null>()
const sheets = new WeakMap<Plan, Sheet>()

/** Of an example, made once for all tests: the program is a function of what it reads. */
export const examplePlan = (path: string): Plan | null => {
  if (!plans.has(path)) plans.set(path, compile(path, fromDisk).plan)
  return plans.get(path)!
}

const exampleSheet = (plan: Plan): Sheet => {
  const sheet = sheets.get(plan) ?? sheetFor(plan)
  sheets.set(plan, sheet)
  return sheet
}

export const examplePlans = (): (readonly [name: string, plan: Plan])[] =>
  FOLDERS.flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => name.endsWith('.yaml') && name !== 'no-such-file.yaml')
      .flatMap((name) => {
        const plan = examplePlan(join(folder, name))
        return plan === null ? [] : [[name, plan] as const]
      }),
  )

export const exampleSheets = (): (readonly [name: string, sheet: Sheet])[] =>
  examplePlans().map(([name, plan]) => [name, exampleSheet(plan)])
