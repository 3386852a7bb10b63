import { describe, expect, it } from 'vitest'
import { filledIn, type Graded, graded, handedOut } from '../exercise/class.ts'

const set = await handedOut()
const blankOf = (learner: Graded, part: string) => learner.blanks.filter(({ id }) => id.endsWith(part))

describe('answers', () => {
  it('by the key are right', async () => {
    const { learners, status, err } = await graded(filledIn(set, () => undefined))
    expect([status, err]).toEqual([0, ''])
    expect(learners.map(({ score, outOf }) => [score, outOf])).toEqual([
      [6, 6],
      [6, 6],
      [6, 6],
    ])
  })

  it.each([
    '72',
    '.072',
    '0.072',
    '0.072 in',
    '72 thou',
    'mark 72',
    '72 marks',
    '0 turns 72',
    '0 turns and 72',
    ' 72 ',
  ])('are forgiven their notation: %s', async (text) => {
    const { learners } = await graded(filledIn(set, (_, { key }) => (key === '72' ? text : undefined)))
    expect(learners[0]!.score).toBe(6)
  })

  it('that prove are right, though they are not the sheet’s', async () => {
    // Roughed to .050 in place of .054: shallower, and the finish takes no more than a pass may.
    const { learners } = await graded(filledIn(set, (_, { key }) => (key === '54' ? '50' : undefined)))
    expect(learners.map(({ score }) => score)).toEqual([6, 6, 6])
  })

  it('with the width of the tool forgotten cost once, and are explained', async () => {
    const wide = ({ values }: { values: Record<string, string> }) =>
      String(Number.parseFloat(values['features.0.width']!))
    const { learners } = await graded(
      filledIn(set, (handed, { id, asks }) =>
        id.endsWith('.shift') || asks.includes('compound') ? wide(handed) : undefined,
      ),
    )
    for (const learner of learners) {
      expect(blankOf(learner, '.shift')[0]).toMatchObject({
        verdict: 'wrong',
        causes: ['tool-width-forgotten', 'wrong-corner'],
      })
      expect(learner.score).toBe(5)
      expect(learner.blanks.filter(({ verdict }) => verdict === 'follow-on')).toHaveLength(2)
    }
  })

  it('a turn too deep say what would have been cut', async () => {
    // .172 deep where .072 ±.004 is drawn: .096 beyond the limit.
    const { learners } = await graded(filledIn(set, (_, { key }) => (key === '72' ? '1 turn 72' : undefined)))
    const wrong = learners[0]!.blanks.find(({ verdict }) => verdict === 'wrong')!
    expect(wrong.causes).toEqual(['one-turn'])
    expect(wrong.wouldCut).toContain('.096 too deep; the part is scrap')
  })

  it('too shallow can be saved', async () => {
    // .062 deep, where .068 is the least: .006 left.
    const { learners } = await graded(filledIn(set, (_, { key }) => (key === '72' ? '62' : undefined)))
    const wrong = learners[0]!.blanks.find(({ verdict }) => verdict === 'wrong')!
    expect(wrong.causes).toEqual(['next-numeral'])
    expect(wrong.wouldCut).toContain('.006 left in the depth, can be saved')
  })
})

describe('a form', () => {
  it('that cannot be read is told with its place and not graded', async () => {
    const files = filledIn(set, () => undefined)
    const { learners, status, err } = await graded({ ...files, 'set/answers/02.yaml': 'sheet: "02"\nanswers: 3\n' })
    expect(status).toBe(1)
    expect(err).toContain('set/answers/02.yaml:2:10: error: there is no list of answers')
    expect(learners[1]).toMatchObject({ score: null, note: 'the form cannot be read: mend it, and grade again' })
  })

  it('with a word for a number leaves that blank ungraded, never zero', async () => {
    const { learners, status, err } = await graded(
      filledIn(set, ({ sheet }, { key }) => (sheet === '01' && key === '72' ? 'deep' : undefined)),
    )
    expect(status).toBe(1)
    expect(err).toMatch(/^set\/answers\/01\.yaml:8:\d+: "deep" cannot be read as an answer, and is not graded; /)
    expect(learners[0]).toMatchObject({ score: 5, outOf: 5 })
  })

  it('as it was handed out is not graded, never zero', async () => {
    const files = { ...filledIn(set, () => undefined), 'set/answers/02.yaml': set.files['set/answers/02.yaml']! }
    expect((await graded(files)).learners[1]).toMatchObject({ score: null, note: 'nothing is filled in' })
  })

  it('that is missing is listed', async () => {
    const { 'set/answers/03.yaml': _, ...files } = filledIn(set, () => undefined)
    expect((await graded(files)).learners[2]).toMatchObject({ sheet: '03', score: null, note: 'no answers' })
  })

  it('with the answers of another sheet is noticed', async () => {
    const files = filledIn(set, () => undefined)
    const copied = files['set/answers/02.yaml']!.replace('sheet: "02"', 'sheet: "01"')
    expect((await graded({ ...files, 'set/answers/01.yaml': copied })).learners[0]!.note).toBe(
      'the wrong answers are right on sheet 02',
    )
  })

  it('may be a table of the whole class', async () => {
    const rows = ['01', '02', '03'].flatMap((sheet) => {
      const form = filledIn(set, () => undefined)[`set/answers/${sheet}.yaml`]!
      return [...form.matchAll(/id: "(.*?)", value: "(.*?)"/g)].map(([, id, value]) => `${sheet},${id},${value}`)
    })
    const answers = Object.fromEntries(Object.entries(set.files).filter(([name]) => !name.startsWith('set/answers/')))
    const { learners } = await graded({ ...answers, 'set/answers/all.csv': `sheet,id,value\n${rows.join('\n')}\n` })
    expect(learners.map(({ score }) => score)).toEqual([6, 6, 6])
  })
})
