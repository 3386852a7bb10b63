import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

// An inch job on a lathe with metric dials: what the refusal says is in the units of the job.
const planWith = (cusp: string) => {
  const text = `title: Spindle of the cider press
units: inch
part: { material: mild steel, held: chuck, overhang: 2, diameter: 0.730, length: 3 }
lathe:
  name: Metric lathe
  units: mm
  cross-feed: { graduation: 0.01, per-turn: 0.5, backlash: 0.30, reads: diameter }
  compound: { graduation: 0.01, per-turn: 0.5, backlash: 0.30, travel: 60 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  parting: { shape: square, width: 0.273, reach: 0.7 }
features:
  - { kind: radius, shape: corner, name: End, corner-of: end, radius: 0.273, tool: parting, cusp: ${cusp} }
`
  const done = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(text) }))
  return done.plan!.features[0]!
}

it('refuses a table of places that nobody follows, and names a cusp that keeps it short', () => {
  const refused = planWith('0.0004')
  if (refused.status !== 'refused') throw new Error('planned')
  expect(refused.code).toBe('too-many-places')
  expect(told(refused.reason)).toMatch(/no ridge over \.0004 the tool would step to 4\d\d places, more than 150$/)
  const cusp = /cusp: (\.\d+) takes (\d+) places/.exec(told(refused.remedy))!
  const planned = planWith(cusp[1]!)
  if (planned.status !== 'planned') throw new Error(told(planned.reason))
  const places = new Set(
    planned.operation.moves.flatMap((move, i, moves) =>
      move.action === 'feed-in' && move.purpose === 'finish'
        ? [moves.slice(0, i).findLast((one) => one.slide === 'compound')?.count]
        : [],
    ),
  )
  expect(places.size).toBeLessThanOrEqual(150)
  expect(Math.abs(places.size - Number(cusp[2]))).toBeLessThanOrEqual(3)
})
