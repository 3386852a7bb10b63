import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { atStopOf } from '../../src/finish/at-stop.ts'
import { toInch } from '../replay/shop.ts'

it('a mark of a compound that feeds down a flank is worth its sine in depth, where the stop corrects by it', () => {
  const { plan } = compile('examples/jobs/18-flank-feed.yaml', (path, from) => {
    const file = from === null ? path : join(dirname(from), path)
    const text = readFileSync(file, 'utf8')
    return { ok: true, file, bytes: text.replace('method: flank-feed', 'method: flank-feed\n    flank-under: 0') }
  })
  const feature = plan!.features[0]!
  if (feature.status !== 'planned') throw new Error('not planned')
  const at = atStopOf(plan!.lathe, feature.operation, feature.trace, feature.budget, feature.inspection ?? [])!
  const sine = Math.sin((feature.operation.angle * Math.PI) / 180)
  // 38 degrees with the flanks alike: the compound is swung to 71 from parallel. Marks of .001, read to half a mark.
  expect(feature.operation.angle).toBeCloseTo(71, 9)
  expect(at.bottom!.slide).toBe('compound')
  expect(toInch(at.bottom!.step)).toBeCloseTo(0.001 * sine, 9)
  expect(toInch(at.bottom!.reading)).toBeCloseTo(0.0005 * sine, 9)
})
