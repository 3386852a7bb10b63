import type { Code } from '../../diagnostics/codes.ts'
import type { Origin } from '../../diagnostics/diagnostic.ts'
import { defaultClear } from '../../features/shop.ts'
import { rakeFor } from '../../handbook/grinding.ts'
import type { Spindle } from '../../moves/stated.ts'
import { figure } from '../../phrase/figure.ts'
import type { Prose } from '../../phrase/phrase.ts'
import { about, degrees, exact, say } from '../../phrase/say.ts'
import { INCH, type Length, MM } from '../../units/length.ts'
import { edgeInWork, mostEdge, takesBothFlanks } from './contact.ts'
import { bindingSlot, type Case, deepestBelowSurface, narrower } from './refusals.ts'

/**
 * `say` is the whole warning with its remedy; `wrong` is the warning without it; `origin` is where the user can change
 * it.
 */
export type JobWarning = {
  readonly code: Code
  readonly say: Prose
  readonly wrong: Prose
  readonly origin: Origin
  readonly remedy: Prose
}

export const warning = (code: Code, wrong: Prose, remedy: Prose, origin: Origin): JobWarning => ({
  code,
  say: say`${wrong}: ${remedy}.`,
  wrong,
  origin,
  remedy,
})

const within = (origin: Origin, key: string): Origin => ({ ...origin, path: [...origin.path, key] })

/** Common practice, no source. */
const AGAINST_CHATTER = 'less speed, then more feed, less overhang, an edge honed afresh, snug gibs'

/** What does not forbid a feature but the machinist must know. */
export function warningsOf(one: Case, spindle: Spindle): JobWarning[] {
  return [
    ...tooFast(one, spindle),
    ...unseenDog(one),
    ...smallCore(one),
    ...binding(one),
    ...wideContact(one),
    ...longBit(one),
    ...pullsIn(one),
    ...muchRake(one),
    ...unusedCusp(one),
    ...toBeGround(one),
  ]
}

/** Overhang over three diameters without a center. */
export function slender(bench: Case['bench']): JobWarning[] {
  const { held } = bench.part
  if (held === 'between centers' || held === 'chuck and center' || held === 'mandrel') return []
  const out = bench.part.overhang
  const thinnest = Math.min(...bench.steps.filter((step) => step.start < out).map((step) => step.measured))
  const times = out / thinnest
  if (times <= 3) return []
  return [
    warning(
      'slender',
      say`The work sticks out ${figure('planned', times, 'count', 1)} diameters without a center`,
      say`expect spring and chatter, use a center or less overhang; against chatter in this order: ${AGAINST_CHATTER}`,
      within(bench.part.origin, 'overhang'),
    ),
  ]
}

/** Without it the jaws are taken to be at the very end, and nothing holds the part. */
export function unsaidOverhang({ part }: Case['bench']): JobWarning[] {
  const { held, overhangGiven } = part
  if (overhangGiven || (held !== 'chuck' && held !== 'collet')) return []
  return [
    warning(
      'no-overhang',
      say`The job does not give how far the work sticks out of the ${held === 'collet' ? held : 'chuck'}: planned as if all of it did`,
      'give overhang, or grip: how much of it is held',
      part.origin,
    ),
  ]
}

/** A lathe dog and its screw take about an inch. Common practice, no source. */
function unseenDog({ bench, draft, edge }: Case): JobWarning[] {
  const { part, steps, units } = bench
  if (part.held !== 'between centers' || part.dog !== null) return []
  const end = steps.at(-1)?.end ?? 0
  const last = draft.cuts.style === 'corner' ? 0 : draft.cuts.last
  const reaches = draft.zero.fromEnd + last + Math.max(edge.shank.to, ...edge.pieces.map(({ to }) => to))
  if (end - reaches >= (units === 'inch' ? INCH : 25 * MM)) return []
  return [
    warning(
      'near-dog',
      say`The tool comes to ${exact('drawing', Math.max(0, end - reaches), units)} from the headstock end, where a dog sits`,
      'say how much of that end the dog takes (dog: in part), or turn the work end for end',
      within(part.origin, 'held'),
    ),
  ]
}

const tooFast = ({ draft }: Case, spindle: Spindle): JobWarning[] => {
  if (!spindle.tooFast) return []
  const wrong = 'LOWEST AVAILABLE, TOO FAST: do not form at this speed'
  const remedy = say`${figure('speed', Math.round(spindle.wanted), 'rpm')} rpm is wanted; engage the back gear, and list its speeds in spindle-speeds`
  return [warning('too-fast', wrong, remedy, draft.feature.origin)]
}

function smallCore(one: Case): JobWarning[] {
  const bottom = one.draft.dimensions.find((dimension) => dimension.id === 'bottomDiameter')
  if (bottom === undefined || bottom.aim >= one.draft.surface / 3) return []
  return [
    warning(
      'small-core',
      say`Only ${about('planned', bottom.aim, one.bench.units)} of the diameter is left at the bottom`,
      'the work is weak there, take light cuts and hold its end in a center',
      one.draft.feature.origin,
    ),
  ]
}

/** A long edge in the work at once tends to chatter. */
function wideContact({ draft, edge, bench, lathe }: Case): JobWarning[] {
  const length = edgeInWork(draft, edge)
  const most = mostEdge(draft.surface, lathe.widestEdge, bench.part.material.name, bench.units)
  if (length <= most) return []
  const show = (of: Length) => about('planned', of, bench.units)
  const why = most === draft.surface / 4 ? 'a quarter of the diameter' : 'what this lathe forms in this metal'
  return [
    warning(
      'wide-contact',
      say`At full depth ${show(length)} of the edge is in the work at once; ${show(most)} is ${why}`,
      say`${takesBothFlanks(draft) ? 'cut one flank at a time (method: flank-feed), or ' : ''}${mayBeOpened(draft) ? 'open it up in steps with a square tool (rough-tool:) and ' : ''}take the last of it in light cuts; if it chatters, in this order: ${AGAINST_CHATTER}`,
      draft.tool.origin,
    ),
  ]
}

/** Not brought to the lines by eye at every place, which steps are not. */
const mayBeOpened = ({ feature, cuts }: Case['draft']): boolean =>
  'roughTool' in feature &&
  feature.roughTool === null &&
  cuts.style === 'plunge' &&
  feature.cutting.sideFeed !== 'lines'

/** Four widths deep in a slot of its own width: see the layers of the plan. */
function binding({ draft, bench }: Case): JobWarning[] {
  const slot = bindingSlot(draft)
  if (slot === null) return []
  const show = (length: Length) => exact('drawing', length, bench.units)
  return [
    warning(
      'binding',
      say`The slot is ${show(slot.depth)} deep, and the tool fills its width, ${show(slot.width)}: it binds`,
      say`take a tool ${show(narrower({ bench }, slot))} wide or less, and the slot is widened on the way; else relieve its sides well, brush and oil each peck`,
      draft.tool.origin,
    ),
  ]
}

/** A bit that sticks out more than about its own height springs. Bits are square stock. Common practice, no source. */
function longBit({ draft, bench }: Case): JobWarning[] {
  const { tool, cuts } = draft
  const clear = draft.feature.cutting.clear ?? defaultClear(bench.units)
  const out = deepestBelowSurface(draft) + clear
  if (cuts.style === 'corner' || tool.blank === null || out <= tool.blank) return []
  const show = (length: Length) => exact('drawing', length, bench.units)
  return [
    warning(
      'long-bit',
      say`The bit sticks out ${about('planned', out, bench.units)} at the least, more than its own ${show(tool.blank)}: it springs`,
      'take a thicker bit and narrow it only as far as it enters, or cut lightly',
      within(tool.origin, 'blank'),
    ),
  ]
}

const PULLING = /brass|alumin|bronze|copper/i

/** Common practice, no source. */
function pullsIn(one: Case): JobWarning[] {
  if (one.draft.tool.rakeInUse <= 0 || !PULLING.test(one.bench.part.material.name)) return []
  return [
    warning(
      'pulls-in',
      'Positive rake in this material can pull the slide forward through its lost motion',
      'snug the gibs, grind the top so that the rake in use is 0',
      one.draft.tool.origin,
    ),
  ]
}

/**
 * More rake than is usual for the metal, as the grinding sheet says too. Soft metals that pull the tool in have their
 * own warning.
 */
function muchRake({ draft: { tool }, bench }: Case): JobWarning[] {
  const { name } = bench.part.material
  const most = rakeFor(name).forming?.[1]
  if (most === undefined || tool.rakeInUse <= most + 1 / 120 || PULLING.test(name)) return []
  return [
    warning(
      'much-rake',
      say`${degrees('angle', tool.rakeInUse)} of rake in use, where this metal is formed with ${degrees('angle', most)}${most > 0 ? ' at most' : ''}`,
      'it digs in and chatters, level the top of the tool',
      tool.origin,
    ),
  ]
}

const unusedCusp = ({ draft: { feature, cuts } }: Case): JobWarning[] =>
  feature.cutting.cusp === null || cuts.style === 'steps'
    ? []
    : [
        warning(
          'cusp-unused',
          'cusp: is given, but nothing in this plan steps along an arc',
          'it has no effect, leave it out',
          within(feature.origin, 'cusp'),
        ),
      ]

const toBeGround = ({ draft: { tool, feature } }: Case): JobWarning[] =>
  tool.measured
    ? []
    : [
        warning(
          'tool-to-grind',
          'The tool is still to be ground',
          'measure it and enter what it measures before this sheet is used',
          feature.origin,
        ),
      ]
