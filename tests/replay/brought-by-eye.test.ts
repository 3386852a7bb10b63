import { expect, it } from 'vitest'
import type { Lathe } from '../../src/lathe/lathe.ts'
import type { Edge, Piece } from '../../src/moves/form.ts'
import type { Move } from '../../src/moves/operation.ts'
import { replay } from '../../src/replay/replay.ts'
import { bar, begin, bench, feed, groove, inch, line, move, out } from './shop.ts'

/** Moved by eye until the tool is at a place. */
const seen = (place: number, action: Move['action'] = 'move-carriage'): Move => ({
  ...move(action, 'carriage'),
  place: inch(place),
})

it('a carriage with an indicator may be set to zero where the tool is seen at its line: no lost motion is open', () => {
  const carriage = { kind: 'readout', units: 'inch', resolution: inch(0.001), reads: 'depth' } as const
  const moves = [move('align'), seen(1.125), move('lock'), move('zero', 'carriage')]
  const faults = (one: Lathe) =>
    replay(one, bar([1.5, 4]), [groove(1.125, 0.156, 0.072, moves)]).faults.filter(({ kind }) => kind === 'open-zero')
  expect(faults({ ...bench, carriage })).toEqual([])
  expect(faults(bench).map(({ say }) => say)).toEqual([
    'The carriage was moved by eye: its backlash has not been taken up.',
  ])
})

it('what a tool with rounded corners cuts between lines by eye is the same for every lost motion', () => {
  const r = inch(0.05)
  const corner = (from: number, to: number, zc: number): Piece => ({
    from,
    to,
    curve: { kind: 'arc', zc, dc: -r, r, side: 1 },
    step: -1,
  })
  const width = inch(0.148)
  const edge: Edge = {
    pieces: [corner(0, r, r), line(r, 0, width - r, 0), corner(width - r, width, width - r)],
    reach: inch(0.2),
    shank: { from: 0, to: width },
  }
  const moves = [
    ...begin,
    move('unlock'),
    seen(1.129),
    move('lock'),
    feed(72),
    move('unlock'),
    seen(1.125, 'feed-across'),
    seen(1.133, 'feed-across'),
    move('lock'),
    out(-50),
  ]
  const { faults, operations } = replay(bench, bar([1.5, 4]), [{ ...groove(1.125, 0.156, 0.072, moves), edge }])
  expect(faults.filter(({ kind }) => kind === 'open-form')).toEqual([])
  expect(operations[0]!.possibly).toEqual(operations[0]!.surely)
})
