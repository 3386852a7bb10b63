import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { words } from '../../src/phrase/words.ts'
import { examplePlans } from '../print/examples.ts'

const sheet = sheetFor(examplePlans().find(([name]) => name.startsWith('06'))![1])
const said = (does: Parameters<typeof words>[0]) => words(does, sheet.units)

describe('a corner by its own tool', () => {
  it('is chamfered before the tool is fitted: a line that touches the arc has legs of R(2 − √2) (plane geometry)', () => {
    const at = sheet.steps.findIndex(({ purpose }) => purpose === 'chamfer')
    const fit = sheet.steps.findIndex(({ action }) => action === 'fit-tool')
    expect(at).toBeGreaterThan(0)
    expect(at).toBeLessThan(fit)
    // .125 × .5858 = .0732, and never more than that.
    expect(said(sheet.steps[at]!.does)).toBe('45° on the corner, legs .073 or a little less')
    expect(0.125 * (2 - Math.SQRT2)).toBeGreaterThan(0.073)
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
