import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { words } from '../../src/phrase/words.ts'
import { examplePlans } from '../print/examples.ts'

const sheet = sheetFor(examplePlans().find(([name]) => name.startsWith('06'))![1])
const said = (does: Parameters<typeof words>[0]) => words(does, sheet.units)

describe('a corner by its own tool', () => {
  it('is chamfered when both tips have been touched off, the tool far out: on a chamfer neither would find its surface', () => {
    const at = sheet.steps.findIndex(({ purpose }) => purpose === 'chamfer')
    const zeros = sheet.steps.flatMap(({ action, feature }, i) => (action === 'zero' && feature === 0 ? [i] : []))
    expect(zeros).toHaveLength(2)
    expect(at).toBeGreaterThan(zeros[1]!)
    expect(sheet.steps.slice(at - 2, at + 3).map(({ action, purpose }) => purpose ?? action)).toEqual([
      'clear-to-measure',
      'start',
      'chamfer',
      'stop',
      'come-back',
    ])
  })

  it('is chamfered less than its legs have when they are measured, which then are what is expected', () => {
    const chamfer = sheet.steps.find(({ purpose }) => purpose === 'chamfer')!
    const legs = Number(/legs (\.\d+) or less/.exec(said(chamfer.does))![1])
    const measured = sheet.steps.find(({ purpose }) => purpose === 'expect-rough')!
    const expected = (measured.expected ?? []).filter(({ id }) => id === 'legAlong' || id === 'legDown')
    expect(expected).toHaveLength(2)
    for (const { size } of expected) {
      expect(legs).toBeLessThanOrEqual(size.value * 0.8)
      expect(legs).toBeGreaterThan(size.value * 0.8 - 0.005)
    }
    // A line that touches the arc has legs of R(2 − √2) (plane geometry): no more than that.
    expect(legs).toBeLessThan(0.125 * (2 - Math.SQRT2))
  })

  it('is brought to blend by the last move of its two dials, and by no other', () => {
    const own = sheet.steps.filter(({ feature }) => feature === 0)
    const blends = own.filter(({ more }) => more.some((each) => said(each).includes('without a line')))
    const fed = own.filter(({ action, purpose }) => action === 'feed-in' && purpose === 'alternate')
    expect(blends.map(({ number }) => number)).toEqual([fed.at(-1)!.number])
  })

  it('is not told to rest at the bottom of a finish that it does not have', () => {
    const speed = sheet.steps.find(({ action }) => action === 'set-speed')!
    expect(speed.more.map(said).join()).not.toContain('rest')
  })
})
