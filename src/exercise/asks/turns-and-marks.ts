import { marksPerTurn } from '../../phrase/dial.ts'
import { figure } from '../../phrase/figure.ts'
import { say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { FORMULAS } from '../formulas.ts'
import type { Ask, Made } from './ask.ts'
import { readings } from './readings.ts'

/** Of each reading that is asked, only the whole turns, or only the mark. */
const partOf = (formula: 'turns' | 'mark', what: string): Ask => ({
  says: `of each reading ${what}`,
  make: (scene) =>
    readings.make(scene).flatMap((one): readonly Made[] => {
      const { facts, place } = one
      if (facts.sort !== 'reading' || facts.scale.kind !== 'dial' || !('step' in place)) return []
      const { perTurn, graduation, readTo } = facts.scale
      const given = { reading: one.right as number, perTurn, graduation }
      const right = FORMULAS[formula](given)
      const { units } = facts
      return [
        {
          ...one,
          id: one.id.replace(/reading$/, formula),
          asks: `${one.asks}, ${what}`,
          facts: { sort: 'worked', formula, given, unit: 'count', units },
          right,
          tolerance: formula === 'turns' ? 0 : readTo / 2,
          key: words(
            [figure(formula === 'turns' ? 'turns' : 'mark', right, formula === 'turns' ? 'turn' : 'mark', 1)],
            units,
          ),
          within: formula === 'turns' ? 'exactly' : 'half a mark',
          working: words(say`${one.working}; ${marksPerTurn(facts.scale)} marks a turn`, units),
          follows: [],
          move: null,
          place: { ...place, part: formula },
        },
      ]
    }),
})

export const turns = partOf('turns', 'the whole turns')
export const marks = partOf('mark', 'the mark')
