import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'
import rows from './plunges.json' with { type: 'json' }
import { INCH_LATHE } from './whole-job.ts'

const figure = (id: string): number => {
  const row = rows.find((one) => one.id === id)!
  return row.widths ?? row.diameters!
}

/** A groove of a tool a tenth of an inch wide, `deep` of its widths deep; and how the plan goes in. */
const plan = (deep: number, wide = 0.16, part = 'diameter: 3') => {
  const bytes = `
title: Piston
units: inch
part: { material: mild steel, held: chuck, ${part}, length: 4, overhang: 2.5 }
lathe: ${INCH_LATHE}
tools: { slot: { shape: square, width: 0.1, reach: 1.4 } }
features:
  - { kind: groove, near: 1, width: ${wide}, depth: ${(deep * 0.1).toFixed(3)}, leave: 0.005, tool: slot }
`
  const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
  return plan!.features[0]!
}

/** The runs of one plunge, each from where the tool is clear: what the cross-feed reads at the end of each, in widths. */
const runs = (deep: number, wide?: number): number[] => {
  const feature = plan(deep, wide)
  if (feature.status !== 'planned') throw new Error(told(feature.reason))
  const { moves } = feature.operation
  return moves.flatMap((move, i) =>
    move.action === 'back-out' && moves[i - 1]?.purpose === 'rough' ? [moves[i - 1]!.count! / 100] : [],
  )
}

it('goes in at once as deep as the tool is wide, and a little more', () => {
  expect(runs(figure('cd_mits'), 0.1)).toEqual([0.95])
  expect(runs(1.25, 0.1)).toEqual([1.2])
})

it('is drawn out each time it is a width deeper', () => {
  expect(runs(3, 0.1)).toEqual([1, 2, 2.95])
})

it('is widened at its other place before it is more than four widths deep', () => {
  const deepest = figure('cd_step4')
  const places = runs(5)
  expect(places).toEqual([1, 2, 3, 4, 1, 2, 3, 4, 4.95, 4.95])
  expect(Math.max(...places.slice(0, 4))).toBeLessThanOrEqual(deepest)
})

it('is refused deeper than eight widths where the tool fills the groove, with a width that can widen it', () => {
  expect(plan(figure('cd_ratio8'), 0.1).status).toBe('planned')
  const refused = plan(figure('cd_ratio8') + 0.1, 0.1)
  expect(refused.status === 'refused' && [refused.code, told(refused.remedy)]).toEqual([
    'slot-too-deep',
    'take a tool .080 wide or less, so that the slot is widened on the way',
  ])
  expect(plan(figure('cd_ratio8') + 0.1).status).toBe('planned')
})

it('asks for a center where a core is more than two and a half of its diameters long', () => {
  const core = (diameters: number, held = '') => plan(4, diameters * 0.2, `diameter: 1${held}`)
  expect(core(figure('cd_overhang25')).status).toBe('planned')
  const refused = core(figure('cd_overhang25') + 0.05)
  expect(refused.status === 'refused' && refused.code).toBe('slender-core')
})
