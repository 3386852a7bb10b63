import { describe, expect, it } from 'vitest'
import { MM } from '../../src/units/length.ts'
import { parseDimension } from '../../src/units/parse-dimension.ts'
import rows from './iso286.json' with { type: 'json' }
import rings from './retaining-rings.json' with { type: 'json' }

const MICROMETER = MM / 1000

/** Limits in whole micrometers, as "20 h11" gives them. */
const limits = (text: string): [number, number] => {
  const read = parseDimension(text, 'mm')
  if (!read.ok || !read.value.limits) throw new Error(`${text}: ${read.ok ? 'no limits' : read.message}`)
  return [read.value.limits[0] / MICROMETER, read.value.limits[1] / MICROMETER]
}

// Grades: ISO 286-1, standard tolerance grades IT5 to IT14 to 315 mm, as transcribed with grade B.
describe('ISO 286 grades', () => {
  it('has the rows', () => {
    expect([rows.grades.length, rows.second.length, rows.limits.length]).toEqual([110, 2, 10])
  })

  it('gives every grade at both ends of every range of sizes, on h and on H', () => {
    let checked = 0
    for (const { grade, over, to, micrometers } of rows.grades) {
      for (const size of [over + 0.001, to]) {
        const nominal = Math.round(size * 1000)
        expect(limits(`${size} h${grade}`), `${size} h${grade}`).toEqual([nominal - micrometers, nominal])
        expect(limits(`${size} H${grade}`), `${size} H${grade}`).toEqual([nominal, nominal + micrometers])
        checked++
      }
    }
    expect(checked).toBe(220)
  })

  it('agrees with the second transcription of IT9 and IT11', () => {
    const upTo = [...new Set(rows.grades.map((row) => row.to))].sort((a, b) => a - b)
    for (const { it: grade, micrometers } of rows.second) {
      const ours = upTo.map((size) => limits(`${size} H${grade}`)[1] - size * 1000)
      expect(ours).toEqual(micrometers)
    }
  })

  // Worked from the grades that were read.
  it.each(rows.limits)('$nominal $class: $low to $high', (row) => {
    expect(limits(`${row.nominal} ${row.class}`)).toEqual([Math.round(row.low * 1000), Math.round(row.high * 1000)])
  })
})

describe('DIN 471 groove diameters', () => {
  it('has the rows', () => {
    expect(rings.din471.length).toBe(38)
  })

  // The table rounds h10 over 6 to 10 mm, 0.058, to 0.06; its other deviations are whole.
  it.each(rings.din471)('shaft $shaft: groove $groove $class, $lower ($source)', (row) => {
    const [low, high] = limits(`${row.groove} ${row.class}`)
    const digits = String(row.lower).split('.')[1]!.length
    expect(high).toBe(Math.round(row.groove * 1000))
    expect(((low - high) / 1000).toFixed(digits)).toBe(row.lower.toFixed(digits))
  })
})
