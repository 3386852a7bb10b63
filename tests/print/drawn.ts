import { drawnSheetFor } from '../../src/compile.ts'
import type { Plan } from '../../src/plan/plan.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { examplePlan, examplePlans } from './examples.ts'

/** The shipped jobs with what pictures of them are drawn from. */
export const drawnSheets = (): (readonly [name: string, sheet: Sheet])[] =>
  examplePlans().map(([name, plan]) => [name, drawnOnce(plan)])

export const drawnExample = (name: string): Sheet => drawnOnce(planOf(name))

const drawn = new WeakMap<Plan, Sheet>()

const drawnOnce = (plan: Plan): Sheet => {
  const sheet = drawn.get(plan) ?? drawnSheetFor(plan)
  drawn.set(plan, sheet)
  return sheet
}

const planOf = (name: string): Plan => {
  const plan = examplePlan(`examples/jobs/${name}.yaml`)
  if (plan === null) throw new Error(`${name} cannot be read`)
  return plan
}

/** What a job may be called by who means no good, and who types whatever the keyboard has. */
export const HOSTILE = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  ']]> --> */ } </style> </title> </desc>',
  '&lt;b&gt; &amp; &#60;',
  'a\u202egrotesque\u202c b\u2066c\u2069',
  '`x` \\3c script \\',
] as const

/** The press screw with all that a file may call by any name called this. */
export const named = (name: string): Sheet => {
  const plan = planOf('01-press-screw')
  const called: Plan = {
    ...plan,
    title: name,
    drawingNumber: name,
    lathe: { ...plan.lathe, name },
    part: { ...plan.part, material: name, steps: plan.part.steps.map((step) => ({ ...step, name })) },
    orderReasons: [name],
    warnings: [{ feature: null, code: 'slender', say: name }],
    features: plan.features.map((feature) => ({ ...feature, name, why: name, tool: name, notes: [name] })),
  }
  return drawnSheetFor(called)
}
