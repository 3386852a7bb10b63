import { describe, expect, it } from 'vitest'
import { budgetProblems } from './budget.ts'
import { changed, squareSheet, withFeature } from './hand-sheets.ts'
import type { MetalLeft, Sheet, Table } from './sheet-shape.ts'
import { tableProblems } from './tables.ts'

const every = (rows: number): number[] => Array.from({ length: rows }, (_, at) => at)
const problems = (sheet: Sheet): string[] => tableProblems(sheet, every).problems

/** A square sheet with a stop after its roughing: .050 deep and .200 wide are expected there, on a bar of 1.25. */
function stopped(tables: {
  corrections?: Table<{ bottomDiameter: number }>
  widthCorrections?: Table<{ width: number }>
  metalLeft?: MetalLeft
}): Sheet {
  const sheet = squareSheet()
  const { metalLeft, ...first } = tables
  const [stop, measure, start] = (['stop', 'measure', 'start'] as const).map((action, at) => ({
    ...{ number: 101 + at, feature: 0, action, slide: null, reading: null },
    ...(action === 'measure' ? first : {}),
  }))
  const steps = [...sheet.steps.slice(0, 18), stop!, measure!, start!, ...sheet.steps.slice(18)]
  const last = steps.findLast(({ action }) => action === 'measure')!
  return {
    ...sheet,
    steps: steps.map((step) => (step === last && metalLeft ? { ...step, metalLeft } : step)),
  }
}

const row = (measured: number, step: number, reading: number) => ({
  ...{ measured, within: null },
  finishes: [{ step, reading, turns: 0, mark: reading * 1000 }],
})

describe('the rows of a table for the depth', () => {
  // Step 21 of the hand sheet feeds in to the floor at .060. A bottom of 1.152 where 1.150 is expected: the touch was .001 high, .061 cuts .060 deep.
  const table = (reading: number, bottomDiameter: number): Sheet =>
    stopped({
      corrections: {
        measure: 'bottomDiameter',
        expected: 1.15,
        rows: [{ ...row(1.152, 21, reading), bottomDiameter }],
      },
    })

  it('come out as they promise', () => {
    expect(problems(table(0.061, 1.13))).toEqual([])
    expect(problems(table(0.06, 1.132))).toEqual([])
  })

  it('are found out when they correct the wrong way, or not at all', () => {
    expect(problems(table(0.059, 1.13)).join()).toContain('is promised at 1.13 and is 1.134000')
    expect(problems(table(0.06, 1.13)).join()).toContain('is promised at 1.13 and is 1.132000')
  })

  it('count the difference of two diameters the other way', () => {
    const less = (reading: number): Sheet =>
      stopped({
        corrections: {
          ...{ measure: 'outsideLessBottom', expected: 0.1 },
          rows: [{ ...row(0.098, 21, reading), bottomDiameter: 1.13 }],
        },
      })
    expect(problems(less(0.061))).toEqual([])
    expect(problems(less(0.059)).join()).toContain('is promised at 1.13 and is 1.134000')
  })
})

describe('the rows of a table for the width', () => {
  // The tool went .075 from place to place: .199 wide, and it is .124. Fed across to .076 it leaves .200.
  const table = (reading: number, width: number): Sheet =>
    stopped({ widthCorrections: { measure: 'width', expected: 0.2, rows: [{ ...row(0.199, 22, reading), width }] } })

  it('come out as they promise', () => {
    expect(problems(table(0.076, 0.2))).toEqual([])
    expect(problems(table(0.075, 0.199))).toEqual([])
  })

  it('are found out when they do not', () => {
    expect(problems(table(0.075, 0.2)).join()).toContain('is promised at 0.2 and is 0.199000')
    expect(problems(table(0.074, 0.198)).join()).toContain('is promised at 0.198 and is 0.199000')
  })
})

describe('metal that is left', () => {
  const left = (steps: number[], reading: number, perReading: number): Sheet =>
    stopped({
      metalLeft: {
        again: [19, 23],
        sizes: [
          { measure: 'outsideLessBottom', when: 'under', limit: 0.118, pastSaving: null, steps, reading, perReading },
        ],
      },
    })

  it('is taken off by the pass once more, one reading further', () => {
    expect(problems(left([21], 0.001, 0.002))).toEqual([])
  })

  it('is found out where the reading is worth something else, or is another step', () => {
    expect(problems(left([21], 0.002, 0.002)).join()).toContain('once more, the outsideLessBottom goes from')
    expect(problems(left([22], 0.001, 0.002)).join()).toContain('once more, the outsideLessBottom goes from')
  })
})

describe('the ends of the error budget', () => {
  const errors = { reading: null, touchOff: 0.001, tool: 0.0005, runout: 0.0002, swivel: 0.5, trued: 0 }
  const told = (depth: [number, number], width: [number, number]): Sheet =>
    withFeature(squareSheet(), {
      finished: {
        depth: { planned: 0.06, low: depth[0], high: depth[1] },
        width: { planned: 0.2, low: width[0], high: width[1] },
      },
    })

  it('are those worked out by hand', () => {
    // Depth: touching .001, runout .0002, half a mark of the cross-feed .0005. Width: the tool .0005 both ways; the far place
    // half a mark both ways; the near place only further out, for the tool has been at its zero before.
    const found = budgetProblems(told([0.0583, 0.0617], [0.199, 0.2015]), errors)
    expect(found).toEqual({ sizes: 2, problems: [] })
  })

  it('are found out when they leave an error out', () => {
    expect(budgetProblems(told([0.0585, 0.0615], [0.199, 0.2015]), errors).problems.join()).toContain('depth from')
    expect(budgetProblems(told([0.0583, 0.0617], [0.1995, 0.201]), errors).problems.join()).toContain('width from')
  })

  it('count half of what is read on a dial that shows diameters', () => {
    const sheet = told([0.05855, 0.06145], [0.199, 0.2015])
    sheet.lathe.crossFeed.reads = 'diameter'
    const doubled = changed(sheet, ({ slide, reading }) =>
      slide === 'cross-feed' && typeof reading === 'number' ? { reading: 2 * reading } : null,
    )
    expect(budgetProblems(doubled, errors).problems).toEqual([])
  })
})
