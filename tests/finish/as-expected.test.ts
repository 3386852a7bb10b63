import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { remainingFor } from '../../src/finish/remaining.ts'
import { stopOf } from '../../src/finish/stop.ts'
import { inch, toInch } from '../replay/shop.ts'

/** The cross-feed is coarser than the compound: half a mark of depth is .0007 of width. */
const PULLEY = `title: Press pulley
units: inch
part: { material: aluminum, held: chuck, overhang: 3, diameter: 2.000, measured-diameter: 2.000, length: 4 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.002, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools: { vee: { shape: vee, angle: 38, nose: 0.140, reach: 0.4, rake-ground: 0 } }
features:
  - { kind: v-groove, name: V, angle: 38 ±1, depth: 0.2 ±0.008, root: 0.150 ±0.008, near: 1, tool: vee }
`

it('a V whose width is just what its bottom makes has the tool as stated: it is fed across as far as written', () => {
  const bytes = new TextEncoder().encode(PULLEY)
  const { plan } = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
  const feature = plan!.features[0]!
  if (feature.status !== 'planned') throw new Error('not planned')
  const { operation, trace, before } = feature
  const stop = stopOf(operation, trace)!
  const shop = { lathe: plan!.lathe, setup: plan!.setup, progress: before, operation, stop }
  const remaining = (width: number | null) => {
    const found = remainingFor(shop, { bottom: stop.expected - inch(0.0016), width, outside: null })
    if (!found.ok) throw new Error(found.why)
    return found
  }
  const plain = remaining(null)
  const measured = remaining(plain.findings.expectedWidth)
  expect(measured.findings.wider).toBe(0)
  expect([measured.deeper, measured.across]).toEqual([0, 0])
  expect(toInch(measured.trace.sizes[0]!.surely)).toBeCloseTo(toInch(plain.trace.sizes[0]!.surely), 9)
})
