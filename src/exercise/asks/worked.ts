import type { Phrase } from '../../phrase/phrase.ts'
import { exact, say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import type { WorkedFacts } from '../blank.ts'
import { FORMULAS } from '../formulas.ts'
import { toleranceFor, withinText } from '../tolerance.ts'
import type { Made, Planned, Scene } from './ask.ts'

/** A size that is asked in a question of its own. */
type Asked = {
  readonly id: string
  readonly feature: Planned
  readonly what: string
  readonly formula: WorkedFacts['formula']
  readonly given: WorkedFacts['given']
  readonly working: Phrase
  /** What the plan has: where the formula comes to something else, nothing is asked. pm. */
  readonly planned: number | null
  /** What else the question gives. */
  readonly note?: Phrase
}

export const workedLength = (scene: Scene, asked: Asked): readonly Made[] => {
  const { units } = scene.plan
  const right = FORMULAS[asked.formula](asked.given)
  const tolerance = toleranceFor(scene)
  if (asked.planned === null || !(Math.abs(right - asked.planned) < tolerance / 5)) return []
  const key = words([exact('planned', right, units)], units)
  return [
    {
      id: asked.id,
      asks: `${asked.what} of ${asked.feature.name}`,
      facts: { sort: 'worked', formula: asked.formula, given: asked.given, unit: 'length', units },
      right,
      tolerance,
      key,
      within: withinText(tolerance, units),
      working: words(say`${asked.working}: ${exact('planned', right, units)}`, units),
      follows: [],
      move: null,
      place: { question: words(say`The ${asked.what} of "${asked.feature.name}"${asked.note ?? []}:`, units) },
    },
  ]
}

/** The aim of a dimension, pm or degrees; null where the form has no such one. */
export const aimOf = ({ operation }: Planned, wanted: string): number | null =>
  operation.dimensions.find(({ id }) => id === wanted)?.aim ?? null
