import type { WantedDimension } from '../moves/operation.ts'
import type { OperationTrace } from '../moves/trace.ts'
import { figure } from '../phrase/figure.ts'
import type { Figure, Prose } from '../phrase/phrase.ts'
import type { Part } from '../phrase/say.ts'
import { about, say } from '../phrase/say.ts'
import { labelOf } from '../plan/labels.ts'
import type { Code, FeaturePlan, Plan } from '../plan/plan.ts'
import { formatDigitsFor } from '../units/format.ts'
import type { Length, Units } from '../units/length.ts'
import type { Shop } from './measured.ts'
import { NEARBY } from './nearby.ts'
import { hangsOnOutside } from './outside.ts'
import type { Findings, Taken } from './remaining.ts'
import { comeBack } from './rough-first.ts'
import { bottomWanted, type Stop } from './stop.ts'
import type { Trouble } from './trouble.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** The sentences of a sheet of what remains: what the measuring showed, what is doubtful, and why nothing more can be done. */
export const notesOf = (
  plan: Plan,
  index: number,
  taken: Taken,
  findings: Findings,
  stop: Stop,
  added: number,
): Prose[] => {
  const show = (length: Length) => shown(length, plan.units)
  const earlier = plan.features.slice(0, index).flatMap((one) => (one.status === 'planned' ? one.operation.moves : []))
  const { off, expectedBottom, expectedWidth, wider } = findings
  const side = off > 0 ? 'further out' : 'further in'
  const feature = plan.features[index] as Planned
  const round = feature.edge.shape === 'round'
  const behind = earlier.length + stop.at + 1 + comeBack(feature.operation, stop)
  return [
    ...outsideNote(plan, feature, taken),
    say`Bottom diameter measured ${show(taken.bottom)}, ${show(expectedBottom)} expected${
      off === 0
        ? ': nothing is off'
        : say`: the zero of the cross-feed is ${show(Math.abs(off) / 2)} ${side} than it was set for. The steps below are corrected for it; do not reset the dials.`
    }`,
    ...(taken.width === null || expectedWidth === null
      ? []
      : [
          say`Width measured ${show(taken.width)}, ${show(expectedWidth)} expected${
            feature.operation.moves.some(({ place }) => place !== undefined)
              ? ': roughed to the lines by eye, it says nothing about the tool, and the finish is cut to the lines'
              : Math.abs(wider) < SHOWN
                ? ''
                : round
                  ? say`: the radius of the tool is ${show(Math.abs(wider))} ${wider > 0 ? 'larger' : 'smaller'} than it was measured`
                  : say`: the tool is ${show(Math.abs(wider))} ${wider > 0 ? 'wider' : 'narrower'} than it was measured`
          }.`,
        ]),
    say`Begin at step ${earlier.length + stop.at + 2}: the steps have the numbers of the whole sheet, and the tool is still backed out as step ${earlier.length + stop.at} left it.`,
    ...(added === 0
      ? []
      : [
          say`The roughing stopped short: too much is left for the finishing pass to take at once. Steps ${behind + 1} to ${behind + added} rough again down to what the finish was meant to take, and measure; each step after them has a number ${added} higher than on the whole sheet.`,
        ]),
  ]
}

/** The finish takes nothing off a bottom that is already deep enough: its steps say where the tool goes, not what is there. */
export const floorThere = (units: Units, bottom: Length, { sizes }: OperationTrace): Prose[] => {
  const left = sizes.find(({ id }) => id === 'bottomDiameter')?.surely ?? null
  if (left === null || Math.abs(left - bottom) >= SHOWN) return []
  return [
    say`The floor is there already at ${shown(bottom, units)}: the finish takes nothing more off it. The depth and the diameter beside a finishing step are where the tool goes.`,
  ]
}

/** Less than this is a rounding error, pm. */
const SHOWN = 1000

const outsideNote = (plan: Plan, { operation }: Planned, { outside }: Taken): Prose[] => {
  if (outside === null) return []
  const measured = say`Outside diameter measured ${shown(outside, plan.units)}, ${shown(operation.surface, plan.units)} in the job`
  if (!hangsOnOutside({ operation }))
    return [say`${measured}: the drawing gives this form by its bottom diameter, so that changes no step.`]
  return [
    outside === operation.surface
      ? say`${measured}.`
      : say`${measured}: the depth is counted from the outside as it measures, and so is the bottom diameter expected.`,
  ]
}

export const refusedBy = (
  units: Units,
  feature: Planned,
  taken: Taken,
  trouble: ({ readonly ok: false } & Trouble) | null,
  shop?: Shop,
): FeaturePlan => {
  const { name, kind, operation } = feature
  const refused = (code: Code, reason: Prose, remedy: Prose): FeaturePlan => ({
    status: 'refused',
    name,
    kind,
    code,
    reason,
    remedy,
    origin: operation.origin,
  })
  const show = (length: Length) => shown(length, units)
  const sized = ({ dimension }: { dimension: WantedDimension }, size: number): Part =>
    dimension.id === 'angle' ? say`${figure('expected', size, 'count', 2)}°` : show(size)
  const nameOf = ({ dimension }: { dimension: WantedDimension }): Prose => labelOf(dimension.id)
  if (trouble === null || shop === undefined)
    return refused(
      'no-stop',
      'the sheet of this feature has no stop to measure a bottom before a finishing pass',
      'follow its sheet to the end',
    )
  switch (trouble.why) {
    case 'no-width':
      return refused(
        'no-width',
        taken.width === null
          ? 'there is no width at the stop'
          : say`no such tool cuts a groove that measures ${show(taken.width)} wide with this bottom diameter`,
        'measure both again, or leave --width out: the bottom diameter alone corrects the depth',
      )
    case 'past':
      return refused(
        'past-limits',
        trouble.id === 'width'
          ? say`the groove measures ${show(taken.width!)} wide, ${show(trouble.by)} over the widest that is allowed, ${show(trouble.limit)}`
          : say`the bottom measures ${show(taken.bottom)}, ${show(trouble.by)} under the smallest that is allowed, ${show(trouble.limit)}`,
        say`it cannot be finished as drawn; measure again first; ${leftToSave(units, shop, taken, trouble.id)}`,
      )
    case 'outside':
      return refused(
        'cannot-save',
        say`no reading of these dials brings the ${nameOf(trouble)} inside its limits from here, nor any other up to ${NEARBY} marks on either side; the nearest gives ${sized(trouble, trouble.size)}, ${sized(trouble, trouble.by)} beyond a limit`,
        say`measure again first; ${leftToSave(units, shop, taken, null)}`,
      )
    case 'form':
      return refused(
        'not-proved',
        say`the ${nameOf(trouble)} would come out at ${sized(trouble, trouble.size)}, ${sized(trouble, trouble.by)} off what is drawn, and the drawing gives it no limits`,
        say`measure again first; ${leftToSave(units, shop, taken, null)}`,
      )
    default:
      return refused(
        'not-proved',
        say`the replay does not prove it: ${trouble.fault.say.replace(/\.$/, '')}`,
        leftToSave(units, shop, taken, null),
      )
  }
}

/** Which sizes of the drawing can still be reached. */
const leftToSave = (
  units: Units,
  { operation }: Shop,
  taken: Taken,
  lost: 'bottomDiameter' | 'width' | null,
): Prose => {
  const show = (length: Length) => shown(length, units)
  const { aim } = bottomWanted(operation)
  const width = operation.dimensions.find(({ id }) => id === 'width')
  const toGo = taken.bottom - aim
  const depth =
    toGo > 0 ? say`the bottom still has ${show(toGo)} of diameter to go` : 'nothing is left to take off the bottom'
  const wide =
    width === undefined || taken.width === null
      ? 'of the width it cannot be said, give --width as well'
      : taken.width < width.aim
        ? say`the width still has ${show(width.aim - taken.width)} to go`
        : 'nothing is left to take off the walls'
  if (lost === 'bottomDiameter') return say`what is left to save: ${wide}; ask whether the drawing allows this bottom`
  return say`what is left to save: ${depth}${lost === 'width' ? '; ask whether the drawing allows this width' : say`; ${wide}`}`
}

export const shown = (length: Length, units: Units): Figure => {
  const rounded = Math.round(length / 1000) * 1000
  const digits = formatDigitsFor([rounded], units)
  return about('expected', rounded, units, Math.min(digits, units === 'inch' ? 4 : 3))
}
