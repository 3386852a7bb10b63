import { travelAt } from '../../dials/travel.ts'
import { exact, say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { scaleOf } from '../../plan/scale.ts'
import type { WorkedFacts } from '../blank.ts'
import { solve } from '../solve.ts'
import { toleranceFor, withinText } from '../tolerance.ts'
import { type Ask, cutsOf, type Made } from './ask.ts'

/** How far the tool is shifted along the work, from its width and that of the groove. */
export const shift: Ask = {
  says: 'how far the tool is shifted along the work',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, steps }): readonly Made[] => {
      const { units } = scene.plan
      const width = feature.operation.dimensions.find(({ id }) => id === 'width')?.aim
      const { width: tool } = feature.edge
      if (width === undefined || tool === null) return []
      const { moves, angle } = feature.operation
      // Of several places the one that is the whole shift: those before it leave something on a wall.
      const whole = steps.filter(({ action, slide }, i) => {
        const scale = slide === null || slide === 'cross-feed' ? null : scaleOf(scene.plan, slide)
        const count = moves[i]?.count
        if (action !== 'shift' || scale === null || typeof count !== 'number') return false
        const along = travelAt(scale, count) * (slide === 'compound' ? Math.cos((angle * Math.PI) / 180) : 1)
        return Math.abs(along - (width - tool)) <= travelAt(scale, 1)
      })
      const at = feature.operation.walls === 'plunged' ? whole.at(-1) : whole[0]
      if (at === undefined) return []
      const facts: WorkedFacts = { sort: 'worked', formula: 'shift', given: { width, tool }, unit: 'length', units }
      const right = solve(facts)
      const tolerance = toleranceFor(scene)
      if (typeof right !== 'number' || right <= 0) return []
      return [
        {
          id: `${at.number}.shift`,
          asks: words(say`step ${at.number}, how far along the work`, units),
          facts,
          right,
          tolerance,
          key: words([exact('along', right, units)], units),
          within: withinText(tolerance, units),
          working: words(
            say`${exact('drawing', width, units)} wide, less the tool ${exact('tool', tool, units)}: ${exact('along', right, units)}`,
            units,
          ),
          follows: [],
          move: null,
          place: { step: at.number, part: 'shift' },
        },
      ]
    }),
}
