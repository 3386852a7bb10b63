import { describe, expect, it } from 'vitest'
import { compile, PRINTERS, sheetFor } from '../../src/index.ts'
import rows from './sheave-faces.json' with { type: 'json' }
import { METRIC_LATHE, radians, type Sheet, within } from './whole-job.ts'

it('has the rows', () => {
  expect([rows.examples.length, rows.sections.length]).toEqual([2, 10])
})

type Face = {
  angle: number
  outside: number
  root: number
  datum: number
  datumDiameter: number
  pitch: number
  edge: number
}

/** Both grooves of a sheave as one job: the middles stand an edge, and an edge and a pitch, from its face. */
const faced = (row: Face): { sheet: Sheet; top: number } => {
  const depth = (row.outside - row.root) / 2
  const half = Math.tan(radians(row.angle / 2))
  const above = (row.outside - row.datumDiameter) / 2
  const nose = 0.8 * (row.datum - 2 * (depth - above) * half)
  const groove = (center: number) =>
    `  - { kind: v-groove, angle: ${row.angle}, width: ${row.datum}, width-at: ${row.datumDiameter}, bottom-diameter: ${row.root} ±0.3, center: ${center}, tool: bit }`
  const bytes = `title: Sheave
units: mm
part: { material: cast iron, held: chuck, diameter: ${row.outside}, length: 200, overhang: 160 }
lathe: ${METRIC_LATHE}
tools:
  bit: { shape: vee, angle: ${row.angle}, nose: ${nose.toFixed(2)}, reach: ${(depth + 3).toFixed(1)} }
features:
${groove(row.edge)}
${groove(row.edge + row.pitch)}
`
  const { plan, diagnostics } = compile('row.yaml', (file) => ({ ok: true, file, bytes }))
  if (!plan) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  const sheet: unknown = JSON.parse(PRINTERS.json(sheetFor(plan)))
  return { sheet: sheet as Sheet, top: row.datum + 2 * above * half }
}

const checked = (row: Face): { faceWidth: number } => {
  const { sheet, top } = faced(row)
  expect(sheet.features.map(({ status }) => status)).toEqual(['planned', 'planned'])
  const near = sheet.features.map(({ finished }) => finished.near!.planned)
  // A mark of the compound on each flank.
  within(near[1]! - near[0]!, row.pitch - 0.02, row.pitch + 0.02)
  for (const { finished } of sheet.features) {
    within(finished.bottomDiameter!.planned, row.root - 0.02, row.root + 0.02)
    expect(finished.bottomDiameter!.limits![0]).toBeCloseTo(row.root - 0.3, 9)
  }
  const first = near[0]! + top / 2
  const last = near[1]! + top / 2
  within(first, row.edge - 0.03, row.edge + 0.03)
  return { faceWidth: last + row.edge }
}

describe('whole sheaves of DIN 2211', () => {
  it.each(rows.examples)(
    '$section on $datumDiameter, $grooves grooves: face $faceWidth, root $root ($source)',
    (row) => {
      within(checked(row).faceWidth, row.faceWidth - 0.03, row.faceWidth + 0.03)
    },
  )

  // (n − 1)·e + 2·f for two grooves.
  it.each(rows.sections)('$section: pitch $pitch, edge $edge ($source)', (row) => {
    const outside = row.datumDiameter + 2 * row.above
    const face = checked({ ...row, outside, root: outside - 2 * row.depth }).faceWidth
    within(face, row.pitch + 2 * row.edge - 0.03, row.pitch + 2 * row.edge + 0.03)
  })
})
