import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import rings from './retaining-rings.json' with { type: 'json' }
import { cuts, type Job, jobText, judged, type Sheet, sheetOf, within } from './whole-job.ts'

// A ring groove is measured at the stop and is not what was expected: what remains must still end within the limits of the standard.

const rows = rings.din471.filter(({ shaft }) => [6, 8, 10, 12, 15, 18, 20, 22, 25, 30, 35, 40].includes(shaft))

const job = (row: (typeof rows)[number]): Job => ({
  units: 'mm',
  part: `diameter: ${row.shaft}, length: 60`,
  tool: `shape: square, width: ${row.width}, reach: ${((row.shaft - row.groove) / 2 + 1).toFixed(2)}`,
  feature: `kind: groove, near: 10, width: ${row.width} H13, bottom-diameter: ${row.groove} +0 ${row.lower}`,
})

const finish = async (row: (typeof rows)[number], bottom: number) => {
  const outcome = await runIn(
    { files: { 'job.yaml': jobText(job(row)) } },
    ...['finish', 'job.yaml', '--feature', 'Table row', '--bottom-diameter', bottom.toFixed(3), '--format', 'json'],
  )
  return { status: outcome.status, sheet: JSON.parse(outcome.out || '{}') as Sheet }
}

/** Deepest reading of the cross-feed, which reads diameter here. */
const deepest = (sheet: Sheet, group?: string): number =>
  Math.max(...cuts(sheet, group).map(({ crossFeed }) => crossFeed))

const remaining = (sheet: Sheet): number =>
  Math.max(
    ...sheet.steps.flatMap(({ action, slide, reading }) =>
      action === 'feed-in' && slide === 'cross-feed' ? [reading!] : [],
    ),
  )

it('has the rows', () => {
  expect(rows.length).toBe(12)
})

describe('finishing a ring groove by what it measures', () => {
  it.each(rows)('DIN 471, shaft $shaft: groove $groove, $lower ($source)', async (row) => {
    const sheet = sheetOf(job(row))
    const roughed = row.shaft - deepest(sheet, 'rough')
    for (const off of [-0.04, -0.02, 0, 0.02, 0.04]) {
      const { status, sheet: rest } = await finish(row, roughed + off)
      expect(status).toBe(0)
      // The zero stands as far off as the bottom measures: the reading is as much larger, and the true bottom is what the standard wants.
      within(remaining(rest), deepest(sheet) + off - 0.0201, deepest(sheet) + off + 0.0201)
      within(row.shaft + off - remaining(rest), row.groove + row.lower, row.groove)
      judged(rest.features[0]!.finished.bottomDiameter!, row.groove + row.lower, row.groove)
    }
  })

  it.each(rows)(
    'DIN 471, shaft $shaft: a bottom under the least of the standard is past saving ($source)',
    async (row) => {
      expect((await finish(row, row.groove + row.lower - 0.02)).status).toBe(1)
    },
  )
})
