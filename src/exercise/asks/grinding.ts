import { words } from '../../phrase/words.ts'
import { grindSheet } from '../../sheet/grind/grind.ts'
import { shuffledList } from '../shuffle.ts'
import type { Ask, Made } from './ask.ts'

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** The steps of grinding the first tool of the job, shuffled. */
export const grinding: Ask = {
  says: 'the order of the steps of grinding a tool; they are shuffled',
  make: ({ plan, seed }): readonly Made[] => {
    const [tool] = grindSheet(plan, []).tools
    if (tool === undefined || tool.order.length < 3 || tool.order.length > LETTERS.length) return []
    const { units } = plan
    const drawn = shuffledList([...tool.order.keys()], `${seed}/grinding`)
    const right = [...tool.order.keys()].map((line) => LETTERS[drawn.indexOf(line)]!)
    return [
      {
        id: 'grinding',
        outOf: 4,
        asks: 'order of grinding',
        facts: { sort: 'choice', units },
        right,
        tolerance: 0,
        key: right.join(' '),
        within: 'that order',
        working: 'as the grinding sheet has it',
        follows: [],
        move: null,
        place: { question: `Put the steps of grinding "${tool.name}" in order (letters):` },
        choices: drawn.map((line, i) => `${LETTERS[i]}  ${words(tool.order[line]!, units)}`),
      },
    ]
  },
}
