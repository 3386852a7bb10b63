import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Blank, ReadingFacts, WorkedFacts } from '../../src/exercise/blank.ts'
import { FORMULAS } from '../../src/exercise/formulas.ts'
import { solve } from '../../src/exercise/solve.ts'
import { CAUSES } from '../../src/grading/causes/registry.ts'
import { gradeSheet, ledTo } from '../../src/grading/grade.ts'
import { readable, type Scale } from '../../src/lathe/lathe.ts'
import { INCH, inUnits, MM, perUnit } from '../../src/units/length.ts'

/** Blanks of every sort with other numbers: dials by depth and by diameter, inch and metric, as lathes have them. */
const whole = (from: number, to: number) => fc.integer({ min: from, max: to })
const dials: fc.Arbitrary<Scale> = fc
  .record({ inch: fc.boolean(), diameter: fc.boolean(), lost: whole(3, 9) })
  .map(({ inch, diameter, lost }) => {
    const graduation = inch ? INCH / 1000 : MM / 50
    const units = inch ? 'inch' : 'mm'
    return {
      kind: 'dial',
      units,
      graduation,
      perTurn: 100 * graduation,
      reads: diameter ? 'diameter' : 'depth',
      backlash: lost * graduation,
      readTo: 1,
    }
  })

const readings: fc.Arbitrary<ReadingFacts> = fc
  .record({
    scale: dials,
    marks: whole(22, 140),
    left: whole(6, 18),
    tool: whole(110, 160),
    under: whole(4, 15),
    kind: fc.constantFrom('deep', 'along', 'correction'),
    off: fc.constantFrom(-3, -2, 2, 3),
  })
  .map(({ scale, marks, left, tool, under, kind, off }): ReadingFacts => {
    const step = readable(scale)
    const along = kind === 'along'
    const correction = kind === 'correction' ? off * step : null
    const travel = (along ? under : marks) * step
    return {
      sort: 'reading',
      slide: along ? 'compound' : 'cross-feed',
      scale: along ? { ...scale, reads: 'depth' } : scale,
      axis: along ? 'along' : 'deep',
      travel: travel + (correction ?? 0),
      angle: 0,
      tool: along ? tool * step : null,
      width: along ? (tool + under) * step : null,
      rough: along ? null : (marks - left) * step,
      correction,
      units: scale.units,
    }
  })

const worked: fc.Arbitrary<WorkedFacts> = fc
  .record({
    inch: fc.boolean(),
    a: whole(400, 1600),
    b: whole(31, 99),
    c: whole(4, 15),
    angle: fc.constantFrom(36, 38, 40, 60, 90),
    formula: fc.constantFrom('shift', 'bottomDiameter', 'depthBelow', 'vDepth', 'vWidth', 'rpm'),
  })
  .map(({ inch, a, b, c, angle, formula }): WorkedFacts => {
    const unit = inch ? INCH / 1000 : MM / 50
    const given = {
      width: (b + 100 + c) * unit,
      tool: (b + 100) * unit,
      surface: a * unit,
      depth: b * unit,
      bottom: (a - 2 * b) * unit,
      root: c * unit,
      angle,
    }
    const units = inch ? 'inch' : 'mm'
    if (formula !== 'rpm') return { sort: 'worked', formula, given, unit: 'length', units }
    const speeds = Object.fromEntries([60, 95, 150, 240, 380, 600, 950].map((rpm, i) => [`speed${i}`, rpm]))
    const cutting = { cutting: (inch ? 540 * INCH : 14_000 * MM) * (1 + c / 10), diameter: a * unit }
    return { sort: 'worked', formula, given: { ...cutting, ...speeds }, unit: 'rpm', units }
  })

const blankOf = (facts: Blank['facts']): Blank => ({
  id: 'one',
  number: 1,
  outOf: 1,
  asks: '',
  facts,
  right: solve(facts)!,
  tolerance:
    facts.sort === 'worked' && facts.unit === 'rpm'
      ? 0
      : facts.sort === 'reading'
        ? readable(facts.scale) / 2
        : facts.units === 'inch'
          ? INCH / 2000
          : MM / 100,
  key: '',
  within: '',
  working: '',
  follows: [],
  move: null,
})

/** As a learner writes it: to four places of an inch, to three of a millimeter. */
const written = (value: number, { facts }: Blank): string => {
  if (facts.sort === 'worked' && facts.unit === 'rpm') return String(value)
  const units = facts.sort === 'reading' ? facts.scale.units : facts.units
  return inUnits(value, units).toFixed(units === 'inch' ? 4 : 3)
}

const grade = (blank: Blank, given: string) =>
  gradeSheet(
    {
      sheet: '01',
      learner: null,
      form: '',
      units: blank.facts.units,
      values: {},
      job: '',
      blanks: [blank],
      shop: { lathe: null as never, setup: null as never, operations: [] },
    },
    {
      sheet: '01',
      learner: null,
      set: null,
      values: new Map([['one', given]]),
      at: () => ({ line: 1, column: 1, length: 1 }),
      file: '',
      source: null as never,
    },
  ).blanks[0]!

const RUNS = { numRuns: 1000, seed: 11 }

describe('a likely cause', () => {
  it.each(CAUSES.map((cause) => [cause.code, cause] as const))('is diagnosed as itself: %s', (code, cause) => {
    let [made, found] = [0, 0]
    fc.assert(
      fc.property(
        cause.reading === undefined ? worked : cause.worked === undefined ? readings : fc.oneof(readings, worked),
        (facts) => {
          const blank = blankOf(facts)
          for (const value of ledTo(cause, blank)) {
            made++
            const { verdict, causes } = grade(blank, written(value, blank))
            if (verdict === 'wrong' && causes.includes(code)) found++
          }
        },
      ),
      RUNS,
    )
    expect(made).toBeGreaterThan(50)
    expect(found / made).toBeGreaterThanOrEqual(0.95)
  })
})

describe('a right answer', () => {
  it('is never wrong, however it is written', () => {
    fc.assert(
      fc.property(fc.oneof(readings, worked), (facts) => {
        const blank = blankOf(facts)
        for (const text of notations(blank)) expect([text, grade(blank, text).verdict]).toEqual([text, 'right'])
      }),
      RUNS,
    )
  })
})

/** Every way to write what is right. */
const notations = (blank: Blank): string[] => {
  const { facts } = blank
  const right = blank.right as number
  if (facts.sort === 'worked' && facts.unit === 'rpm') return [`${right}`, `${right} rpm`, ` ${right}.0`]
  const text = written(right, blank)
  const units = facts.sort === 'reading' ? facts.scale.units : facts.units
  const plain = [text, text.replace(/^0\./, '.'), ` ${text} `, `${text} ${units === 'inch' ? 'in' : 'mm'}`]
  if (units === 'inch') plain.push(`${text}"`, `${(1000 * inUnits(right, 'inch')).toFixed(1)} thou`)
  if (facts.sort !== 'reading' || facts.scale.kind !== 'dial') return plain
  const marks = right / facts.scale.graduation
  const turns = Math.floor(marks / 100)
  return [
    ...plain,
    String(marks),
    `mark ${marks}`,
    `${turns} turns ${marks - 100 * turns}`,
    `${turns} turn and ${marks - 100 * turns}`,
    `${turns} turns, mark ${marks - 100 * turns}`,
  ]
}

it('solves by the textbook: a V of 60° with a width of .070 and a flat of .004 is .0572 deep', () => {
  // (.070 − .004) / 2 / tan 30°, worked by hand: .033 / .57735 = .05716.
  const depth = FORMULAS.vDepth({ width: 0.07 * INCH, root: 0.004 * INCH, angle: 60 })
  expect(depth / perUnit('inch')).toBeCloseTo(0.05716, 5)
})
