import { describe, expect, it, test } from 'vitest'
import { compile } from '../../src/compile.ts'
import { edgeInWork, mostEdge } from '../../src/job/checks/contact.ts'
import { MM } from '../../src/units/length.ts'
import { told } from '../prose.ts'
import { corner, inch, round, square, toInch, vee } from '../replay/shop.ts'

/** Lengths of edges by plane geometry. */
type Draft = Parameters<typeof edgeInWork>[0]
const draft = (shape: string, depth: number, cuts: object = {}): Draft =>
  ({
    tool: { shape },
    cuts: { style: 'plunge', depth: inch(depth), radius: inch(depth), first: 0, last: 0, ...cuts },
  }) as unknown as Draft
const radians = (degrees: number) => (degrees * Math.PI) / 180

describe('the edge that is in the work at once', () => {
  it('of a square tool is its width', () => {
    expect(toInch(edgeInWork(draft('square', 0.1), square(0.148)))).toBeCloseTo(0.148, 9)
  })
  it('of a V is its nose and both flanks as deep as they go: twice the depth over cos of half the angle', () => {
    const flank = 0.4 / Math.cos(radians(19))
    const whole = edgeInWork(draft('vee', 0.4), vee(0.14, 38, 0.5))
    expect(toInch(whole)).toBeCloseTo(0.14 + 2 * flank, 5)
    expect(toInch(edgeInWork(draft('vee', 0.5), vee(0.14, 38, 0.5)))).toBeCloseTo(0.14 + (2 * flank * 0.5) / 0.4, 5)
    // Fed along a flank, or wider than its tool, one flank at a time.
    for (const cuts of [{ style: 'flank' }, { last: 10 }])
      expect(toInch(edgeInWork(draft('vee', 0.4, cuts), vee(0.14, 38, 0.5)))).toBeCloseTo(0.14 + flank, 5)
  })
  it('of a round tool is the arc below the surface: 2 r arccos((r − depth) / r), and half a circle from there on', () => {
    const arc = (depth: number) => toInch(edgeInWork(draft('round', depth), round(0.125)))
    expect(arc(0.05)).toBeCloseTo(2 * 0.125 * Math.acos(0.075 / 0.125), 6)
    for (const deep of [0.125, 0.18]) expect(arc(deep)).toBeCloseTo(Math.PI * 0.125, 6)
  })
  it('of a corner tool is its quarter circle, and of steps is not counted', () => {
    const quarter = edgeInWork(draft('corner', 0.125, { style: 'corner' }), corner(0.125))
    expect(toInch(quarter)).toBeCloseTo((Math.PI / 2) * 0.125, 6)
    expect(edgeInWork(draft('round', 0.1, { style: 'steps' }), round(0.125))).toBe(0)
  })
})

test.each<[string, number, number | undefined, number]>([
  // Half an inch unless the lathe says more or less; twice that in what cuts freely, two thirds in what is tough.
  ['mild steel', 4, undefined, 0.5],
  ['cast iron', 4, 0.25, 0.25],
  ['brass', 4, undefined, 1],
  ['free-machining steel', 4, 0.25, 0.5],
  ['stainless steel', 4, 0.3, 0.2],
  ['free-machining stainless steel', 4, 0.3, 0.3],
  ['tool steel', 4, 0.3, 0.2],
  // Never more than a quarter of the diameter.
  ['brass', 1, undefined, 0.25],
])('in %s of %d in, by a lathe that has %s: %d', (material, diameter, ofLathe, most) => {
  const own = ofLathe === undefined ? undefined : inch(ofLathe)
  expect(toInch(mostEdge(inch(diameter), own, material, 'inch'))).toBeCloseTo(most, 9)
  expect(mostEdge(400 * MM, undefined, 'mild steel', 'mm')).toBe(12 * MM)
})

const job = (more: string, lathe = '') => `title: Pulley of the cider mill
units: inch
part: { material: cast iron, held: chuck, overhang: 3, steps: [{ name: rim, diameter: 4, length: 3.5 }] }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [30, 60, 95]
${lathe}tools:
  v: { shape: vee, angle: 38, nose: 0.150, reach: 0.500 }
features:
  - { kind: v-groove, center: 1.5, angle: 38, root: 0.150, depth: 0.400, tool: v${more} }
`
const warnings = (text: string) => {
  const { plan, diagnostics } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))
  expect(diagnostics).toEqual([])
  expect(plan!.features.map(({ status }) => status)).toEqual(['planned'])
  return plan!.warnings.filter(({ code }) => code === 'wide-contact').map(({ say }) => told(say))
}

test('what is brought to the lines by eye is not told to be opened up in steps, which would be refused', () => {
  const [one] = warnings(job(', side-feed: lines'))
  expect(one).toMatch(/^At full depth .* of the edge is in the work at once; /)
  expect(one).not.toContain('rough-tool')
})

test('a V with an inch of edge is told, with what helps, and that helps: one flank at a time on a lathe that does that', () => {
  const [one, ...more] = warnings(job(''))
  expect(more).toEqual([])
  expect(one).toBe(
    'At full depth .996 of the edge is in the work at once; .500 is what this lathe forms in this metal: cut one flank at a time (method: flank-feed), or open it up in steps with a square tool (rough-tool:) and take the last of it in light cuts; if it chatters, in this order: less speed, then more feed, less overhang, an edge honed afresh, snug gibs.',
  )
  expect(warnings(job(', method: flank-feed', '  widest-edge: 5/8\n'))).toEqual([])
  expect(warnings(job('', '  widest-edge: 1\n'))).toEqual([])
})
