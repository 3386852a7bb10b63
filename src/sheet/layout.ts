import { figure, length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { joinedBy, say } from '../phrase/say.ts'
import type { LayoutLine } from '../plan/plan.ts'
import { INCH, MM } from '../units/length.ts'
import type { Planned, Scene, StepWords } from './scene.ts'

/**
 * Which lines to scribe, from which datum, and what each is set by: for every feature at the first, while the dye is
 * fresh; the others only name theirs.
 */
export const layout = (scene: Scene): StepWords => {
  const { feature, plan } = scene
  const planned = plan.features.flatMap((one) => (one.status === 'planned' ? [one] : []))
  const thing = 'LAYOUT'
  if (planned[0] !== feature) return { thing, does: scribed(scene, planned), effect: [], more: [] }
  const scribing = planned.filter(
    (one, i) => one.layout.length > 0 && !planned.slice(i + 1).some((later) => sameLines(one, later)),
  )
  if (scribing.length === 0) return { thing, does: NONE, effect: [], more: [] }
  return {
    thing,
    does: ['dye the work, scribe with the spindle stopped:'],
    effect: [],
    more: [
      ...scribing.flatMap((one) => linesOf(scene, one, scribing.length > 1 || one !== feature)),
      ...bentLegs(
        scene,
        scribing.flatMap(({ layout }) => layout),
      ),
      ...offTheLathe(scene),
    ],
  }
}

/** What one tool roughs and another finishes is cut between the same lines: they are scribed once. */
const sameLines = (one: Planned, other: Planned): boolean =>
  one.layout.length === other.layout.length &&
  one.layout.every(({ fromEnd }, i) => fromEnd === other.layout[i]!.fromEnd)

const NONE: Phrase = ['none: the place is found by touching']

/** The lines of one feature; by its name where there are several. */
const linesOf = (scene: Scene, { name, layout }: Planned, named: boolean): Phrase[] => {
  const lines = layout.map((line) => scribe(scene, line))
  return named ? [[`${name}: `, ...joinedBy('; ', lines)]] : lines
}

/** Where the lines of a later feature are; they were scribed at its first step by the first of them. */
const scribed = ({ feature, units }: Scene, planned: readonly Planned[]): Phrase => {
  if (feature.layout.length === 0) return NONE
  const step = 1 + (planned[0]?.operation.moves.findIndex(({ action }) => action === 'layout') ?? 0)
  const places = feature.layout.map(({ fromEnd }) => length('place', fromEnd, units))
  return say`scribed at step ${step}: ${joinedBy(' and ', places)} from the free end`
}

/** On the face from which the distances are measured, by its name: a shoulder is easily mistaken for the end. */
const bentLegs = (scene: Scene, lines: readonly LayoutLine[]): Phrase[] => {
  if (lines.length === 0) return []
  const faces = [...new Set(lines.map((line) => legOn(scene, line)))]
  const legs = faces.map((face) => `the bent leg on ${face}`)
  const on = `${legs.length > 1 ? 'as each distance is given: ' : ''}${legs.join(', or ')}`
  const down = lines.some(({ downTheFace }) => downTheFace === true)
  return [[`scribe with hermaphrodite calipers, ${on}${down ? '; for the line down the face, on the cylinder' : ''}`]]
}

/** If the step before is larger, the face belongs to it: the smaller step has none there. */
const legOn = ({ plan: { part } }: Scene, { from, step: of, fromEnd, distance }: LayoutLine): string => {
  const { steps } = part
  const next = steps.findIndex((step) => step.name === of && Math.abs(Math.abs(fromEnd - step.from) - distance) < 1)
  const [before, step] = [steps[next - 1], steps[next]]
  return before !== undefined && step !== undefined && before.measured > step.measured
    ? `the headstock-side face of "${before.name}"`
    : from
}

/**
 * Work that is taken off its centers and goes back true may be scribed on a plate instead; work from a chuck would not
 * go back true. Common practice, no source.
 */
const offTheLathe = ({ plan }: Scene): Phrase[] =>
  plan.part.held === 'between centers'
    ? [['or off the lathe, stood on its free end on a surface plate: height gauge']]
    : []

/**
 * From the datum that the drawing uses; if that is not the free end, also from the free end, for a rule that only
 * reaches from there.
 */
const scribe = (scene: Scene, line: LayoutLine): Phrase => {
  const fromEnd: Phrase =
    line.fromEnd === line.distance ? [] : [' (', length('place', line.fromEnd, scene.units), ' from the free end)']
  return say`${length('place', line.distance, scene.units)} from ${line.from}${fromEnd}: ${line.say}${setBy(scene, line)}`
}

/**
 * A rule has every 64th of an inch, or every half millimeter; other distances are set with calipers, which read finer.
 */
const setBy = ({ units }: Scene, { distance }: LayoutLine): Phrase => {
  if (units === 'mm') return [distance % (MM / 2) === 0 ? '; on a rule' : '; calipers']
  return distance % (INCH / 64) === 0 ? ['; ', figure('place', distance / INCH, 'rule'), ' on a rule'] : ['; calipers']
}
