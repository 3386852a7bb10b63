import type { Tables } from '../finish/tables.ts'
import { identify } from '../phrase/figure.ts'
import type { Phrase, Prose } from '../phrase/phrase.ts'
import { together } from '../phrase/say.ts'
import { identityOf } from '../plan/identity.ts'
import type { FeaturePlan, Plan } from '../plan/plan.ts'
import { cautionsFor, PULLS_IN } from './cautions.ts'
import { gainsOf } from './gains.ts'
import { headingOf, partHeading } from './heading.ts'
import { inspectionOf } from './inspection.ts'
import { withCorrections } from './measured/corrections.ts'
import { placesOf } from './places.ts'
import { proofOf } from './proof.ts'
import type { Sheet, SheetFeature, SheetStep } from './sheet.ts'
import { stepsOf } from './steps.ts'

/**
 * The neutral, numbered sheet of a plan: every move is one step, every number stays a number. `tables`: the tables
 * under the stops of each feature.
 */
export const buildSheet = (plan: Plan, tables: readonly Tables[]): Sheet => ({
  title: plan.title,
  drawingNumber: plan.drawingNumber,
  identity: plan.features.some(({ status }) => status === 'planned') ? identityOf(plan) : null,
  units: plan.units,
  lathe: plan.lathe,
  part: plan.part,
  heading: partHeading(plan),
  cautions: [...cautionsFor(plan.part), ...(pullsIn(plan) ? [PULLS_IN] : [])],
  decision: plan.decision ?? 'prove',
  orderReasons: plan.orderReasons,
  warnings: plan.warnings.map(({ feature, code, say }, i) => ({
    feature,
    code,
    say: identify(`warning.${i + 1}`, together([say])),
  })),
  features: plan.features.map((feature, position) => featureOf(plan, feature, position)),
  ...withPlaces(plan, numbered(plan, tables)),
})

const withPlaces = (plan: Plan, steps: readonly SheetStep[]): Pick<Sheet, 'steps' | 'places'> => {
  const places = plan.features.flatMap((feature, position) =>
    feature.status === 'planned'
      ? placesOf(
          plan,
          feature,
          steps.filter((step) => step.feature === position),
        )
      : [],
  )
  return places.length === 0 ? { steps } : { steps, places }
}

/** Steps are counted through the whole sheet, so that "I am at 31" has one meaning. */
const numbered = (plan: Plan, tables: readonly Tables[]): SheetStep[] => {
  const steps: SheetStep[] = []
  plan.features.forEach((feature, position) => {
    if (feature.status !== 'planned') return
    const first = steps.length + 1
    steps.push(...withCorrections(plan, feature, tables[position]!, stepsOf(plan, feature, position, first), first))
  })
  return steps
}

const featureOf = (plan: Plan, feature: FeaturePlan, index: number): SheetFeature => {
  const all = (name: string, prose: readonly Prose[]): Phrase[] =>
    prose.map((one, i) => identify(`feature.${index + 1}.${name}.${i + 1}`, together([one])))
  const own = plan.warnings.filter((warning) => warning.feature === index)
  const warnings = all(
    'warning',
    own.map(({ say }) => say),
  )
  const common = { index, name: feature.name, kind: feature.kind, warnings }
  if (feature.status === 'refused') {
    const { code, named } = feature
    const [reason, remedy] = [all('reason', [feature.reason])[0]!, all('remedy', [feature.remedy])[0]!]
    return { ...common, status: 'refused', code, reason, remedy, ...(named === undefined ? {} : { named }) }
  }
  const { operation, trace } = feature
  return {
    ...common,
    status: 'planned',
    why: feature.why,
    heading: headingOf(plan, feature, index),
    notes: all('note', feature.notes),
    tool: feature.tool,
    edge: feature.edge,
    undersize: feature.undersize,
    compoundAngle: operation.angle,
    surface: operation.surface,
    spindle: feature.spindle,
    zero: trace.zero,
    placing: operation.placing,
    touch: operation.touch,
    lines: operation.lines,
    clear: feature.clear,
    cusp:
      operation.cusp === undefined ? null : { most: operation.cusp.most, ridge: Math.max(0, ...(trace.ridges ?? [])) },
    jawClearance: plan.lathe.jawClearance,
    sideFeed: feature.sideFeed,
    proof: proofOf(plan, feature, index),
    ...(feature.gains === undefined ? {} : { gains: gainsOf(plan, feature, index) }),
    inspection: inspectionOf(plan, feature, index),
  }
}

const pullsIn = (plan: Plan): boolean =>
  /brass|alumin|bronze/i.test(plan.part.material) &&
  plan.features.some((feature) => feature.status === 'planned' && feature.edge.rakeInUse > 0)
