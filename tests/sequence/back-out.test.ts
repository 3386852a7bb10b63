import { describe, expect, it } from 'vitest'
import type { Cuts, FlankCuts, PlungeCuts, StairCuts, StepCuts } from '../../src/moves/cuts.ts'
import { plain } from '../../src/phrase/words.ts'
import { touching } from '../../src/sequence/begin.ts'
import { fineDepth } from '../../src/sequence/fine.ts'
import type { Request } from '../../src/sequence/request.ts'
import { sequence } from '../../src/sequence/sequence.ts'
import { tooManyMoves } from '../../src/sequence/too-many-moves.ts'
import { bench, dial, inch, toInch } from '../replay/shop.ts'

/** Marks of .001; the cross-feed has lost .008, the compound .006. Expected by plain sums. */
const plunge = (more: Partial<PlungeCuts> = {}): PlungeCuts => ({
  style: 'plunge',
  roughPlaces: [0],
  first: 0,
  last: 0,
  spacing: inch(0.1),
  depth: inch(0.072),
  roughDepths: [inch(0.052)],
  infeed: null,
  walls: 'swept',
  peck: null,
  layer: null,
  ...more,
})
const stairs: StairCuts = {
  style: 'stairs',
  nose: { width: inch(0.15), run: 0 },
  places: [inch(-0.2), inch(-0.3)],
  first: inch(-0.3),
  last: inch(-0.2),
  depthAt: () => inch(0.1),
  depth: inch(0.1),
  infeed: null,
  peck: null,
  layer: null,
}
/** A level floor .050 deep, .100 from the first place to the last, that the tool need not touch between them. */
const steps = (first: number): StepCuts => ({
  style: 'steps',
  first: inch(first),
  last: inch(first + 0.1),
  touches: [inch(first), inch(first + 0.1)],
  depth: inch(0.05),
  depthAt: () => inch(0.05),
  between: (near) => ({ along: near, deep: inch(0.05) }),
  ends: null,
  outside: () => 0,
  formAt: () => inch(0.05),
  cusp: inch(0.001),
  cuspGiven: false,
  leave: inch(0.005),
  infeed: inch(0.02),
  peck: inch(1),
  roughSpacing: inch(0.05),
  middle: null,
  edgeAt: () => 0,
  workFrom: inch(-1),
  besideFace: null,
})
const flank: FlankCuts = {
  style: 'flank',
  slope: Math.tan(Math.PI / 6),
  plunged: true,
  first: inch(0.05),
  last: inch(0.05),
  nose: inch(0.02),
  spacing: inch(0.015),
  depth: inch(0.1),
  roughDepths: [inch(0.08)],
  infeed: inch(0.05),
}

/** What is asked of the stock, and how far out the tool goes: the stock beside the feature is .200 higher. */
const asked = (cuts: Cuts, more: Partial<Request> = {}) => {
  const spans: (readonly [number, number])[] = []
  const request: Request = {
    units: 'inch',
    lathe: bench,
    angle: 0,
    sideFeed: 'compound',
    eye: inch(0.005),
    fromEnd: inch(1),
    cuts,
    origin: { file: 'job.yaml', path: [] },
    clear: inch(0.03),
    touchesBeside: false,
    edge: { from: inch(-0.01), to: inch(0.148), deepest: inch(0.003) },
    heightOver: (from, to) => {
      spans.push([Number(toInch(from).toFixed(6)), Number(toInch(to).toFixed(6))])
      return inch(0.2)
    },
    tipOverlap: { byEye: inch(0.005), byDial: inch(0.003) },
    ...more,
  }
  const sequenced = sequence(request)
  if (!sequenced.ok) throw new Error(plain(sequenced.reason, 'inch'))
  const out = sequenced.moves.find(({ action }) => action === 'back-out')!.count!
  return { out, span: spans[0]!, moves: sequenced.moves }
}

describe('how far out the tool goes', () => {
  // The height, the clearance, how far the edge is deeper than its reference point, and what the slide may have lost: .200 + .030 + .003 + .008 = .241.
  it('is the next round mark over everything that stands between it and the work', () => {
    expect(asked(plunge()).out).toBe(-250)
    expect(asked(plunge(), { edge: { from: 0, to: inch(0.148), deepest: inch(-0.003) } }).out).toBe(-240)
    expect(asked(plunge({ last: inch(0.05) }), { sideFeed: 'lines' }).out).toBe(-250)
    expect(asked(stairs).out).toBe(-250)
    expect(asked(stairs, { edge: { from: 0, to: inch(0.148), deepest: inch(-0.003) } }).out).toBe(-240)
  })

  it('is over all of the way that the edge goes, with what the slide along may have lost', () => {
    // Past the first place by more than the backlash, to the round mark -310 or before: -.310 − .010 − .006; up to the surface beside the zero.
    const { span } = asked(stairs)
    expect(span[0]).toBeCloseTo(-0.326, 6)
    expect(span[1]).toBeGreaterThanOrEqual(0.148)
    expect(asked({ ...stairs, places: [inch(0.2)], first: inch(0.2), last: inch(0.2) }).span[1]).toBeGreaterThanOrEqual(
      0.348,
    )
  })

  it('is over the way past the first of many places, or past the zero where they are all beyond it', () => {
    // A compound that has lost .010: it goes past a place by .011 at the least, to a round mark, and may be .010 further back.
    const lathe = { ...bench, compound: { ...bench.compound, scale: dial(0.01) } } as Request['lathe']
    const from = (first: number) => asked(steps(first), { lathe }).span[0]
    expect(from(0.02)).toBeCloseTo(-0.01 - 0.02 - 0.01, 6)
    expect(from(0)).toBeCloseTo(-0.01 - 0.02 - 0.01, 6)
    expect(from(-0.03)).toBeCloseTo(-0.01 - 0.05 - 0.01, 6)
    expect(asked(steps(0.02), { lathe }).span[1]).toBeCloseTo(0.12 + 0.148, 6)
  })

  it('counts what the compound goes deeper by, and whole turns for a V', () => {
    // At 60 degrees the compound ends .05 / cos 60° = .100 down: .0866 deeper. .200 + .030 + .0866 + .003 + .008 = .3276: four turns.
    expect(asked(flank, { angle: 60 }).out).toBe(-400)
    // .200 − .025 less: three turns do, and by twice the .0138 that the edge is deeper four would be needed again.
    const nearly = { heightOver: () => inch(0.169), angle: 60 }
    expect(asked(flank, nearly).out).toBe(-300)
    expect(asked(flank, { ...nearly, edge: { from: 0, to: inch(0.148), deepest: inch(0.0075) } }).out).toBe(-400)
    expect(asked(flank, { ...nearly, edge: { from: 0, to: inch(0.148), deepest: inch(-0.0075) } }).out).toBe(-300)
  })
})

describe('a compound as a fine dial', () => {
  const coarse = { ...bench, crossFeed: { ...bench.crossFeed, graduation: inch(0.005) } } as Request['lathe']
  const fine = (more: Partial<Request> = {}) => ({ lathe: coarse, angle: 5.739, ...more })

  it('goes further out by what it adds to the depth, and by what the edge is deeper', () => {
    // .072 is .070 and twenty marks of .0001. .200 + .030 + .002 + .003 + .008 = .243: 49 marks of .005, the next round one is 50.
    const high = (height: number, deepest: number) =>
      asked(
        plunge(),
        fine({
          heightOver: (_, to) => (to > 0 ? inch(height) : 0),
          edge: { from: 0, to: inch(0.148), deepest: inch(deepest) },
        }),
      ).out
    expect(high(0.2, 0.003)).toBe(-50)
    expect(high(0.209, 0.0005)).toBe(-50)
    expect(high(0.209, 0.002)).toBe(-60)
    expect(high(0.209, -0.002)).toBe(-50)
  })

  it('takes no more than an infeed at the first pass, from the surface as it is before the compound has added its part', () => {
    // Twenty marks of .0001 are .002: at 0 of the cross-feed the tool is .002 deep. Of .030 at most, five marks of .005 and the .002 are the first pass.
    const { moves } = asked(
      plunge({ infeed: inch(0.03), roughDepths: [inch(0.062)] }),
      fine({ heightOver: (_, to) => (to > 0 ? inch(0.1) : 0), edge: { from: 0, to: inch(0.148), deepest: 0 } }),
    )
    const passes = moves.flatMap(({ action, count }) => (action === 'feed-in' ? [count! * 0.005 + 0.002] : []))
    const bites = passes.map((deep, i) => deep - (passes[i - 1] ?? 0))
    expect(passes.length).toBeGreaterThan(2)
    for (const bite of bites) expect(bite).toBeLessThan(0.0301)
    expect(passes.at(-1)).toBeCloseTo(0.072, 6)
  })

  it('is none where the tool would start below the top of a shoulder before its place', () => {
    const request = (height: number) =>
      ({
        ...fine(),
        edge: { from: 0, to: inch(0.148), deepest: 0 },
        heightOver: () => inch(height),
      }) as unknown as Request
    expect(fineDepth(request(0), plunge())).toMatchObject({ back: 20 })
    expect(fineDepth(request(0.1), plunge())).toBeNull()
  })
})

describe('a plan of too many moves', () => {
  it('tells its places, the last of them where the end is', () => {
    const reason = (cuts: Cuts, units: 'inch' | 'mm' = 'inch') => {
      const refusal = tooManyMoves({ cuts, units, lathe: bench } as Request)
      return refusal.ok ? '' : [refusal.reason, refusal.remedy].map((one) => plain(one, units)).join('; ')
    }
    // .350 by .100: 0, .100, .200, .300 and .350.
    expect(reason(plunge({ last: inch(0.35) }))).toContain('5 places along the work')
    expect(reason(plunge({ last: inch(0.3) }))).toContain('4 places along the work')
    // 25 layers at 101 places: each place is gone to 25 times, 4 moves for a visit and 2 for each of 100 infeeds. A fifth more than that many moves, over 1,500.
    const many = plunge({ last: inch(10), depth: inch(1), infeed: inch(0.01), layer: inch(0.04) })
    const times = (1.2 * 101 * (100 * 2 + 25 * 4)) / 1500
    expect(reason(many)).toMatch(new RegExp(`${(0.1 * times).toFixed(3)}|${(0.01 * times).toFixed(4)}`))
    // 2.54 mm each for a plan of few moves: half as much again.
    expect(reason(plunge({ last: inch(0.35) }), 'mm')).toContain('a place only every 3.810')
  })
})

describe('a V fed down its flank, with a root wider than the nose', () => {
  it('has each run on a mark at or short of its place, and the cross-feed on the mark that is as deep there', () => {
    // At 60 degrees .100 deep is .1155 down. A tool .06375 along is .1275 down: of two marks as near, 127, the lower; it is .1100 deep, and the cross-feed .0100 less deep.
    const beside: FlankCuts = { ...flank, plunged: false, first: inch(0.05), last: inch(0.06375), roughDepths: [] }
    const { moves } = asked(beside, { angle: 60 })
    const runs = moves.filter(
      ({ action, slide, purpose }) => action === 'feed-in' && slide === 'compound' && purpose === 'finish',
    )
    const lines = moves.filter(
      ({ action, slide, purpose }) => action === 'return' && slide === 'cross-feed' && purpose === 'approach',
    )
    expect(runs.map(({ count }) => count)).toEqual([115, 127])
    expect(lines.map(({ count }) => count)).toEqual([0, -10])
  })
})

describe('a compound square to the work', () => {
  it('moves no tool along: one place is left as it is, and several are none', () => {
    const { moves } = asked(plunge(), { angle: 90 })
    const along = moves.filter(({ slide, count }) => slide === 'compound' && typeof count === 'number')
    expect(along.filter(({ action }) => action !== 'zero')).toEqual([])
    expect(() => asked(plunge({ last: inch(0.05) }), { angle: 90 })).toThrow('compound')
  })
})

describe('a tool that is backed out beside a shoulder', () => {
  it('still touches it where the shoulder is higher than the edge is out, at the full lost motion', () => {
    // 50 marks out, .008 lost, an edge .003 deeper than its reference point: .039.
    const touches = (height: number, deepest: number): boolean =>
      touching(
        {
          lathe: bench,
          edge: { from: 0, to: inch(0.1), deepest: inch(deepest) },
          heightOver: () => inch(height),
        } as unknown as Request,
        { slide: 'compound', scale: bench.compound.scale, angle: 0 },
        -50,
      )(0)
    expect([touches(0.04, 0.003), touches(0.0385, 0.003), touches(0.043, -0.003), touches(0.046, -0.003)]).toEqual([
      true,
      false,
      false,
      true,
    ])
  })
})
