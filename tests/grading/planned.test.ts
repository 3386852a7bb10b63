import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import { EXERCISE, FILES, filledIn, graded, type Handed, manifestOf } from '../exercise/class.ts'
import { runs } from '../runs.ts'

/**
 * Whole sets, planned, handed out, filled in with one mistake a learner and graded. The mistakes are made by sums on what the learner has: the width of
 * the groove, the width of the tool, the right reading, a dial of a thousandth and a hundred marks a turn with a lost motion of eight.
 */
type Mistake = {
  readonly code: string
  readonly on: 'shift' | 'finish'
  readonly makes: (right: number, has: { readonly width: number; readonly tool: number }) => number
}

const MISTAKES: readonly Mistake[] = [
  { code: 'tool-width-forgotten', on: 'shift', makes: (_, { width }) => width },
  { code: 'undersize-wrong-way', on: 'shift', makes: (_, { width, tool }) => 2 * width - tool },
  { code: 'undersize-forgotten', on: 'shift', makes: () => 0 },
  { code: 'wrong-direction', on: 'shift', makes: (_, { width, tool }) => tool - width },
  { code: 'inch-for-mm', on: 'shift', makes: (right) => right * 25.4 },
  { code: 'one-turn', on: 'finish', makes: (right) => right + 0.1 },
  { code: 'next-numeral', on: 'finish', makes: (right) => right - 0.01 },
  { code: 'depth-as-diameter', on: 'finish', makes: (right) => 2 * right },
  { code: 'wrong-direction', on: 'finish', makes: (right) => 0.1 - right },
  { code: 'lost-motion-forgotten', on: 'finish', makes: (right) => right + 0.008 },
]

const SHEETS = runs(50)
const SPACE = EXERCISE.replace('sheets: 3', `sheets: ${SHEETS}`)
  .replace('from: 0.156, to: 0.180, step: 0.003', 'from: 0.156, to: 0.200, step: 0.001')
  .replace('vary:', 'vary:\n  features.0.depth: { from: 0.060, to: 0.084, step: 0.001 }')

it('a likely mistake is diagnosed as itself on a planned sheet, and nothing right is marked wrong', {
  timeout: 300_000,
}, async () => {
  const set = await runIn({ files: { ...FILES, 'exercise.yaml': SPACE } }, 'handout', 'exercise.yaml', '--out', 'set')
  expect([set.status, set.err]).toEqual([0, ''])
  const handed = manifestOf(set).learners
  expect(handed).toHaveLength(SHEETS)
  const mistakeOf = ({ sheet }: Handed): Mistake => MISTAKES[Number(sheet) % MISTAKES.length]!
  const answered = filledIn(set, (learner, { id, key }) => {
    const { on, makes } = mistakeOf(learner)
    const has = { width: Number.parseFloat(learner.values['features.0.width']!), tool: toolOf(learner) }
    if (on === 'shift') return id.endsWith('.shift') ? makes(has.width - has.tool, has).toFixed(4) : undefined
    const depth = Math.round(1000 * Number.parseFloat(learner.values['features.0.depth']!))
    return key === String(depth) ? makes(depth / 1000, has).toFixed(4) : undefined
  })
  const { learners, status } = await graded(answered)
  expect(status).toBe(0)
  const made = new Map<string, number>()
  const found = new Map<string, number>()
  const count = (map: Map<string, number>, key: string) => map.set(key, (map.get(key) ?? 0) + 1)
  learners.forEach((learner, i) => {
    const { code, on } = mistakeOf(handed[i]!)
    const wrong = learner.blanks.filter(({ verdict }) => verdict === 'wrong')
    // One mistake costs one blank: what follows from it, and what is right, does not.
    expect([learner.sheet, wrong.length]).toEqual([learner.sheet, 1])
    count(made, `${code} ${on}`)
    if (wrong[0]!.causes.includes(code)) count(found, `${code} ${on}`)
  })
  expect(made.size).toBe(MISTAKES.length)
  for (const [mistake, times] of made)
    expect([mistake, (found.get(mistake) ?? 0) / times >= 0.95]).toEqual([mistake, true])
})

const toolOf = ({ values }: Handed): number => Number.parseFloat(values['tools.neck.width']!)
