import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Slide } from '../../src/moves/operation.ts'
import { turnTo, waysOf } from '../../src/phrase/dial.ts'
import { words } from '../../src/phrase/words.ts'
import { program } from '../cases/program.ts'
import { diameterDial, inchDial, metricDial } from './fixture.ts'

const DIALS = [
  { dial: inchDial(), perTurn: 100 },
  { dial: metricDial, perTurn: 150 },
  { dial: diameterDial, perTurn: 200 },
]
const SLIDES: readonly Slide[] = ['cross-feed', 'compound', 'carriage']

/** What a hand does that turns back as it reads: so many zeros or turns, and then on to the first mark that fits. */
function followed(say: string, from: number, perTurn: number): number {
  const turns = /(\d+) whole turns? from 0/.exec(say)
  const times = / past 0 \((\d+) times\)/.exec(say)
  const passed = times ? Number(times[1]) : say.includes(' past 0') ? 1 : 0
  let at = turns ? from - Number(turns[1]) * perTurn : from
  for (let i = 0; i < passed; i++) at = (Math.ceil(at / perTurn) - 1) * perTurn
  if (turns && say.includes('from 0, onto')) return at
  const named = say.split(/onto the next|stop on the next|stop at|and on to|onto|from 0 to|, to| to /).at(-1)!
  const mark = / on (?:mark )?0/.test(named)
    ? 0
    : Number(/(?:turns? and )?(?:mark )?(\d+)(?! turn)/.exec(named.replace(/^\s*\d+ turns? and/, ''))![1])
  do at--
  while (((at % perTurn) + perTurn) % perTurn !== mark)
  return at
}

describe('a hand that turns back more than one turn is told how often 0 goes by', () => {
  it.each([
    [398, 100, 'back past 0 (2 times), to mark 100 (2.00 mm after the set 0)'],
    [398, 200, 'back past 0, to 1 turn and mark 50 (4.00 mm)'],
    [398, 0, 'back past 0 (2 times), onto the next mark 0'],
    [140, 100, 'back to mark 100 (2.00 mm)'],
    [398, -50, 'back past 0 (3 times), stop at mark 100 (1.00 mm before 0)'],
  ])('the flank-fed V, from %d to %d', (from, to, say) =>
    expect(words(turnTo(metricDial, waysOf('compound', 73), from, to, 'inch'), 'inch')).toBe(say),
  )

  it('and forward past where it stands', () => {
    const say = words(turnTo(inchDial(), waysOf('compound', 0), 9, 307, 'inch'), 'inch')
    expect(say).toBe('toward the headstock past 0 (3 times), to 3 turns and 7 (.307), 298 marks on')
  })

  it('whatever the dial, the slide and the readings', () => {
    const reading = fc.integer({ min: -700, max: 700 })
    fc.assert(
      fc.property(fc.constantFrom(...DIALS), fc.constantFrom(...SLIDES), reading, reading, (one, slide, a, b) => {
        fc.pre(a !== b)
        const [from, to] = [Math.max(a, b), Math.min(a, b)]
        const say = words(turnTo(one.dial, waysOf(slide, 0), from, to, 'inch'), 'inch')
        expect([say, followed(say.replace(/ \((?!\d+ times)[^()]*\)$/, ''), from, one.perTurn)]).toEqual([say, to])
      }),
      { numRuns: 2000, seed: 40_22 },
    )
  })

  it('on the sheet of a V that is deeper than a turn', async () => {
    const { stdout } = await program('sheet', 'tests/words/jobs/deep-vee.yaml')
    expect(stdout).toMatch(/COMPOUND {3}back past 0 \(\d times\), to mark 100 \(2\.00 after the set 0/)
  })
})
