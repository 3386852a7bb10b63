import type { Edge, Sheet, SheetFeature, SheetStep } from './sheet-shape.ts'

/** Sheets worked out by hand with pencil and paper, to test the brute-force replay before anything else exists. */
type Short = [action: string, slide?: SheetStep['slide'], reading?: number | null]

const opening: Short[] = [
  ['layout'],
  ['fit-tool'],
  ['take-up', 'compound', null],
  ['align'],
  ['lock'],
  ['zero', 'compound', 0],
  ['start'],
  ['touch-off', 'cross-feed'],
  ['zero', 'cross-feed', 0],
  ['back-out', 'cross-feed', -0.03],
]

const closing: Short[] = [['back-out', 'cross-feed', -0.03], ['stop'], ['measure'], ['deburr']]

/** 1.25 in bar, groove .200 wide and .060 deep from 0.800, .125 tool, cross-feed backlash .008, compound .006. */
export function squareSheet(): Sheet {
  return sheet(square(0.125, 0.1), 'groove', 0.8, [
    ['feed-in', 'cross-feed', 0.05],
    ['back-out', 'cross-feed', -0.03],
    ['shift', 'compound', 0.04],
    ['feed-in', 'cross-feed', 0.05],
    ['back-out', 'cross-feed', -0.03],
    ['shift', 'compound', 0.075],
    ['feed-in', 'cross-feed', 0.05],
    ['back-out', 'cross-feed', -0.03],
    ['go-past', 'compound', -0.02],
    ['return', 'compound', 0],
    ['feed-in', 'cross-feed', 0.06],
    ['feed-across', 'compound', 0.075],
  ])
}

/** A V of 60 degrees included, .200 deep, root .050, tool nose .040: near line at 1.000. */
export function veeSheet(): Sheet {
  const edge: Edge = { shape: 'vee', width: null, nose: 0.04, angle: 60, radius: null, reach: 0.3 }
  return sheet(edge, 'v-groove', 1, [
    ['go-past', 'compound', -0.02],
    ['return', 'compound', 0.115],
    ['feed-in', 'cross-feed', 0.2],
    ['feed-across', 'compound', 0.125],
  ])
}

/** How far the curve of an 1/8 corner tool has risen .010 from its end: radius less the other leg of a triangle. */
export const RISEN = 0.125 - Math.sqrt(0.125 ** 2 - 0.01 ** 2)
/** The same at its other end, which stands that much less over the face: the zero of the cross-feed is so much further out. */
export const RISEN_AT_FACE = 0.125 - Math.sqrt(0.125 ** 2 - (0.01 - RISEN) ** 2)

/** A corner of 1/8 radius at the free end, fed home by alternating small moves. Both touches leave their zero a little outside the corner. */
export function cornerSheet(): Sheet {
  const edge: Edge = { shape: 'corner', width: null, nose: null, angle: null, radius: 0.125, reach: null }
  const pairs: Short[] = [-0.036, -0.024, -0.014, -0.006, 0].flatMap((reading): Short[] => [
    ['feed-in', 'compound', reading],
    ['feed-in', 'cross-feed', reading],
  ])
  const all = sheet(edge, 'radius', 0, [...pairs, ['back-out', 'compound', -0.1]], cornerOpening)
  return withFeature(all, {
    placing: { point: 'tailstock-corner', against: { beside: 0, gap: 0.02 } },
    touch: { diameter: 1.25, at: { point: 'headstock-corner', against: { past: 0, by: 0.01 } } },
    zero: { fromEnd: -RISEN_AT_FACE, diameter: 1.25 + 2 * RISEN },
  })
}

/** Each tip is touched with the other slide backed off by the radius less .010, then both stand clear of the sharp corner. */
const cornerOpening: Short[] = [
  ['take-up', 'compound', null],
  ['touch-off', 'cross-feed'],
  ['zero', 'cross-feed', 0],
  ['back-out', 'cross-feed', -0.2],
  ['align'],
  ['lock'],
  ['return', 'cross-feed', -0.115],
  ['touch-off', 'compound'],
  ['zero', 'compound', 0],
  ['back-out', 'compound', -0.1],
  ['return', 'compound', -0.05],
  ['start'],
  ['return', 'cross-feed', -0.05],
]

export function withFeature(sheet: Sheet, change: Partial<SheetFeature>): Sheet {
  return { ...sheet, features: [{ ...sheet.features[0]!, ...change }] }
}

export function without(sheet: Sheet, drop: (step: SheetStep) => boolean): Sheet {
  return { ...sheet, steps: sheet.steps.filter((step) => !drop(step)) }
}

export function changed(sheet: Sheet, change: (step: SheetStep) => Partial<SheetStep> | null): Sheet {
  return { ...sheet, steps: sheet.steps.map((step) => withTurns({ ...step, ...change(step) })) }
}

function square(width: number, reach: number): Edge {
  return { shape: 'square', width, nose: null, angle: null, radius: null, reach }
}

function sheet(edge: Edge, kind: string, fromEnd: number, moves: Short[], first = opening): Sheet {
  const dial = { units: 'inch', graduation: 0.001, perTurn: 0.1, readTo: 1, readout: false } as const
  return {
    format: 'groovewright.sheet/1',
    units: 'inch',
    lathe: {
      crossFeed: { ...dial, reads: 'depth', backlash: 0.008 },
      compound: { ...dial, backlash: 0.006, travel: 2 },
      carriage: null,
    },
    part: { held: 'chuck', overhang: 3, steps: [{ name: 'bar', diameter: 1.25, measured: null, from: 0, to: 3 }] },
    features: [
      {
        name: 'By hand',
        kind,
        status: 'planned',
        edge,
        compoundAngle: 0,
        surface: 1.25,
        placing: {
          point: edge.shape === 'vee' ? 'nose-tailstock-corner' : 'tailstock-corner',
          against: { line: fromEnd },
        },
        touch: { diameter: 1.25, at: null },
        lines: [fromEnd],
        zero: { fromEnd, diameter: 1.25 },
      },
    ],
    steps: [...first, ...moves, ...closing].map(([action, slide, reading], at) =>
      withTurns({
        ...{ number: at + 1, feature: 0, action, slide: slide ?? null, reading: reading ?? null },
        ...(action === 'take-up' ? { atLeast: 0.011 } : {}),
      }),
    ),
  }
}

function withTurns(step: SheetStep): SheetStep {
  if (typeof step.reading !== 'number') return step
  const turns = Math.floor(step.reading / 0.1 + 1e-9)
  return { ...step, turns, mark: (step.reading - turns * 0.1) / 0.001 }
}
