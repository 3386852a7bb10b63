import { describe, expect, it } from 'vitest'
import { bareSheetFor } from '../../src/compile.ts'
import { moves } from '../../src/exercise/asks/moves.ts'
import { movesFrom } from '../../src/grading/moves.ts'
import { EXERCISE, filledIn, graded, handedOut } from '../exercise/class.ts'
import { examplePlans } from '../print/examples.ts'

const set = await handedOut({
  'exercise.yaml': EXERCISE.replace('hide: [shift, readings]', 'hide: [moves]')
    .replace('sheets: 3', 'sheets: 1')
    .replace(/vary:[\s\S]*(?=hide)/, 'vary: { features.0.width: [0.165] }\n'),
})
const answered = async (text: string) => {
  const { learners, err } = await graded(filledIn(set, () => text))
  return { ...learners[0]!, err, blank: learners[0]!.blanks[0]! }
}
// .165 ±.005 wide and .072 deep by a tool of .148, marks of .001, lost motion of .006 along and .008 across.
const PLAIN =
  'start; in 52; out past 0 to 50; over 17; in 52; out past 0 to 50; past 0 to 80; onto 0; in 72; along 17; out past 0 to 50; stop'

describe('a list of moves written by a learner', () => {
  it.each([
    ['our own is not asked for: no stop to measure, other passes', PLAIN],
    [
      'the second place first',
      'start; over 17; in 60; out past 0 to 50; past 0 to 80; onto 0; in 60; in 72; along 17; out past 0 to 50; stop',
    ],
    [
      'as a sheet words it, in past 0',
      PLAIN.replaceAll('in 52', 'in past 0, to 52')
        .replace('in 72', 'in past 0, to 72')
        .replaceAll('out past 0 to', 'out past 0, stop at'),
    ],
    [
      'numbered, in other words for readings',
      '1. start\n2. in .052\n3. out -.050\n4. over 17\n5. in 52\n6. out -50\n7. past -20\n8. onto 0\n9. in 72\n10. along 17\n11. out past 0 to 50\n12. stop',
    ],
  ])('is right where it proves: %s', async (_, text) => {
    expect(await answered(text)).toMatchObject({ score: 6, blank: { verdict: 'right', wouldCut: null }, cuts: [] })
  })

  it.each([
    ['the lost motion along is not taken up', PLAIN.replace('past 0 to 80; ', ''), /backlash|lost motion/],
    ['the tool goes its own width over', PLAIN.replaceAll('17', '148'), /\.126 too wide.*scrap/],
    ['a turn too deep', PLAIN.replace('in 72', 'in 1 turn 72'), /\.096 too deep.*scrap/],
    [
      'the finish is forgotten',
      PLAIN.replace('in 72; along 17', 'in 52; along 17'),
      /\.016 left in the depth, can be saved/,
    ],
    ['nothing is cut', 'start; stop', /nothing is cut there yet, can be saved/],
  ])('is wrong where it does not, and told by what it would cut: %s', async (_, text, says) => {
    const { blank, score } = await answered(text)
    expect([blank.verdict, score]).toEqual(['wrong', 0])
    expect(blank.wouldCut).toMatch(says)
  })

  it.each([
    ['start; cut 52', /move 2, "cut 52", cannot be read.*begin with one of in, out, over/],
    ['start; in deep', /move 2, "in deep", cannot be read.*write where the cross-feed is turned to/],
    ['start; over', /move 2, "over", cannot be read.*write where the compound is turned to/],
  ])('that cannot be read is told by its move, and not graded: %s', async (text, says) => {
    const { blank, err } = await answered(text)
    expect(blank.verdict).toBe('ungraded')
    expect(err.replace(/\s+/g, ' ')).toMatch(says)
  })

  it('reads as it is printed in the key, of every example that has one', () => {
    let read = 0
    for (const [, plan] of examplePlans()) {
      const sheet = bareSheetFor(plan)
      const hides = new Set(['moves'])
      const scene = { plan, sheet, tolerance: null, gives: () => false, sheetOf: bareSheetFor, seed: 'moves', hides }
      for (const { facts, key } of moves.make(scene)) {
        const feature = plan.features[facts.sort === 'moves' ? facts.feature : -1]
        if (facts.sort !== 'moves' || feature?.status !== 'planned') throw new Error('no moves')
        const list = movesFrom(key, facts, plan.lathe)
        const own = feature.operation.moves.slice(facts.first, facts.last + 1)
        expect(list.ok && list.value.map(({ slide, count }) => [slide, count])).toEqual(
          own.map(({ slide, count }) => [slide, count]),
        )
        read++
      }
    }
    expect(read).toBeGreaterThan(8)
  })
})
