import type { Budgeted } from '../budget/budgeted.ts'
import type { Origin } from '../diagnostics/diagnostic.ts'
import { stepTravel } from '../dials/travel.ts'
import type { Feature, Job } from '../job/job.ts'
import type { Instrument } from '../moves/operation.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { about, degrees, exact, joinedBy, say } from '../phrase/say.ts'
import { causeWords, labelOf } from '../plan/labels.ts'
import type { FeaturePlan, Gain, Warning } from '../plan/plan.ts'
import { perUnit, type Units } from '../units/length.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** The sizes that may not hold, as a warning at their place in the job. What would help is given with it, as data. */
export const warningOf = (job: Job, feature: Planned, index: number): Warning => {
  const failed = feature.budget.filter(({ verdict, spare }) => verdict === 'may not hold' && spare !== null)
  const sizes = failed.map((one) => say`${labelOf(one.id)} ${range(one, job.units)}, drawn ${limits(one, job.units)}`)
  const fine = failed.some((one) => finerThanDial(job, one))
  const causes = [...new Set(failed.map(({ worstCause }) => causeWords(worstCause)))].join(', ')
  const asked = job.features.find((one) => one.index === feature.operation.feature)
  return {
    feature: index,
    code: fine ? 'finer-than-dial' : 'may-not-hold',
    say: say`May miss tolerance: ${joinedBy('; ', sizes)}. ${fine ? 'The limits are finer than this dial reads surely. ' : ''}Largest cause: ${causes}.`,
    ...(asked === undefined ? {} : { origin: originOf(asked, failed[0]!.id) }),
    remedy:
      (feature.gains ?? []).length === 0
        ? 'wider limits, finer dials, or a truer set-up: nothing tried on this lathe gains anything'
        : joinedBy(
            '; ',
            preferred(feature.gains!).map((gain) => say`${joinedBy(', ', gain.set)}: ${resultWords(gain, job.units)}`),
          ),
  }
}

/** Those that make all sizes hold, if there are any: the sheet has the others too. */
const preferred = (gains: readonly Gain[]): readonly Gain[] => {
  const holding = gains.filter(({ holds }) => holds)
  return holding.length > 0 ? holding : gains
}

/** "depth .0699 to .0741 holds" */
const resultWords = ({ sizes }: Gain, units: Units): Phrase =>
  joinedBy(
    ', ',
    sizes.map(
      (one) => say`${labelOf(one.id)} ${range(one, units)} ${one.verdict === 'holds' ? 'in tolerance' : 'not yet'}`,
    ),
  )

const range = (one: Budgeted, units: Units): Phrase =>
  say`${boundFigure(one, 0, units)} to ${boundFigure(one, 1, units)}`

const limits = (one: Budgeted, units: Units): Phrase =>
  joinedBy(
    ' to ',
    one.limits!.map((limit) => (one.id === 'angle' ? degrees('limit', limit) : exact('limit', limit, units))),
  )

/**
 * One more decimal than a dial shows, and rounded outward: a size beyond its limit never shows inside it, nor much
 * further beyond than it is.
 */
const boundFigure = ({ id, low, high, limits }: Budgeted, end: 0 | 1, units: Units): Figure => {
  const value = end === 0 ? low : high
  const outward = (part: number): number =>
    // Less than a millionth of the last decimal is rounding error.
    (end === 0 ? Math.floor(value / part + 1e-6) : Math.ceil(value / part - 1e-6)) * part
  if (id === 'angle') return degrees('angle', outward(1 / 60))
  const beyond = limits === null ? 0 : end === 0 ? limits[0] - value : value - limits[1]
  const least = units === 'inch' ? 4 : 3
  const part = (digits: number): number => perUnit(units) / 10 ** digits
  const truly = (digits: number): boolean => Math.abs(outward(part(digits)) - value) <= beyond / 2
  const digits = beyond > 1000 ? ([least, least + 1, least + 2].find(truly) ?? least + 2) : least
  return about(end === 0 ? 'low' : 'high', outward(part(digits)), units, digits)
}

/** Less than two marks between the limits, in depth. */
const finerThanDial = ({ lathe: { crossFeed } }: Job, { id, limits }: Budgeted): boolean => {
  if (limits === null || (id !== 'depth' && id !== 'bottomDiameter')) return false
  const travel = stepTravel(crossFeed)
  return (limits[1] - limits[0]) / (id === 'depth' ? 1 : 2) < 2 * travel
}

/** The key of the job with the limits in question, or the feature if they follow from other keys. */
const originOf = (feature: Feature, id: Instrument): Origin => {
  const key = id === 'bottomDiameter' ? 'bottom-diameter' : id
  const given =
    (id in feature && feature[id as keyof Feature] !== null) || ('place' in feature && feature.place.by === id)
  return given ? { ...feature.origin, path: [...feature.origin.path, key] } : feature.origin
}
