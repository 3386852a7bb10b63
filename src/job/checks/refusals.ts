import type { Bench, Draft, PlacedStep, Refusal } from '../../features/draft.ts'
import type { Lathe } from '../../lathe/lathe.ts'
import type { Edge } from '../../moves/form.ts'
import type { Offer, Remedy } from '../../moves/offer.ts'
import type { Setup } from '../../moves/operation.ts'
import { isOnLine } from '../../moves/placing.ts'
import { about, difference, exact, say } from '../../phrase/say.ts'
import { formatDigitsFor } from '../../units/format.ts'
import { INCH, type Length, MM } from '../../units/length.ts'

/** What a check may use: a drafted feature, its edge, the part in the machine, and the features already planned. */
export type Case = {
  readonly bench: Bench
  readonly lathe: Lathe
  readonly setup: Setup
  readonly draft: Draft
  readonly edge: Edge
  readonly before: readonly Draft[]
}

/** The first reason why a feature cannot be cut on this machine, or null. */
export function refusalOf(one: Case): Refusal | null {
  for (const check of [
    overlap,
    core,
    slenderCore,
    deepSlot,
    beyondOverhang,
    reach,
    jaws,
    center,
    carriageFeed,
    roughTooNear,
  ]) {
    const refusal = check(one)
    if (refusal !== null) return refusal
  }
  return null
}

/** Up to what a rule or a caliper sets: what is asked for must do as it is printed. */
const toBeSet = ({ bench: { units } }: Pick<Case, 'bench'>, length: Length): Length => {
  const step = units === 'inch' ? INCH / 1000 : MM / 100
  return Math.ceil(length / step - 1e-9) * step
}

const shown = (one: Pick<Case, 'bench'>) => (length: Length) => exact('drawing', length, one.bench.units)

/** Forms that overlap: the earlier one is kept, the later one is refused. */
function overlap(one: Case): Refusal | null {
  const show = shown(one)
  const mine = one.draft.region
  const own = (before: Draft): boolean =>
    before.roughs !== undefined && before.feature.index === one.draft.feature.index
  const other = one.before.find(
    (before) => mine.from < before.region.to && mine.to > before.region.from && !own(before),
  )
  if (other === undefined) return null
  return {
    code: 'forms-overlap',
    reason: say`it lies from ${show(mine.from)} to ${show(mine.to)} from the free end and overlaps "${other.feature.name}", from ${show(other.region.from)} to ${show(other.region.to)}`,
    remedy: 'move one of the two, or make it narrower',
  }
}

/**
 * Also checked before the edge is worked out: on a sloping face there is no edge for a form that reaches past the axis.
 */
export function core(one: Pick<Case, 'bench' | 'draft'>): Refusal | null {
  const bottom = one.draft.dimensions.find((dimension) => dimension.id === 'bottomDiameter')
  if (bottom === undefined || bottom.aim > 0) return null
  const show = shown(one)
  return {
    code: 'core-cut-through',
    reason: say`it is ${show(one.draft.surface / 2 - bottom.aim / 2)} deep and the work is ${show(one.draft.surface)} in diameter: nothing would be left`,
    remedy: 'correct the depth; a depth is radial, half of what the diameter loses',
  }
}

/**
 * What hangs on a core is held by it alone, as work is that stands out of its chuck: beyond two and a half diameters it
 * wants a center (manuals of two bench-lathe makers; a third has three).
 */
const UNHELD = 2.5

function slenderCore(one: Case): Refusal | null {
  const { draft, bench } = one
  const { held } = bench.part
  const bottom = draft.dimensions.find((dimension) => dimension.id === 'bottomDiameter')
  if (bottom === undefined || held === 'chuck and center' || held === 'between centers' || held === 'mandrel')
    return null
  const width = draft.region.to - draft.region.from
  if (width <= UNHELD * bottom.aim) return null
  const show = shown(one)
  return {
    code: 'slender-core',
    reason: say`it leaves a core ${show(bottom.aim)} thick and ${show(width)} long, and nothing holds the end of the work`,
    remedy: 'hold the free end in a center (held: chuck and center)',
  }
}

/** A blade goes eight of its widths deep at most (a tool maker's parting catalogue); a slot that is widened is no slot. */
const DEEPEST = 8

function deepSlot(one: Case): Refusal | null {
  const { draft } = one
  const slot = bindingSlot(draft)
  if (slot === null || slot.depth <= DEEPEST * slot.width) return null
  const show = shown(one)
  return {
    code: 'slot-too-deep',
    reason: say`it is ${show(slot.depth)} deep and tool "${draft.tool.name}" is ${show(slot.width)} wide, as wide as the groove: it binds and breaks`,
    remedy: say`take a tool ${show(narrower(one, slot))} wide or less, so that the slot is widened on the way`,
  }
}

/** Narrow enough to widen the slot, down to what can be measured on a tool. */
export const narrower = (
  { bench: { units } }: Pick<Case, 'bench'>,
  { width, free }: { readonly width: Length; readonly free: Length },
): Length => {
  const step = units === 'inch' ? INCH / 1000 : MM / 100
  return Math.floor(((width + free) * 0.8) / step) * step
}

/** A slot more than four widths deep that its tool cannot widen by a tenth of its own width; null: it can, or need not. */
export function bindingSlot({ cuts, undersize }: Draft): { depth: Length; width: Length; free: Length } | null {
  if (cuts.style !== 'plunge' || cuts.layer === null || undersize === null) return null
  const width = cuts.layer / 4
  return undersize >= width / 10 ? null : { depth: cuts.depth, width, free: undersize }
}

function beyondOverhang(one: Case): Refusal | null {
  if (one.setup.jaws === null || one.draft.region.to <= one.setup.jaws) return null
  if (one.bench.part.dog !== null)
    return {
      code: 'beyond-overhang',
      reason: say`it reaches to ${shown(one)(one.draft.region.to)} from the free end, the dog is at ${shown(one)(one.setup.jaws)}`,
      remedy: 'turn the work end for end, and put the dog on the other end',
    }
  return {
    code: 'beyond-overhang',
    reason: say`it reaches to ${shown(one)(one.draft.region.to)} from the free end, the work sticks ${shown(one)(one.setup.jaws)} out of the chuck`,
    remedy: 'let the work stick out further, or turn it around',
  }
}

/** The ground edge must reach past the depth and past any shoulder under the shank. */
function reach(one: Case): Refusal | null {
  const { draft, edge, bench } = one
  const depth = deepestBelowSurface(draft)
  const ends = edgeEnds(draft)
  const under = bench.steps.filter(
    (step) =>
      step.end > ends.first + edge.shank.from + draft.zero.fromEnd &&
      step.start < ends.last + edge.shank.to + draft.zero.fromEnd,
  )
  const shoulder = under.reduce<{ height: number; name: string; step: PlacedStep } | null>((found, step) => {
    const height = (step.measured - draft.surface) / 2
    return height > (found?.height ?? 0) ? { height, name: step.name, step } : found
  }, null)
  const needed = depth + (shoulder?.height ?? 0)
  if (edge.reach >= needed) return null
  const show = shown(one)
  const why =
    shoulder === null
      ? say`the form is ${show(depth)} deep`
      : say`the form is ${show(depth)} deep and its shank passes over "${shoulder.name}", ${show(shoulder.height)} higher`
  const { feature } = draft
  const bottom = 'bottomDiameter' in feature ? feature.bottomDiameter : null
  if (bottom !== null && bottom.aim < draft.surface / 6)
    return {
      code: 'reach-too-short',
      reason: say`a bottom diameter of ${show(bottom.aim)} on ${show(draft.surface)} is ${show(depth)} deep, and tool "${draft.tool.name}" is ground back ${show(edge.reach)}`,
      remedy: say`if ${bottom.text} was meant as a depth, write depth: ${bottom.text}`,
    }
  return {
    code: 'reach-too-short',
    reason: say`tool "${draft.tool.name}" is ground back ${show(edge.reach)}; ${why}, so ${show(needed)} is needed`,
    ...(shoulder === null
      ? { remedy: say`grind the sides back ${show(toBeSet(one, needed))} or a little more` }
      : (besideShoulder(one, shoulder.step, needed) ?? {
          remedy: say`grind the sides back ${show(toBeSet(one, needed))} or more, or take a narrower blank (blank:)`,
        })),
  }
}

/**
 * Only the blank is over the shoulder, beside the edge: by how much, and what moves it off. Null if the edge itself is
 * in the way.
 */
function besideShoulder(one: Case, step: PlacedStep, needed: Length): Remedy | null {
  const { draft, edge, bench } = one
  const show = shown(one)
  const { first, last } = edgeEnds(draft)
  const [from, to] = [edge.pieces[0]!.from, edge.pieces.at(-1)!.to]
  const zero = draft.zero.fromEnd
  const headstock = step.start >= zero + last + to - 1
  if (!headstock && step.end > zero + first + from + 1) return null
  const over = headstock ? zero + last + edge.shank.to - step.start : step.end - (zero + first + edge.shank.from)
  const side = headstock ? 'headstock' : 'tailstock'
  const much = difference('expected', over, bench.units, formatDigitsFor([over], bench.units))
  const edgeOffset = from - edge.shank.from + (headstock ? over : -over)
  return {
    lead: say`the ${side} side of the blank is ${much} over "${step.name}": `,
    offers: [
      {
        say: say`set the edge ${show(edgeOffset)} from the tailstock side of the blank (edge-offset: ${show(edgeOffset)})`,
        change: { edgeOffset },
      },
    ],
    remedy: say`take ${much} off that side; else grind the sides back ${show(toBeSet(one, needed))} or more`,
  }
}

/**
 * The offer to set the edge at one side of its blank; empty without a blank, or if the blank is no wider than the edge.
 */
function atSide({ draft: { tool }, edge, bench }: Case, side: 'headstock' | 'tailstock'): readonly Offer[] {
  const width = edge.pieces.at(-1)!.to - edge.pieces[0]!.from
  if (tool.blank === null || tool.blank <= width) return []
  const edgeOffset = side === 'headstock' ? tool.blank - width : 0
  const words = say`set the edge at the ${side} side of its blank (edge-offset: ${exact('drawing', edgeOffset, bench.units)})`
  return [{ say: words, change: { edgeOffset } }]
}

/** Depth of the wanted form below its surface. */
export const deepestBelowSurface = (draft: Draft): Length =>
  draft.cuts.style === 'corner' ? draft.cuts.radius : draft.cuts.depth

const edgeEnds = (draft: Draft): { first: Length; last: Length } =>
  draft.cuts.style === 'corner'
    ? { first: 0, last: 0 }
    : { first: Math.min(0, draft.cuts.first), last: draft.cuts.last }

function jaws(one: Case): Refusal | null {
  if (one.setup.jaws === null) return null
  const show = shown(one)
  const edgeTo = Math.max(one.edge.shank.to, ...one.edge.pieces.map((piece) => piece.to))
  const furthest = one.draft.zero.fromEnd + edgeEnds(one.draft).last + edgeTo
  const limit = one.setup.jaws - one.lathe.jawClearance
  if (furthest <= limit) return null
  if (one.bench.part.dog !== null)
    return {
      code: 'near-dog',
      reason: say`the tool reaches to ${show(furthest)} from the free end; the dog is at ${show(one.setup.jaws)} and ${show(one.lathe.jawClearance)} is kept clear`,
      offers: atSide(one, 'headstock'),
      remedy: 'turn the work end for end, so that the dog is at its other end',
    }
  return {
    code: 'near-jaws',
    reason: say`the tool reaches to ${show(furthest)} from the free end; the jaws are at ${show(one.setup.jaws)} and ${show(one.lathe.jawClearance)} is kept clear`,
    offers: atSide(one, 'headstock'),
    remedy: say`let the work stick out at least ${show(toBeSet(one, furthest + one.lathe.jawClearance))}`,
  }
}

/** No part of the tool may be where a center is. */
function center(one: Case): Refusal | null {
  if (!one.setup.tailstockCenter) return null
  const edgeFrom = Math.min(one.edge.shank.from, ...one.edge.pieces.map((piece) => piece.from))
  const furthest = one.draft.zero.fromEnd + edgeEnds(one.draft).first + edgeFrom
  if (furthest >= 0) return null
  return {
    code: 'near-center',
    reason: say`the tool reaches ${shown(one)(-furthest)} beyond the free end, where the center is`,
    offers: atSide(one, 'tailstock'),
    remedy: 'take a narrower tool, or hold the work without the center',
  }
}

function carriageFeed(one: Case): Refusal | null {
  const { draft, lathe } = one
  const { sideFeed } = draft.feature.cutting
  if (sideFeed === 'compound' || (sideFeed === 'carriage' && draft.cuts.style === 'stairs' && lathe.carriage !== null))
    return null
  if (draft.cuts.style !== 'plunge')
    return {
      code: 'side-feed',
      reason: say`side-feed: ${sideFeed} is asked for, and this form is cut by the cross-feed and the compound together: the carriage is held`,
      offers: [
        { say: 'write side-feed: compound for this feature', change: { sideFeed: 'compound' } },
        {
          say: 'write side-feed: compound and compound: { angle: 0 } for this feature',
          change: { sideFeed: 'compound', compoundAngle: 0 },
        },
      ],
      remedy: 'cut it by the cross-feed and the compound, with the compound parallel',
    }
  if (isOnLine(draft.placing) || draft.cuts.first === draft.cuts.last) return null
  if (sideFeed === 'lines' || lathe.carriage === null)
    return {
      code: 'side-feed',
      reason: 'it is against a shoulder, where there is no line to bring the tool to',
      offers: [
        { say: 'move along by the compound (side-feed: compound)', change: { sideFeed: 'compound' } },
        ...(lathe.carriage === null
          ? []
          : [{ say: 'by the carriage (side-feed: carriage)', change: { sideFeed: 'carriage' } } as const]),
      ],
      remedy: 'put a dial or an indicator on the carriage (carriage: in the lathe file)',
    }
  if (lathe.carriage.kind !== 'dial' || draft.cuts.first < 0) return null
  return {
    code: 'side-feed',
    reason: 'the shoulder on the tailstock side is touched with the carriage going back, so its backlash stays open',
    offers: [{ say: 'move along by the compound (side-feed: compound)', change: { sideFeed: 'compound' } }],
    remedy: 'put an indicator on the carriage (indicator: and range: in the lathe file)',
  }
}

/** Both tools are brought to the lines by eye: what one may be off, the other may be off the other way. */
function roughTooNear({ draft, lathe, bench }: Case): Refusal | null {
  if (draft.roughs === undefined || draft.roughs.sides >= 2 * lathe.accuracy.layout) return null
  const show = (length: Length) => about('planned', length, bench.units)
  return {
    code: 'rough-tool',
    reason: say`the steps leave ${show(draft.roughs.sides)} on each flank, and two tools brought to the lines by eye may be ${show(2 * lathe.accuracy.layout)} apart: they might cut into the flank`,
    remedy: say`leave more for the tool that finishes it (leave-sides: ${show(2 * lathe.accuracy.layout)})`,
  }
}
