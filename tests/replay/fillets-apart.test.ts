import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { benchOf, setupOf } from '../../src/job/lower.ts'
import { readJob } from '../../src/job/read-job.ts'
import type { Move } from '../../src/moves/operation.ts'
import { operationsOf, planFeatures } from '../../src/planning/features.ts'
import { replay } from '../../src/replay/replay.ts'
import { INCH } from '../../src/units/length.ts'
import { allTold } from '../prose.ts'

/** The second wall stands .0003 off the marks: there the marks keep the usual cusp of .0005, at the first wall they cannot. */
const job = `title: Bearing of the cider press
units: inch
part: { material: mild steel, held: chuck, overhang: 3, diameter: 1.5, length: 5 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  blunt: { shape: square, width: 0.123, corner-radius: 0.020, reach: 0.25 }
features:
  - { kind: groove, name: Bearing, near: 1, width: 0.3753, depth: 0.125, corner-radius: 0.060, tool: blunt }
`
const load = () => ({ ok: true as const, file: 'job.yaml', bytes: job })

/** Where the tool backs out at each place of the finish. */
const placesOf = (moves: readonly Move[]): number[] =>
  moves.flatMap((move, from) => {
    if (move.purpose !== 'to-place' || move.action !== 'shift') return []
    const to = moves.findIndex(({ action }, i) => i > from && action === 'back-out')
    const feeds = moves.slice(from + 1, to)
    return feeds.length > 0 && feeds.every(({ purpose }) => purpose === 'finish') ? [to] : []
  })

describe('two fillets that the marks serve differently', () => {
  it('are both told in the note', () => {
    const feature = compile('job.yaml', load).plan!.features[0]!
    expect(feature.status).toBe('planned')
    if (feature.status !== 'planned') return
    expect(feature.trace.ridges!.map((ridge) => ridge / INCH)).toEqual([
      expect.closeTo(0.00067, 5),
      expect.closeTo(0.00037, 5),
    ])
    expect(allTold(feature.notes)).toContain(
      'the ridges are at most .0007 out of the fillet nearer the free end and at most .0004 out of the other',
    )
  })

  it('are each held to what the marks can do there: the worse lends the other nothing', () => {
    const read = readJob('job.yaml', load).job!
    const bench = benchOf(read)
    const setup = setupOf(bench)
    const operation = operationsOf(planFeatures(read, bench, setup))[0]!
    const places = placesOf(operation.moves)
    const between = places.flatMap((to) => {
      const moves = operation.moves.map((move, i) => (i === to - 1 ? { ...move, count: move.count! - 1 } : move))
      const { operations, faults } = replay(read.lathe, setup, [{ ...operation, moves }])
      const [first, second] = operations[0]!.ridges!
      // Taller than the cusp, and not as tall as the other fillet's own.
      return second! > 0.000506 * INCH && second! < first! ? [faults.map(({ kind }) => kind)] : []
    })
    expect(between.length).toBeGreaterThan(0)
    for (const kinds of between) expect(kinds).toContain('ridge')
  })
})
