import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import type { Units } from '../../src/units/length.ts'
import { told } from '../prose.ts'

/** A size that nobody could measure on the finished form is not printed as proved: the feature is refused with the reason. */
const featureOf = (units: string, diameter: string, rest: string, tools = '') => {
  const text = `title: Idler of the cider press
units: ${units}
part: { material: mild steel, held: chuck, diameter: ${diameter}, length: 4 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [20, 60, 95, 150]
${tools}features:
  - { name: Groove, ${rest} }
`
  const { plan, diagnostics } = compile('-', () => ({ ok: true, file: '-', bytes: text }))
  if (plan === null) return { code: diagnostics[0]!.code, reason: diagnostics[0]!.message }
  const feature = plan.features[0]!
  return feature.status === 'refused'
    ? { code: feature.code, reason: told(feature.reason, units as Units) }
    : { code: 'planned', reason: '' }
}

describe('a form that is not there when it is finished', () => {
  it.each([
    [
      'a groove of a tenth of a thousandth',
      '1',
      'kind: groove, width: 0.0001, depth: 0.0001, near: 0.5',
      'too-shallow',
    ],
    ['half a mark deep: a tie leaves metal', '1', 'kind: groove, width: 0.1, depth: 0.0005, near: 0.5', 'too-shallow'],
    [
      'a hollow a tenth deep',
      '1',
      'kind: radius, shape: concave, radius: 1, depth: 0.0001, center: 0.5',
      'too-shallow',
    ],
  ])('is too shallow for the dial: %s', (_, diameter, rest, code) => {
    const { code: is, reason } = featureOf('inch', diameter, rest)
    expect(is).toBe(code)
    expect(reason).toContain('a mark of the cross-feed is .0010')
  })
  it('is cut where it is a little deeper than half a mark', () => {
    expect(featureOf('inch', '1', 'kind: groove, width: 0.1, depth: 0.0006, near: 0.5').code).toBe('planned')
  })

  it.each([
    ['under the floor', 'width-at: 1', 'ends at 2.220'],
    ['at the floor', 'width-at: 2.220', 'ends at 2.220'],
  ])('has no width where the drawing gives it: %s', (_, at, says) => {
    const { code, reason } = featureOf(
      'inch',
      '3',
      `kind: v-groove, angle: 38, width: 0.430, ${at}, depth: 0.39, center: 0.9`,
    )
    expect(code).toBe('width-at-floor')
    expect(reason).toContain(says)
  })
  it('has its width a little above the floor', () => {
    const rest = 'kind: v-groove, angle: 38, width: 0.170, width-at: 2.240, depth: 0.39, center: 0.9'
    expect(featureOf('inch', '3', rest).code).toBe('planned')
  })

  it('is no V at a millionth of a degree', () => {
    expect(featureOf('inch', '3', 'kind: v-groove, angle: 0.0000001, depth: 0.1, root: 0, center: 1').reason).toContain(
      'angle',
    )
  })
})

describe('a form that reaches past the axis', () => {
  const tilted = (tool: string) => `tools: { own: { ${tool}, rake-in-use: 14.5 } }\n`
  it.each([
    [
      'V',
      'kind: v-groove, angle: 38, depth: 0.4, root: 0.115, center: 0.6, tool: own',
      'shape: vee, angle: 38, nose: 0.11, reach: 0.62',
    ],
    [
      'hollow',
      'kind: radius, shape: concave, radius: 0.5, depth: 0.4, center: 1, tool: own',
      'shape: round, radius: 0.5, reach: 0.6',
    ],
    [
      'groove',
      'kind: groove, width: 0.2, depth: 0.4, near: 1, corner-radius: 0.02, tool: own',
      'shape: square, width: 0.19, corner-radius: 0.02, reach: 0.6',
    ],
    ['corner', 'kind: radius, shape: corner, corner-of: end, radius: 0.29, tool: own', 'shape: corner, radius: 0.29'],
  ])('is refused, whatever the rake: %s', (_, rest, tool) => {
    expect(['core-cut-through', 'no-solution', 'ground-on-face']).toContain(
      featureOf('inch', '0.55', rest, tilted(tool)).code,
    )
  })
})
