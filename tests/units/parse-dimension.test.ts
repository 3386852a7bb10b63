import { describe, expect, test } from 'vitest'
import { GRADES_MICROMETERS } from '../../src/units/iso286.ts'
import { INCH, MM, type Units } from '../../src/units/length.ts'
import { parseDimension } from '../../src/units/parse-dimension.ts'

const THOU = INCH / 1000
const read = (text: string, units: Units) => {
  const dimension = parseDimension(text, units)
  if (!dimension.ok) throw new Error(`${text}: ${dimension.message}`)
  return dimension.value
}
const refusal = (text: string, units: Units = 'inch') => {
  const dimension = parseDimension(text, units)
  return dimension.ok ? `read as ${JSON.stringify(dimension.value)}` : `${dimension.message} | ${dimension.hint}`
}

describe('tolerances in a file in inches, in thousandths', () => {
  test.each([
    ['0.125 ±0.005', 125, [120, 130], 125],
    ['0.125±.005', 125, [120, 130], 125],
    ['0.125 +/- 0.005', 125, [120, 130], 125],
    ['0.125 +-0.005', 125, [120, 130], 125],
    ['0.125 +0.003 -0', 125, [125, 128], 126.5],
    ['.125 +.003/-.000', 125, [125, 128], 126.5],
    ['.125+.003-.000', 125, [125, 128], 126.5],
    ['.125 -0 +0.003', 125, [125, 128], 126.5],
    ['.125 -.001 -.004', 125, [121, 124], 122.5],
    ['.125 +.004 +.001', 125, [126, 129], 127.5],
    ['0.120 to 0.125', 122.5, [120, 125], 122.5],
    ['120 to 125 thou', 122.5, [120, 125], 122.5],
    ['1-3/16 ±1/64', 1187.5, [1171.875, 1203.125], 1187.5],
    ['1-3/16 +0.004 -0.002', 1187.5, [1185.5, 1191.5], 1188.5],
    ['1 -1/64 +1/64', 1000, [984.375, 1015.625], 1000],
    ['5/32 in ±0.005', 156.25, [151.25, 161.25], 156.25],
    ['0.500 ±5 thou', 500, [495, 505], 500],
    ['12 thou ±1', 12, [11, 13], 12],
    ['0.125" ±.005"', 125, [120, 130], 125],
    ['0.070 +0.004 -0', 70, [70, 74], 72],
    ['0 ±0.005', 0, [-5, 5], 0],
    ['-0.25 ±0.01', -250, [-260, -240], -250],
    ['0.010 max', 10, [0, 10], 10],
    ['.010 MAX.', 10, [0, 10], 10],
  ])('%s', (text, nominal, limits, aim) => {
    expect(read(text, 'inch')).toEqual({
      nominal: nominal * THOU,
      limits: limits.map((limit) => limit * THOU),
      aim: aim * THOU,
      text,
    })
  })

  test('without a tolerance the nominal is aimed at', () => {
    expect(read(' 5/32 ', 'inch')).toEqual({ nominal: 3_968_750_000, limits: null, aim: 3_968_750_000, text: '5/32' })
  })
})

describe('units of the parts', () => {
  test.each([
    ['4.5 mm ±0.05 mm'],
    ['4.5 ±0.05 mm'],
    ['4.45 to 4.55 mm'],
    ['4.45 mm to 4.55'],
    ['4.5 +0.05 -0.05 mm'],
    ['4.5 +0.05 mm -0.05'],
  ])('%s is all in mm, also in a file in inches', (text) => {
    expect(read(text, 'inch').limits).toEqual([4_450_000_000, 4_550_000_000])
  })
})

test('the aim is a whole number of picometers', () => {
  expect(Number.isInteger(read('0.000000001 to 0.000000002', 'mm').aim)).toBe(true)
})

describe('ISO 286 classes', () => {
  // Reference values s07_tolerances lim_*: ISO 286-1 standard tolerance grades, limits computed from them; mm.
  test.each([
    ['lim_20h11', '20 h11', 19.87, 20],
    ['lim_20h9', '20 h9', 19.948, 20],
    ['lim_50h12', '50 h12', 49.75, 50],
    ['lim_16_2h11', '16.2 h11', 16.09, 16.2],
    ['lim_22_9h12', '22.9 h12', 22.69, 22.9],
    ['lim_1_3H13', '1.3 H13', 1.3, 1.44],
    ['lim_1_1H13', '1.1 H13', 1.1, 1.24],
    ['lim_2_15H13', '2.15 H13', 2.15, 2.29],
    ['lim_4_15H13', '4.15 H13', 4.15, 4.33],
    ['lim_30H7', '30 H7', 30, 30.021],
  ])('%s: %s', (_id, text, low, high) => {
    const limits = [Math.round(low * MM), Math.round(high * MM)]
    expect(read(text, 'mm')).toEqual({
      nominal: /h/.test(text) ? limits[1] : limits[0],
      limits,
      aim: ((limits[0] as number) + (limits[1] as number)) / 2,
      text,
    })
  })

  // Reference values it9_2nd, it11_2nd: a second transcription of the same columns.
  test.each([
    [9, [25, 30, 36, 43, 52, 62, 74, 87, 100, 115, 130]],
    [11, [60, 75, 90, 110, 130, 160, 190, 220, 250, 290, 320]],
  ])('IT%i agrees with a second transcription', (grade, micrometers) => {
    expect(GRADES_MICROMETERS[grade]).toEqual(micrometers)
  })

  // Reference values din471_t_*: lower deviation in mm of the groove diameter, from ring suppliers' tables; nominal inside the range.
  test.each([
    ['din471_t_4_6', '5 h10', -0.048],
    ['din471_t_11_19', '15 h11', -0.11],
    ['din471_t_20_22', '21 h11', -0.13],
    ['din471_t_24_30', '28 h12', -0.21],
    ['din471_t_32_42', '39 h12', -0.25],
  ])('%s: %s', (_id, text, lower) => {
    const { limits, nominal } = read(text, 'mm')
    expect((limits?.[0] as number) - nominal).toBe(Math.round(lower * MM))
  })

  test('widths never fall with the size, nor with the grade', () => {
    const grades = Object.values(GRADES_MICROMETERS)
    for (const [index, grade] of grades.entries()) {
      expect(grade).toHaveLength(11)
      expect([...grade].sort((one, other) => one - other)).toEqual(grade)
      for (const [size, width] of grade.entries()) expect(width).toBeGreaterThan(grades[index - 1]?.[size] ?? 0)
    }
  })

  test('a size on a boundary belongs to the range below', () => {
    expect(read('3 H11', 'mm').limits).toEqual([3 * MM, 3.06 * MM])
    expect(read('3.001 H11', 'mm').limits).toEqual([3_001_000_000, 3_076_000_000])
    expect(read('315 h14', 'mm').limits).toEqual([313_700_000_000, 315_000_000_000])
  })

  test.each([['20h11'], ['20 mm h11'], ['20mm h11'], ['20 h 11']])(
    '%s is read, with mm also in a file in inches',
    (text) => {
      expect(read(text, text.includes('mm') ? 'inch' : 'mm').limits).toEqual([19_870_000_000, 20_000_000_000])
    },
  )

  test.each([
    [
      '20 h11',
      'inch',
      '"20 h11" has an ISO 286 class on a size in inches | write 20 mm h11 if it is in mm, else the limits as numbers',
    ],
    ['3/4 in h11', 'mm', 'on a size in inches | write the size in mm'],
    ['20 g6', 'mm', '"g6" is not a class known here: only H and h are | write the limits as numbers'],
    ['20 G6', 'mm', 'only H and h are'],
    ['20 js6', 'mm', 'only H and h are'],
    ['20 JS6', 'mm', 'only H and h are'],
    ['20 k6', 'inch', 'only H and h are'],
    ['20 h4', 'mm', 'grade 4 of "20 h4" is not in the table | use grades 5 to 14'],
    ['20 h15', 'mm', 'grade 15'],
    ['316 h11', 'mm', 'sizes over 0 to 315 mm, not for 316 mm'],
    ['0 h11', 'mm', 'not for 0 mm'],
    ['-5 h11', 'mm', 'not for -5 mm'],
  ] as const)('%s in %s is refused', (text, units, said) => {
    expect(refusal(text, units)).toContain(said)
  })
})

describe('what is refused says what would be right', () => {
  test.each([
    ['0,5', 'use a point: 0.5'],
    ['0.125 ±0,005', 'use a point: 0.005'],
    ['0.125 to 0.120', 'the wrong way around'],
    ['0.120 to 0.120', 'the same number'],
    ['0.125 ±0', 'the same number'],
    ['0.125 +0 -0', 'the same number'],
    ['0.125 ±-0.005', 'is negative'],
    ['0.125 +0.003', 'on one side only'],
    ['0.120-0.125', 'on one side only | write both sides, like 0.125 +0.003 -0, or both limits, like 0.120 to 0.125'],
    ['1-3/16 -0.005', 'on one side only'],
    ['0.010 min', 'has no upper limit'],
    ['0 max', 'leaves no room'],
    ['-0.01 max', 'leaves no room'],
    ['±0.005', 'the tolerance has no size before it'],
    ['0.125 ±', 'is not a length'],
    ['0.125 to', 'not a unit'],
    ['to 0.125', 'is not a length'],
    ['max', 'is not a length'],
    ['h11', 'is not a length'],
    ['0.125 ±0.005 ±0.001', 'is not a length'],
    ['0.1 +0.2 -0.3 +0.4', 'is not a length'],
    ['', 'there is no length here'],
  ])('%s', (text, said) => {
    expect(refusal(text)).toContain(said)
  })

  test('a text longer than any drawing has', () => {
    expect(refusal(`1 ±${'0'.repeat(90_000)}1`)).toContain('too long for a dimension')
  })
})
