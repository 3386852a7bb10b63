import { expect, it } from 'vitest'
import { benchOf, setupOf } from '../../src/job/lower.ts'
import { readJob } from '../../src/job/read-job.ts'
import type { Move, Operation } from '../../src/moves/operation.ts'
import { operationsOf, planFeatures } from '../../src/planning/features.ts'
import { replay } from '../../src/replay/replay.ts'

const JOB = `
title: Screw bearing
units: inch
part: { material: mild steel, held: chuck, diameter: 1.5, length: 5, overhang: 3 }
lathe:
  name: Bench lathe
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150]
tools:
  keen: { shape: square, width: 0.120, reach: 0.250 }
features:
  - { kind: groove, near: 1, width: 0.300, depth: 0.100, corner-radius: 0.060, tool: keen }
`

/** The bottom of the groove: sharp corners leave a stair of .003 in its fillets, and none on the floor that is fed across. */
it('a floor between fillets that are stepped along is left no higher by the cusp of the fillets', () => {
  const { job } = readJob('-', () => ({ ok: true, file: '-', bytes: JOB }))
  const setup = setupOf(benchOf(job!))
  const [operation] = operationsOf(planFeatures(job!, benchOf(job!), setup))
  const faults = (one: Operation) => replay(job!.lathe, setup, [one]).faults.map(({ kind }) => kind)
  expect(faults(operation!)).toEqual([])
  const across = operation!.moves.findIndex(({ action }) => action === 'feed-across')
  const floor = operation!.moves[across - 1]!
  expect([floor.action, floor.count]).toEqual(['feed-in', 100])
  // Roughing leaves .020: nothing else comes near the floor in its middle.
  const withFloor = (count: number): Operation => {
    const higher = (move: Move): Move => (move === floor ? { ...move, count } : move)
    return { ...operation!, moves: operation!.moves.map(higher) }
  }
  expect(faults(withFloor(99))).toEqual(['metal-left'])
  expect(faults(withFloor(98))).toEqual(['metal-left'])
})
