import { describe, expect, it } from 'vitest'
import { rakeFor } from '../../src/handbook/grinding.ts'
import { faceLength, squareToFront } from '../../src/tools/grind/form.ts'
import { INCH } from '../../src/units/length.ts'
import rows from './form-tools.json' with { type: 'json' }

/** The rows neglect the curve of the work: a floor so large that it is flat. */
const FLAT = 1e5 * INCH

describe('depth of a form tool, square to the front', () => {
  it('has the rows', () => {
    expect([rows.cosines.length, rows.depths.length, rows.angles.length]).toEqual([11, 7, 8])
  })

  it.each(rows.cosines)('$clearance°: $factor ($source)', (row) => {
    expect(Math.abs(squareToFront(INCH, row.clearance, 0) / INCH - row.factor)).toBeLessThanOrEqual(row.tol)
  })

  it.each(rows.depths)('$depth with $clearance° and $rake°: $square ($source)', (row) => {
    const face = faceLength(row.depth * INCH, FLAT, row.rake)
    expect(Math.abs(squareToFront(face, row.clearance, row.rake) / INCH - row.square)).toBeLessThanOrEqual(row.tol)
  })
})

/** Names of the textbook's table, as the table of cutting speeds has them. */
const NAMES: Readonly<Record<string, string>> = {
  'machine steel': 'mild steel',
  'tool steel (unhardened)': 'tool steel',
}

describe('back rake of turning tools', () => {
  it.each(rows.angles)('$work: $backRake ($source)', ({ work, backRake }) => {
    const [low, high] = Array.isArray(backRake) ? backRake : [backRake, backRake]
    expect(rakeFor(NAMES[work] ?? work).turning).toEqual([low, high])
  })

  it('gives grooving tools none in brass and iron, up to 2° in steel, and leaves soft metals open', () => {
    expect(rakeFor('brass').forming).toEqual([0, 0])
    expect(rakeFor('cast iron').forming).toEqual([0, 0])
    expect(rakeFor('1018').forming).toEqual([0, 2])
    expect(rakeFor('aluminium').forming).toBeNull()
  })

  it('has no row for what no table names', () => {
    expect(rakeFor('walnut')).toMatchObject({ forming: [0, 0], turning: null, grade: null })
  })
})
