import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'
import { FILES, jobPath } from '../judge/tried.ts'

const finish = async (job: string, feature: string, bottom: string, width?: string) => {
  const rest = width === undefined ? [] : ['--width', width]
  const args = ['--feature', feature, '--bottom-diameter', bottom, ...rest, '--format', 'json']
  const { status, out, err } = await runIn({ files: FILES }, 'finish', jobPath(job), ...args)
  return { status, err, feature: JSON.parse(out).features[0] }
}
const textOf = async (job: string) => (await runIn({ files: FILES }, 'sheet', jobPath(job))).out.replace(/\s+/g, ' ')

test('a V that measures a little wide at the stop is finished where its limits allow it', async () => {
  // 9.364 is expected at that bottom: the nose is .036 wider, and the root 4.24, with limits of 3.90 to 4.50.
  const { status, feature } = await finish('flank', 'Belt groove', '63.18', '9.40')
  expect(status).toBe(0)
  expect(feature.finished.root).toMatchObject({ verdict: 'holds', limits: [3.9, 4.5] })
  expect(feature.finished.root.planned).toBeCloseTo(4.24, 2)
  const sheet = JSON.parse((await runIn({ files: FILES }, 'sheet', jobPath('flank'), '--format', 'json')).out)
  // 9.422 and 62.989 are rounded, so that .0364 is good to half a thousandth of a millimeter each.
  expect(Math.abs(feature.edge.nose - sheet.features[0].edge.nose - 0.0364)).toBeLessThan(0.0009)
  const tilted = await finish('tilted', 'V', '1.733', '0.177')
  expect(tilted.status).toBe(0)
  expect(tilted.feature.finished.width).toMatchObject({ verdict: 'holds' })
})

test('where a limit is missed the size is named, and by how much', async () => {
  const { status, feature } = await finish('flank', 'Belt groove', '63.18', '9.80')
  expect(status).toBe(1)
  // At 63.18 instead of 62.989 the V is 2 · .0955 · tan 17° = .058 narrower than 9.422; 9.80 − 9.364 wider than 4.207: 4.643, over 4.50.
  expect(feature.refusal.reason).toMatch(/flat at the root inside its limits.*gives 4\.64\d+, 0\.14\d+ beyond a limit$/)
})

test('without a width it is said what to give', async () => {
  const { status, feature } = await finish('flank', 'Belt groove', '61.00')
  expect(status).toBe(1)
  expect(feature.refusal.remedy).toContain('of the width it cannot be said, give --width as well')
})

test('metal left in a V: fed down its flank by the bottom, held by its width by that, each with what is past saving', async () => {
  // 80.06 − 2 · (8.78 and 9.28) = 62.50 and 61.50; the plunge by a depth dial: a mark of .02 is .04 on the diameter.
  expect(await textOf('flank')).toMatch(
    /STILL TO CUT if the bottom is over 62\.50: steps \d+ to \d+ again, (?:steps [\d, ]+ and \d+|every infeed from step \d+ to \d+): 1 mark deeper than before for every 0\.04 .*under 61\.50 it is scrap/,
  )
  // .001 of depth opens the V by 2 · .001 · tan 30°.
  expect(await textOf('tilted')).toMatch(
    /STILL TO CUT if the width is under \.1914: .*: 1 mark deeper than before for every \.0012 .*over \.2074 it is scrap/,
  )
})

test('check names a size as the sheet does', async () => {
  const job = FILES[jobPath('swung')]!.replace(/ {4}depth: .*/, '    bottom-diameter: 0.847 +0.003 -0.003')
  const { out } = await runIn({ files: { ...FILES, [jobPath('swung')]: job } }, 'check', jobPath('swung'))
  expect(out).toMatch(/may miss tolerance: Thread runout \(.*bottom diameter.*\)/)
})
