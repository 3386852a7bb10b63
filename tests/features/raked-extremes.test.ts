import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'

/**
 * On a sloping face a V is worked out by halving, again and again, on the radius of the work. A bar that measures a hundred times what is drawn once made that
 * end in no stack at all. Whatever the bar, it ends: planned, or refused with a reason and a remedy.
 */
const job = (drawn: number, measured: number, rake: number, sizes: string): string => `title: Spindle of the cider pump
units: inch
part: { material: mild steel, held: chuck and center, overhang: 3, diameter: ${drawn}, length: 4, measured-diameter: ${measured} }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.1, backlash: 0.005, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.005, angle: 0, travel: 2 }
  spindle-speeds: [60, 95, 150]
tools: { v: { shape: vee, angle: 38, nose: 0.11, reach: 0.32, rake-in-use: ${rake} } }
features:
  - { kind: v-groove, name: Cord groove, angle: 38, ${sizes}, center: 0.6, tool: v }
`

const answered = (text: string): string => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
  if (plan === null) return diagnostics.map(({ message }) => message).join('; ')
  const feature = plan.features[0]!
  return feature.status === 'refused' ? feature.code : feature.status
}

it('a V with rake on a bar that measures a hundred times what is drawn is a slip, told with both diameters', () => {
  expect(answered(job(0.0225, 2.249, 14.5, 'width: 0.31, root: 0.115'))).toContain(
    'measured-diameter is 2.249, and diameter is drawn 0.0225',
  )
})

it('a V with rake is planned or refused on the thinnest bar, the thickest, and one that measures nearly twice or half', () => {
  const answers = new Set<string>()
  for (const [drawn, measured] of [
    [0.02, 0.02],
    [0.32, 0.62],
    [1.2, 2.249],
    [2.4, 1.3],
    [400, 400],
  ] as const)
    for (const rake of [0, 2, 14.5, 35])
      for (const sizes of ['width: 0.31, root: 0.115', 'depth: 0.15, root: 0.115', 'width: 0.31, depth: 0.28'])
        answers.add(answered(job(drawn, measured, rake, sizes)))
  expect(answers.has('planned')).toBe(true)
  expect(answers.size).toBeGreaterThan(2)
})
