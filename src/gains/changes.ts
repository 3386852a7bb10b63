import type { CauseName } from '../budget/budgeted.ts'
import type { Job } from '../job/job.ts'
import type { Accuracy, Lathe, Scale } from '../lathe/lathe.ts'
import type { Figure, Phrase, Prose } from '../phrase/phrase.ts'
import { called, degrees, exact, say } from '../phrase/say.ts'
import type { FeaturePlan } from '../plan/plan.ts'
import { formatExact } from '../units/format.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

/** One change: in words for the bench, as the keys of the job or the lathe file, and as the changed job. */
export type Change = {
  readonly id: string
  readonly say: Prose
  readonly set: Prose
  make(job: Job, features: ReadonlySet<number>): Job
}

/** Changes that may help the sizes that may not hold. The replay finds whether they do. */
export const changesFor = (job: Job, failing: readonly Planned[]): Change[] => {
  const sizes = failing.flatMap((feature) => feature.budget.filter(({ verdict }) => verdict === 'may not hold'))
  const causes = new Set<CauseName>(['touch-off', ...sizes.map(({ worstCause }) => worstCause)])
  return [
    ...(job.features.some(({ cutting }) => (cutting.compoundAngle ?? job.lathe.compound.angle) === 0)
      ? [swung(job.lathe)]
      : []),
    ...halfMarks(job.lathe),
    ...CARE.filter((care) => care.causes.some((cause) => causes.has(cause)) && job.lathe.accuracy[care.key] > 0).map(
      (care) => withCare(job, care),
    ),
  ]
}

/**
 * The angle whose sine is a tenth, to the minute a swivel scale is set to: a mark of the compound is a tenth in depth.
 */
const TENTH = 5 + 44 / 60

const swung = ({ compound }: Lathe): Change => {
  const shown = degrees('angle', compound.scaleZero === 'square' ? 90 - TENTH : TENTH)
  const from = compound.scaleZero === 'square' ? say`, ${degrees('angle', TENTH)} from parallel` : ''
  return {
    id: 'compound-angle',
    say: say`the compound is set to ${shown} on its scale${from}`,
    set: say`compound: { angle: ${degrees('angle', TENTH)} } in the feature`,
    make: (job, indexes) => ({
      ...job,
      features: job.features.map((feature) =>
        indexes.has(feature.index) && (feature.cutting.compoundAngle ?? job.lathe.compound.angle) === 0
          ? { ...feature, cutting: { ...feature.cutting, compoundAngle: TENTH } }
          : feature,
      ),
    }),
  }
}

const halfMarks = ({ crossFeed, compound }: Lathe): Change[] => [
  ...(whole(crossFeed)
    ? [
        half('cross-feed', (job) => ({
          ...job,
          lathe: { ...job.lathe, crossFeed: halved(job.lathe.crossFeed) },
        })),
      ]
    : []),
  ...(whole(compound.scale)
    ? [
        half('compound', (job) => ({
          ...job,
          lathe: { ...job.lathe, compound: { ...job.lathe.compound, scale: halved(job.lathe.compound.scale) } },
        })),
      ]
    : []),
]

const half = (slide: string, make: Change['make']): Change => ({
  id: `read-to ${slide}`,
  say: say`half marks are judged on the ${slide}`,
  set: `read-to: 1/2 in ${slide}`,
  make,
})

const whole = (scale: Scale): boolean => scale.kind === 'dial' && scale.readTo === 1
const halved = (scale: Scale): Scale => (scale.kind === 'dial' ? { ...scale, readTo: 1 / 2 } : scale)

type Care = {
  readonly causes: readonly CauseName[]
  readonly key: Exclude<keyof Accuracy, 'reading'>
  readonly name: string
  readonly say: (to: Figure) => Phrase
}

/** The budget's names for a line that the tool is brought to by eye, in whatever way. */
const PLACES_BY_EYE: readonly CauseName[] = ['tailstock-line', 'headstock-line', 'place-by-eye']

/** Each done twice as well as the lathe file states, and how to do that. Common practice, no source. */
const CARE: readonly Care[] = [
  {
    causes: ['touch-off'],
    key: 'touchOff',
    name: 'touch-off',
    say: (to) => say`the surface is touched to ${to} by a feeler`,
  },
  {
    causes: ['layout', ...PLACES_BY_EYE],
    key: 'layout',
    name: 'layout',
    say: (to) => say`the tool is set to the line within ${to} under a glass`,
  },
  { causes: ['tool'], key: 'tool', name: 'tool', say: (to) => say`the tool is measured to ${to}` },
  { causes: ['stock'], key: 'stock', name: 'stock', say: (to) => say`the stock is measured to ${to}` },
  {
    causes: ['runout'],
    key: 'runout',
    name: 'runout',
    say: (to) => say`the work is trued to ${to} by an indicator`,
  },
]

const withCare = (job: Job, { key, name, say: how }: Care): Change => {
  const better = job.lathe.accuracy[key] / 2
  return {
    id: name,
    say: how(exact('drawing', better, job.units)),
    set: say`${name}: ${called('planned', formatExact(better, job.lathe.units).replace(/^\./, '0.'), better, job.lathe.units)} in accuracy`,
    make: (before) => ({
      ...before,
      lathe: { ...before.lathe, accuracy: { ...before.lathe.accuracy, [key]: better } },
    }),
  }
}
