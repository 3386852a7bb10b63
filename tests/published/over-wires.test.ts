import { describe, expect, it } from 'vitest'
import { solveV } from '../../src/features/v-groove/form.ts'
import { INCH } from '../../src/units/length.ts'
import rows from './over-wires.json' with { type: 'json' }

/** A 60° thread as a row of sharp V-grooves, each as wide as the pitch. */
const depthOfV = (threadsPerInch: number): number =>
  solveV({ halfAngle: 30, width: INCH / threadsPerInch }).depth / INCH

describe('sharp V-grooves measured over wires', () => {
  it('has the rows', () => {
    expect([rows.sharpV.length, rows.root.length]).toEqual([10, 1])
  })

  // Over two opposed wires: outside diameter − 2 × depth of the V + wire × (1 + 1/sin 30°).
  it.each(rows.sharpV)('$diameter-$threadsPerInch with $wire wires: $overWires ($source)', (row) => {
    const over = row.diameter - 2 * depthOfV(row.threadsPerInch) + row.wire * (1 + 1 / Math.sin(Math.PI / 6))
    expect(Math.abs(over - row.overWires)).toBeLessThanOrEqual(0.0001)
  })

  it.each(rows.root)('$diameter-$threadsPerInch: root diameter $rootDiameter ($source)', (row) => {
    expect(Math.abs(row.diameter - 2 * depthOfV(row.threadsPerInch) - row.rootDiameter)).toBeLessThanOrEqual(0.0001)
  })
})
