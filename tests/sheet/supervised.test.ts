import { expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { travelAt } from '../../src/dials/travel.ts'
import type { Move } from '../../src/moves/operation.ts'
import { runOperation } from '../../src/replay/run.ts'
import { dryOut, supervisedFor } from '../../src/sheet/supervised.ts'
import { runIn } from '../cli/world.ts'
import { examplePlans } from '../print/examples.ts'

const plans = examplePlans().filter(([name]) => /^(01|06|09|11|14|18|19)-/.test(name))

it('makes a dry run that touches nothing, no further out than it needs', () => {
  let once = 0
  let more = 0
  for (const [name, plan] of plans)
    for (const feature of plan.features) {
      if (feature.status !== 'planned') continue
      const { operation, before } = feature
      const start = operation.moves.findIndex(({ action }) => action === 'start')
      const { crossFeed } = plan.lathe
      const cut = (out: number): boolean => {
        const counts = Math.round(out / travelAt(crossFeed, 1))
        const shifted = operation.moves.map((move, i) =>
          i > start && move.slide === 'cross-feed' ? { ...move, count: move.count! - counts } : move,
        )
        const now = operation.moves.slice(0, start).findLast(({ slide }) => slide === 'cross-feed')!
        const further: Move = { ...now, action: 'back-out', count: now.count! - counts }
        const moves = shifted.toSpliced(start + 1, 0, further)
        const ran = runOperation(plan.lathe, plan.setup, { ...operation, moves }, before, { rules: false, shift: null })
        return ran.trace.possibly.some(({ step }) => step >= 0)
      }
      const out = dryOut(plan, feature)
      const part = crossFeed.kind === 'dial' ? crossFeed.perTurn / (crossFeed.reads === 'diameter' ? 2 : 1) : 0
      const cutBefore = before.possibly.some(({ step }) => step >= 0)
      if (cutBefore) continue
      expect(cut(0), name).toBe(true)
      expect(cut(out), `${name}: ${feature.name}`).toBe(false)
      if (part > 0) expect(out / part - Math.round(out / part), name).toBeCloseTo(0, 9)
      if (part > 0 && Math.round(out / part) > 1) {
        more++
        expect(cut(out - part * 1.5), name).toBe(true)
      } else once++
    }
  expect(once).toBeGreaterThan(2)
  expect(more).toBeGreaterThan(0)
})

it('has its boxes before power, at the stop and before the finish, in the order of the steps', () => {
  for (const [name, plan] of plans) {
    const sheet = sheetFor(plan)
    const checks = supervisedFor(plan, sheet)
    sheet.features.forEach((feature, index) => {
      if (feature.status !== 'planned') return
      const own = checks.filter((check) => check.feature === index)
      const steps = sheet.steps.filter((step) => step.feature === index)
      const at = (number: number) => steps.find((step) => step.number === number)!
      const kinds = own.map(({ kind }) => kind)
      expect(kinds.slice(0, 2), name).toEqual(['dry-run', 'before-power'])
      expect(at(own[0]!.before).action).toBe('start')
      const stops = steps.filter(({ purpose }) => purpose === 'expect-rough')
      expect(kinds.filter((kind) => kind === 'at-stop')).toHaveLength(stops.length)
      const finish = steps.find(({ group, number }) => group === 'finish' && number > own[0]!.before)
      expect(own.find(({ kind }) => kind === 'before-finish')?.before).toBe(finish?.number)
      expect(own.map(({ before }) => before)).toEqual(own.map(({ before }) => before).toSorted((a, b) => a - b))
    })
  }
})

const files = {
  'job.yaml': [
    'title: Supervised',
    'units: inch',
    'part: { material: mild steel, diameter: 1, length: 3, overhang: 2 }',
    'lathe:',
    '  name: Bench lathe',
    '  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.008 }',
    '  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006 }',
    '  spindle-speeds: [60, 150, 380]',
    'tools: { neck: { shape: square, width: 0.125, reach: 0.2 } }',
    'features: [{ kind: groove, near: 0.5, width: 0.130, depth: 0.12, tool: neck }]',
  ].join('\n'),
}

it('stands on the sheet, the card, the page and in the data, and only where it is asked for', async () => {
  const printed = async (...args: string[]): Promise<string> =>
    (await runIn({ files }, 'sheet', 'job.yaml', ...args)).out
  const text = await printed('--supervised')
  expect(text.replace(/\s+/g, ' ')).toMatch(
    /\[ \] DRY RUN, spindle off: cross-feed OUT 2 whole turns more, the same marks/,
  )
  expect(text.match(/\[ \] INSTRUCTOR ______ (before power|at the stop|before the finish)/g)).toHaveLength(3)
  expect(text.split('\n').filter((line) => line.length > 80)).toEqual([])
  expect((await printed('--supervised', '--card')).match(/\[ \] (DRY RUN|INSTRUCTOR)/g)).toHaveLength(4)
  expect((await printed('--supervised', '--format', 'html')).match(/class="note supervised"/g)).toHaveLength(4)
  const data = JSON.parse(await printed('--supervised', '--format', 'json'))
  expect(data.supervised.map(({ kind }: { kind: string }) => kind)).toEqual([
    'dry-run',
    'before-power',
    'at-stop',
    'before-finish',
  ])
  expect(await printed()).not.toMatch(/INSTRUCTOR|DRY RUN/)
})

it('has no place in a table of moves', async () => {
  const { status, err } = await runIn({ files }, 'sheet', 'job.yaml', '--supervised', '--format', 'csv')
  expect(status).toBe(2)
  expect(err).toMatch(
    /--supervised has no place in a table of moves: leave it out, or print text, json, html or markdown/,
  )
})
