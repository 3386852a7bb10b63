import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Bench } from '../../src/features/draft.ts'
import type { GrooveFeature } from '../../src/features/feature.ts'
import type { CornerCuts, StepCuts } from '../../src/moves/cuts.ts'
import type { Request } from '../../src/sequence/request.ts'
import type { StepDials } from '../../src/sequence/steps-places.ts'

/** Rooms of the planner are made wrong on purpose, one at a time; the replay that is shipped takes nothing from them but the moves and what the hand is told. */
const wrong = vi.hoisted(() => ({ which: 'nothing' }))

vi.mock('../../src/sequence/fine.ts', async (original) => {
  const fine = await original<typeof import('../../src/sequence/fine.ts')>()
  return {
    ...fine,
    fineDepth: (...given: Parameters<typeof fine.fineDepth>) => {
      const found = fine.fineDepth(...given)
      return found === null || wrong.which !== 'touched further back' ? found : { ...found, back: found.back + 10 }
    },
  }
})
vi.mock('../../src/features/groove/draft.ts', async (original) => {
  const groove = await original<typeof import('../../src/features/groove/draft.ts')>()
  return {
    ...groove,
    draftGroove: (bench: Bench, feature: GrooveFeature) => {
      const drafted = groove.draftGroove(bench, feature)
      if (!drafted.ok) return drafted
      const { placing, touch, layout } = drafted.draft
      const changed = {
        'other corner': { placing: { ...placing, point: 'headstock-corner' as const } },
        'another line': { placing: { ...placing, against: { line: layout[1]!.fromEnd } } },
        'line not scribed': { placing: { ...placing, against: { line: layout[0]!.fromEnd + 2_540_000_000 } } },
        'no such face': { placing: { ...placing, against: { face: layout[0]!.fromEnd } } },
        'another diameter': { touch: { ...touch, diameter: touch.diameter + 50_800_000 } },
      }[wrong.which]
      return { ...drafted, draft: { ...drafted.draft, ...changed } }
    },
  }
})
vi.mock('../../src/sequence/steps-places.ts', async (original) => {
  const places = await original<typeof import('../../src/sequence/steps-places.ts')>()
  return {
    ...places,
    stepPlaces: (cuts: StepCuts, dials: StepDials) => {
      const found = places.stepPlaces(cuts, dials)
      if (wrong.which !== 'places dropped') return found
      return { ...found, counts: found.counts.filter((_, i) => i % 3 === 0), ridge: 1e9, exact: 0 }
    },
  }
})
vi.mock('../../src/sequence/corner.ts', async (original) => {
  const corner = await original<typeof import('../../src/sequence/corner.ts')>()
  return {
    ...corner,
    sequenceCorner: (request: Request, cuts: CornerCuts) =>
      corner.sequenceCorner(
        wrong.which === 'corner with the compound swung' ? { ...request, angle: 0 } : request,
        cuts,
      ),
  }
})

const { compile } = await import('../../src/compile.ts')

const job = (tool: string, feature: string): Uint8Array =>
  new TextEncoder().encode(`
title: Cider press screw
units: inch
part: { material: mild steel, held: chuck, diameter: 1.500, length: 4 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: diameter, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150]
tools: { own: { ${tool}, reach: 0.300 } }
features:
  - { name: Press screw, ${feature}, tool: own }
`)

const codeOf = (tool: string, feature: string): string => {
  const { plan, diagnostics } = compile('job.yaml', (file) => ({ ok: true, file, bytes: job(tool, feature) }))
  if (plan === null) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  const one = plan.features[0]!
  return one.status === 'planned' ? 'planned' : one.code
}

const NECK = ['shape: square, width: 0.148', 'kind: groove, near: 1.125, width: 0.156 ±0.005, depth: 0.072'] as const
const FINE = [
  'shape: square, width: 0.156',
  "kind: groove, near: 1.125, width: 0.156, depth: 0.0722, compound: { angle: 5° 44' }",
] as const
const HOLLOW = [
  'shape: round, radius: 0.0625',
  'kind: radius, shape: concave, radius: 0.109, width: 0.180, center: 1.5',
] as const
const CORNER = [
  'shape: corner, radius: 0.125',
  'kind: radius, shape: corner, radius: 0.125, corner-of: end, compound: { angle: 30 }',
] as const

describe('a plan that is made wrong on purpose', () => {
  beforeEach(() => {
    wrong.which = 'nothing'
  })
  it.each([
    ['a neck', NECK],
    ['a neck with the compound as a fine dial', FINE],
    ['a hollow stepped along', HOLLOW],
  ])('is planned while nothing is wrong: %s', (_, asked) => {
    expect(codeOf(...asked)).toBe('planned')
  })
  it.each([
    ['touched further back', FINE, 'outside-form'],
    ['other corner', NECK, 'outside-form'],
    ['another line', NECK, 'outside-form'],
    ['line not scribed', NECK, 'set-up'],
    ['no such face', NECK, 'set-up'],
    ['another diameter', NECK, 'set-up'],
    ['places dropped', HOLLOW, 'ridge'],
    ['corner with the compound swung', CORNER, 'shifted-zero'],
  ])('is refused: %s', (which, asked, code) => {
    wrong.which = which
    expect(codeOf(...asked)).toBe(code)
  })
  it('is refused by the planner itself where the compound is swung for a corner', () => {
    expect(codeOf(...CORNER)).toBe('compound-swung')
  })
})
