import { judge } from '../../judge/judge.ts'
import { say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import type { Plan } from '../../plan/plan.ts'
import { replayNext } from '../../replay/replay.ts'
import { type Mutant, mutantsOf } from '../../slips/mistakes.ts'
import { shuffledList } from '../shuffle.ts'
import { type Ask, cutsOf, type Planned, type Scene } from './ask.ts'

/** One reading on the sheet is wrong, so that the part would not be as drawn; which step is it? */
export const mistake: Ask = {
  says: 'the one mistake in a sheet: its step',
  make: (scene) => {
    const found = wrongSheet(scene)
    if (found === null) return []
    const { step, before, units, name } = found
    return [
      {
        id: 'mistake',
        outOf: 2,
        asks: `the step with the mistake`,
        facts: { sort: 'choice', units },
        right: words(say`${step}`, units),
        tolerance: 0,
        key: words(say`step ${step}`, units),
        within: 'that step',
        working: words(say`it should be: ${before}`, units),
        follows: [],
        move: null,
        place: {
          question: `One step for "${name}" has a mistake, and the part would be spoiled or unfinished. Which step?`,
        },
      },
    ]
  },
}

/** The plan with the mistake in it: what the sheet is printed from. */
export const mistaken = (scene: Scene): Plan | null => wrongSheet(scene)?.plan ?? null

const wrongSheet = (scene: Scene) => {
  const { plan, seed } = scene
  for (const { feature, index, steps } of cutsOf(scene)) {
    const tried = shuffledList(
      [...mutantsOf(feature.operation, plan.lathe), ...misread(feature, plan)],
      `${seed}/mistake/${index}`,
    )
    for (const mutant of tried) {
      const at = changedMove(feature, mutant)
      if (at === null || proves(plan, feature, mutant, index)) continue
      const operation = { ...feature.operation, moves: mutant.operation.moves }
      const features = plan.features.with(index, { ...feature, operation })
      const { number, does } = steps[at]!
      return { step: number, before: does, units: plan.units, name: feature.name, plan: { ...plan, features } }
    }
  }
  return null
}

/** Any one reading that cuts, by the next number on its dial or by one turn: also where a pass only roughs. */
const misread = ({ operation }: Planned, { lathe }: Plan): Mutant[] =>
  operation.moves.flatMap(({ slide, action, count }, at) => {
    const scale = slide === 'cross-feed' ? lathe.crossFeed : lathe.compound.scale
    if (typeof count !== 'number' || count <= 0 || scale.kind !== 'dial') return []
    if (action !== 'feed-in' && action !== 'shift' && action !== 'feed-across') return []
    const step = scale.graduation * scale.readTo
    return [10 * scale.graduation, scale.perTurn].map((by): Mutant => {
      const moves = operation.moves.with(at, { ...operation.moves[at]!, count: count + Math.round(by / step) })
      return { mistake: 'numbers-misread', operation: { ...operation, moves } }
    })
  })

/** Where exactly one move has another reading. */
const changedMove = ({ operation: { moves } }: Planned, { operation }: Mutant): number | null => {
  if (operation.moves.length !== moves.length) return null
  const changed = moves.flatMap(({ count }, i) => (operation.moves[i]!.count === count ? [] : [i]))
  return changed.length === 1 ? changed[0]! : null
}

const proves = ({ lathe, setup }: Plan, { before }: Planned, { operation }: Mutant, index: number): boolean => {
  const { trace, faults } = replayNext(lathe, setup, before, operation, index)
  return judge(lathe, operation, before, trace, faults).proven
}
