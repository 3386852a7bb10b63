import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

// An inch job on a lathe with metric dials: what the refusal says is in the units of the job.
const planWith = (cusp: string, units: 'inch' | 'mm' = 'inch') => {
  const text = `title: Spindle of the cider press
units: ${units}
part: { material: mild steel, held: chuck, overhang: 2 in, diameter: 0.730 in, length: 3 in }
lathe:
  name: Metric lathe
  units: mm
  cross-feed: { graduation: 0.01, per-turn: 0.5, backlash: 0.30, reads: diameter }
  compound: { graduation: 0.01, per-turn: 0.5, backlash: 0.30, travel: 60 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  parting: { shape: square, width: 0.273 in, reach: 0.7 in }
features:
  - { kind: radius, shape: corner, name: End, corner-of: end, radius: 0.273 in, tool: parting, cusp: ${cusp} }
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

it('names the least of the ridges, each half as much again as the last, that keeps the table short; in ten-thousandths, or in micrometers', () => {
  const named = (cusp: string, units: 'inch' | 'mm') => {
    const refused = planWith(cusp, units)
    if (refused.status !== 'refused') throw new Error('planned')
    return Number(/cusp: (\d*\.\d+)(?: mm)? takes \d+ places/.exec(told(refused.remedy))![1])
  }
  // Half as much again, up to the next ten-thousandth: .0004, .0006, .0009, .0014, .0021, .0032, .0048.
  const inches = [0.0004, 0.0006, 0.0009, 0.0014, 0.0021, 0.0032, 0.0048]
  const at = inches.indexOf(named('0.0004', 'inch'))
  expect(at).toBeGreaterThan(0)
  expect(planWith(String(inches[at - 1]), 'inch')).toMatchObject({ status: 'refused', code: 'too-many-places' })
  expect(planWith(String(inches[at]), 'inch').status).toBe('planned')
  // .014, .021, .032, .048.
  const metric = [0.014, 0.021, 0.032, 0.048]
  const there = metric.indexOf(named('0.014 mm', 'mm'))
  expect(there).toBeGreaterThan(0)
  expect(planWith(`${metric[there - 1]} mm`, 'mm')).toMatchObject({ status: 'refused', code: 'too-many-places' })
})
