import { describe, expect, it } from 'vitest'
import type { StairCuts } from '../../src/moves/cuts.ts'
import type { Move } from '../../src/moves/operation.ts'
import type { Request } from '../../src/sequence/request.ts'
import { sequenceStairs } from '../../src/sequence/stairs.ts'
import { bench, inch } from '../replay/shop.ts'

/** A tool of .150 under a form of which the depths at four places are given. Marks of .001 that read depth; expected by plain sums. */
const DEPTHS = new Map([
  [200, 0.3],
  [100, 0.1],
  [150, 0.2],
  [300, 0.1],
])
const PLACES = [...DEPTHS.keys()].map((thou) => inch(thou / 1000))

const request = (cuts: Partial<StairCuts>): Request => ({
  units: 'inch',
  lathe: bench,
  angle: 0,
  sideFeed: 'compound',
  eye: inch(0.005),
  fromEnd: inch(1),
  cuts: {
    style: 'stairs',
    nose: { width: inch(0.15), run: 0 },
    places: PLACES,
    first: inch(0.1),
    last: inch(0.3),
    depthAt: (place) => inch(DEPTHS.get(Math.round(place / inch(0.001))) ?? 0),
    depth: inch(0.3),
    infeed: null,
    peck: inch(0.15),
    layer: null,
    ...cuts,
  },
  origin: { file: 'job.yaml', path: [] },
  clear: inch(0.03),
  touchesBeside: false,
  edge: { from: 0, to: inch(0.15), deepest: 0 },
  heightOver: () => 0,
  tipOverlap: { byEye: inch(0.005), byDial: inch(0.003) },
})

const movesOf = (cuts: Partial<StairCuts> = {}): readonly Move[] => {
  const one = request(cuts)
  const sequenced = sequenceStairs(one, one.cuts as StairCuts)
  if (!sequenced.ok) throw new Error(String(sequenced.reason))
  return sequenced.moves
}

const OUT = -50
const told = (moves: readonly Move[]): string[] =>
  moves.map(({ action, slide, count, purpose }) =>
    [action, slide === 'cross-feed' ? 'x' : slide === 'compound' ? 'c' : slide, count, purpose]
      .filter((one) => one !== undefined)
      .join(' '),
  )
const fromStart = (moves: readonly Move[]): string[] => {
  const all = told(moves)
  return all.slice(all.indexOf('start') + 1)
}

describe('roughing in steps', () => {
  it('goes to the deepest place first, in pecks, then from near to far, each from where its metal begins', () => {
    expect(fromStart(movesOf())).toEqual([
      'shift c 200 to-place',
      'feed-in x 150 rough',
      `back-out x ${OUT} clear-chip`,
      'feed-in x 300 rough',
      `back-out x ${OUT} clear`,
      'go-past c 90 to-place',
      'return c 100 to-place',
      'feed-in x 100 rough',
      `back-out x ${OUT} clear`,
      // From .150 to .200 the place before has cut .100, and beyond .200 the first has cut all: .100 is left to take, less than a peck.
      'shift c 150 to-place',
      'feed-in x 200 rough',
      `back-out x ${OUT} clear`,
      'shift c 300 to-place',
      'feed-in x 100 rough',
      `back-out x ${OUT} clear`,
      'stop',
      'back-out x -550 clear-to-measure',
      'unlock carriage',
      'deburr burr',
    ])
  })

  it('begins under a V where the flanks of the places before have left metal', () => {
    // Flanks that run aside by half of the height, a nose of .020: the place before, .300 deep, ends .080 before its nearer corner: it
    // has cut .300 − .080 / .5 there and .300 − .100 / .5 at the further one, so the metal begins at .100.
    const nose = { width: inch(0.02), run: 0.5 }
    const places = [inch(0.2), inch(0.3)]
    const depthAt = (place: number) => (place < inch(0.25) ? inch(0.3) : inch(0.25))
    const cut = fromStart(movesOf({ nose, places, first: inch(0.2), last: inch(0.3), depthAt, peck: inch(0.1) }))
    expect(cut.slice(cut.indexOf('shift c 300 to-place') + 1).filter((move) => move.startsWith('feed-in'))).toEqual([
      'feed-in x 200 rough',
      'feed-in x 250 rough',
    ])
  })

  it('begins between two places of a V at the ridge between them', () => {
    // Both .200 deep, noses of .020 with .180 between them: their flanks meet .180 / 2 / .5 above, which is .020 deep.
    const nose = { width: inch(0.02), run: 0.5 }
    const places = [inch(0.1), inch(0.3), inch(0.2)]
    const cuts = { nose, places, first: inch(0.1), last: inch(0.3), depthAt: () => inch(0.2), peck: inch(0.1) }
    const cut = fromStart(movesOf({ ...cuts, depth: inch(0.2) }))
    expect(cut.slice(cut.indexOf('return c 200 to-place') + 1).filter((move) => move.startsWith('feed-in'))).toEqual([
      'feed-in x 120 rough',
      'feed-in x 200 rough',
    ])
  })

  it('widens a slot at the other places before it goes deeper, where it would bind', () => {
    const visits = fromStart(movesOf({ infeed: inch(0.05), peck: null, layer: inch(0.1) }))
      .filter((move) => /^(shift|return|feed-in)/.test(move))
      .map((move) => move.replace(/ (rough|to-place)$/, ''))
    expect(visits).toEqual([
      ...['shift c 200', 'feed-in x 50', 'feed-in x 100'],
      ...['return c 100', 'feed-in x 50', 'feed-in x 100'],
      ...['shift c 150', 'feed-in x 50', 'feed-in x 100'],
      ...['shift c 300', 'feed-in x 50', 'feed-in x 100'],
      ...['return c 200', 'feed-in x 150', 'feed-in x 200'],
      ...['return c 150', 'feed-in x 150', 'feed-in x 200'],
      ...['shift c 200', 'feed-in x 250', 'feed-in x 300'],
    ])
  })

  it('pecks from where the layer before has ended', () => {
    const cut = fromStart(movesOf({ infeed: inch(0.05), peck: inch(0.1), layer: inch(0.1) }))
    // From .100, 150 and 200 are one peck: nothing is drawn out between them.
    const deeper = cut.indexOf('feed-in x 150 rough')
    expect(cut.slice(deeper, deeper + 3)).toEqual([
      'feed-in x 150 rough',
      'feed-in x 200 rough',
      `back-out x ${OUT} clear`,
    ])
  })

  it('is drawn out within a layer that is more than a peck from where the layer before has ended', () => {
    const cut = fromStart(movesOf({ infeed: inch(0.05), peck: inch(0.08), layer: inch(0.1) }))
    const deeper = cut.indexOf('feed-in x 150 rough')
    expect(cut.slice(deeper, deeper + 3)).toEqual([
      'feed-in x 150 rough',
      `back-out x ${OUT} clear-chip`,
      'feed-in x 200 rough',
    ])
  })

  it('needs the slide parallel with the work', () => {
    const one = { ...request({}), angle: 30 }
    expect(sequenceStairs(one, one.cuts as StairCuts)).toMatchObject({ ok: false, code: 'compound-swung' })
  })
})
