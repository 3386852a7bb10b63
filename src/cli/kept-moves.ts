import type { Move } from '../moves/operation.ts'
import type { Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import { type Data, dataIn, listIn, numberIn, textIn } from '../sheet/changed/data.ts'
import { inUnits } from '../units/length.ts'
import { readMoves } from '../written/written.ts'

export type KeptMoves =
  | { readonly ok: true; readonly moves: ReadonlyMap<string, readonly Move[]> }
  | { readonly ok: false; readonly why: string }

/** The moves of a kept sheet, for each feature that it planned, read back on today's dials like a list of moves. */
export const movesIn = (kept: Data, plan: Plan): KeptMoves => {
  const features = listIn(kept.features).map(dataIn)
  const steps = listIn(kept.steps).map(dataIn)
  const rows = steps.map((step) => rowOf(step, plan))
  const names = features.map((_, i) => String(i + 1))
  const { operations, diagnostics } = readMoves(JSON.stringify({ moves: rows }), 'kept.json', {
    lathe: plan.lathe,
    units: plan.units,
    features: names,
  })
  if (operations === null) {
    const first = diagnostics.find(({ severity }) => severity === 'error')!
    const at = first.origin?.path[1]
    const step = typeof at === 'number' ? `step ${String(numberIn(steps[at]?.number) ?? at + 1)}: ` : ''
    return { ok: false, why: `${step}${first.message}` }
  }
  const found = new Map<string, readonly Move[]>()
  for (const { feature, moves } of operations) {
    const name = textIn(features[feature]!.name)
    const origin = plan.features.find((one) => one.name === name)
    if (found.has(name)) return { ok: false, why: `two features are called ${JSON.stringify(name)}` }
    const own = origin?.status === 'planned' ? { origin: origin.operation.origin } : {}
    found.set(
      name,
      moves.map((move) => ({ ...move, ...own })),
    )
  }
  const odd = operations
    .flatMap(({ moves }) => moves)
    .find(({ count }) => typeof count === 'number' && !Number.isInteger(count))
  return odd === undefined
    ? { ok: true, moves: found }
    : {
        ok: false,
        why: `a reading of the ${odd.slide} there is between the marks that its dial has in the lathe file now`,
      }
}

/** One step as a row of a list of moves. */
const rowOf = (step: Data, plan: Plan) => {
  const action = textIn(step.action)
  const slide = textIn(step.slide)
  const atLeast = numberIn(step.atLeast)
  const place = numberIn(step.placeFromEnd)
  const reading = numberIn(step.reading)
  const named = slide !== '' ? { slide } : action === 'lock' || action === 'unlock' ? { slide: 'carriage' } : {}
  return {
    feature: String((numberIn(step.feature) ?? 0) + 1),
    action,
    ...named,
    ...(place !== null ? { place } : reading !== null ? { reading } : {}),
    ...(atLeast === null || reading !== null ? {} : { 'at-least': marksOf(plan, slide, atLeast) }),
    ...(textIn(step.purpose) === '' ? {} : { why: textIn(step.purpose) }),
  }
}

/** A list of moves counts a take-up in marks. */
const marksOf = (plan: Plan, slide: string, atLeast: number): number => {
  const scale = slide === 'cross-feed' || slide === 'compound' || slide === 'carriage' ? scaleOf(plan, slide) : null
  if (scale?.kind !== 'dial') return atLeast
  return Number((atLeast / inUnits(scale.graduation, scale.units)).toFixed(6))
}
