import { readable } from '../../lathe/lathe.ts'
import type { Spindle } from '../../moves/stated.ts'
import { formatLength } from '../../units/format.ts'
import type { Case } from './refusals.ts'

export type Said = { readonly code: string; readonly say: string }

/** What does not forbid a feature but belongs in front of whoever cuts it. */
export function warningsOf(one: Case, spindle: Spindle): Said[] {
  return [
    ...tooFast(spindle),
    ...smallCore(one),
    ...wideContact(one),
    ...fineLimits(one),
    ...pullsIn(one),
    ...unusedCusp(one),
    ...toBeGround(one),
  ]
}

/** Overhang over three diameters without a center. */
export function slender(bench: Case['bench']): Said[] {
  if (bench.part.held === 'between centers' || bench.part.held === 'chuck and center' || !bench.part.overhangGiven)
    return []
  const out = bench.part.overhang
  const thinnest = Math.min(...bench.steps.filter((step) => step.start < out).map((step) => step.measured))
  const times = out / thinnest
  if (times <= 3) return []
  return [
    {
      code: 'slender',
      say: `The work stands out ${times.toFixed(1)} diameters without a center: expect spring and chatter, use a center or less overhang.`,
    },
  ]
}

const tooFast = (spindle: Spindle): Said[] =>
  spindle.tooFast
    ? [
        {
          code: 'too-fast',
          say: `LOWEST AVAILABLE, TOO FAST: do not form at this speed. ${Math.round(spindle.wanted)} rpm is wanted.`,
        },
      ]
    : []

function smallCore(one: Case): Said[] {
  const bottom = one.draft.dimensions.find((dimension) => dimension.id === 'bottomDiameter')
  if (bottom === undefined || bottom.aim >= one.draft.surface / 3) return []
  return [
    {
      code: 'small-core',
      say: `Only ${formatLength(bottom.aim, one.bench.units)} of the diameter is left at the bottom: the work is weak there, take light cuts.`,
    },
  ]
}

/** Contact wider than a quarter of the diameter tends to chatter. Common practice, no source. */
function wideContact(one: Case): Said[] {
  if (one.draft.cuts.style === 'steps') return []
  const cutting = one.edge.pieces.filter((piece) => piece.curve.kind === 'arc' || piece.curve.d0 === piece.curve.d1)
  const width = cutting.reduce((sum, piece) => sum + piece.to - piece.from, 0)
  if (width <= one.draft.surface / 4) return []
  return [
    {
      code: 'wide-contact',
      say: `The edge bears on ${formatLength(width, one.bench.units)}, wide for this diameter: if it chatters, less speed and more feed.`,
    },
  ]
}

function fineLimits(one: Case): Said[] {
  const scale = one.lathe.crossFeed
  const travel = scale.reads === 'diameter' ? readable(scale) / 2 : readable(scale)
  const radial = one.draft.dimensions.flatMap((dimension) => {
    if (dimension.limits === null || (dimension.id !== 'depth' && dimension.id !== 'bottomDiameter')) return []
    const range = dimension.limits[1] - dimension.limits[0]
    return [dimension.id === 'depth' ? range : range / 2]
  })
  if (radial.every((range) => range >= 2 * travel)) return []
  return [
    {
      code: 'finer-than-dial',
      say: 'The limits are finer than this dial reads surely. The compound swung to 5° 44′ from parallel (84° 16′ from square) makes a mark a tenth in depth: set it in the clear, then plunge.'.replaceAll(
        '′',
        "'",
      ),
    },
  ]
}

/** Common practice, no source. */
function pullsIn(one: Case): Said[] {
  if (one.draft.tool.rakeInUse <= 0 || !/brass|alumin|bronze|copper/i.test(one.bench.part.material.name)) return []
  return [
    {
      code: 'pulls-in',
      say: 'Positive rake in this material can pull the slide forward through its lost motion: snug the gibs, grind the rake to zero.',
    },
  ]
}

const unusedCusp = (one: Case): Said[] =>
  one.draft.feature.cutting.cusp === null || one.draft.cuts.style === 'steps'
    ? []
    : [{ code: 'cusp-unused', say: 'cusp: is given, but nothing in this plan steps along an arc; it has no effect.' }]

const toBeGround = (one: Case): Said[] =>
  one.draft.tool.measured
    ? []
    : [
        {
          code: 'tool-to-grind',
          say: 'The tool is still to be ground. Measure it and enter what it measures before this sheet is used.',
        },
      ]
