import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { type Load, readJob } from '../../src/job/read-job.ts'
import { INCH } from '../../src/units/length.ts'
import { fromDisk } from '../print/examples.ts'
import { jobs } from '../properties/jobs.ts'
import { told } from '../prose.ts'
import { runs } from '../runs.ts'
import { mark, metalMet } from './metal-met.ts'

const fromText =
  (text: string): Load =>
  () => ({ ok: true, file: 'job.yaml', bytes: new TextEncoder().encode(text) })

/** Everything that the feeds of a job's plan have against them: an infeed larger than asked, or a feed across into metal too high for it. */
function tooMuch(entry: string, load: Load): string[] {
  const { plan } = compile(entry, load)
  const { job } = readJob(entry, load)
  if (plan === null || job === null) return []
  return plan.features.flatMap((feature) => {
    if (feature.status !== 'planned') return []
    const { operation } = feature
    const { cutting, kind } = job.features[operation.feature]!
    const cross = mark(plan.lathe.crossFeed)
    const along = mark(plan.lathe.compound.scale)
    const stepped = operation.cusp !== undefined
    const opened =
      operation.kind !== 'roughing' &&
      (job.features[operation.feature]! as { roughTool?: string | null }).roughTool != null
    const inch = job.units === 'inch'
    const steep = kind === 'v-groove' && operation.kind !== 'roughing'
    const usual = stepped ? (inch ? 0.02 * INCH : 0.5e9) : steep ? (inch ? 0.06 * INCH : 1.5e9) : null
    const infeed = cutting.infeed ?? usual
    const deep = operation.dimensions.find(({ id }) => id === 'depth')?.aim ?? 0
    const leave = cutting.leave ?? Math.min(inch ? 0.02 * INCH : 0.5e9, deep / 4)
    // What is left on the walls is shaved off at full height; by eye as much more as the eye may be off.
    const sides = cutting.leaveSides ?? (kind === 'v-groove' ? (inch ? 0.003 * INCH : 0.08e9) : 0)
    const sliver = sides + 2 * along + (cutting.sideFeed !== 'compound' ? 2 * plan.lathe.accuracy.layout : 0)
    return metalMet(operation, feature.trace.zero, plan.lathe).flatMap(({ move, at, highest, deeper, wider }) => {
      const tell = (high: number) => `${feature.name}, move ${at}, ${move.purpose}: ${(high / INCH).toFixed(4)}`
      if (move.action === 'feed-across') {
        const limit = leave + (infeed ?? 0) + 1.01 * cross
        return wider(limit) > sliver ? [tell(highest)] : []
      }
      // What another tool has opened up is not on this grid: what a bite takes there is held by the replay.
      if (infeed === null || move.purpose !== 'rough' || opened) return []
      const least = move.slide === 'compound' ? along * Math.sin((operation.angle * Math.PI) / 180) : cross
      const most = Math.max(infeed, least)
      // A form stepped along is fed into what its other places left: on a steep side of the edge less than two marks wide, two grids tell it otherwise.
      if (stepped) return wider(most + cross / 2) > 2 * along ? [tell(highest)] : []
      return deeper > most + 1000 ? [tell(deeper)] : []
    })
  })
}

const METRIC = `lathe:
  name: Metric lathe
  units: mm
  cross-feed: { graduation: 0.02, per-turn: 2, reads: diameter, backlash: 0.16 }
  compound: { graduation: 0.05, per-turn: 3, backlash: 0.15, travel: 80 }
  spindle-speeds: [70, 110, 175, 270, 420]
`

/** Readings of the roughing infeeds of the first feature, in marks. */
const roughed = (text: string): number[] => {
  const feature = compile('job.yaml', fromText(text)).plan!.features[0]!
  if (feature.status !== 'planned') throw new Error(told(feature.reason))
  return feature.operation.moves.flatMap(({ purpose, count }) => (purpose === 'rough' ? [count!] : []))
}

describe('faults found at the lathe', () => {
  it('a heavy side cut is not passed off as taking out the floor: a sharp tool and wide fillets', () => {
    const text = `title: Roller
units: inch
part: { material: mild steel, held: chuck, diameter: 1.5, length: 6, overhang: 3, measured-diameter: 1.501 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools: { sq: { shape: square, width: 0.125, reach: 0.3 } }
features:
  - { kind: groove, name: Fillet, near: 1.75, width: .4, depth: .09, corner-radius: 3/64 ±.008, tool: sq, cusp: .002 }
`
    const { plan } = compile('job.yaml', fromText(text))
    const feature = plan!.features[0]!
    if (feature.status !== 'planned') throw new Error(told(feature.reason))
    const across = metalMet(feature.operation, feature.trace.zero, plan!.lathe).filter(
      ({ move }) => move.action === 'feed-across',
    )
    expect(across.length).toBe(1)
    // .020 is left for the finish; a mark for rounding.
    expect(across[0]!.highest).toBeLessThanOrEqual(0.0211 * INCH)
    expect(across[0]!.highest).toBeGreaterThan(0.015 * INCH)
  })
  it('the largest infeed is not exceeded by rounding to marks: 1.25 on marks of .01 a side takes 125, and on .02 takes 62', () => {
    const groove = (cross: string) => `title: Collar spool
units: mm
part: { material: brass, held: chuck, diameter: 40, length: 90, overhang: 60, measured-diameter: 39.94 }
${METRIC.replace('reads: diameter', cross)}tools: { three: { shape: square, width: 2.97, reach: 6 } }
features:
  - { kind: groove, name: Wide, center: 30, width: 14, bottom-diameter: 33, tool: three, infeed: 1.25, leave-sides: 0.2 }
`
    for (const [cross, most] of [
      ['reads: depth', 62],
      ['reads: diameter', 125],
    ] as const) {
      const counts = roughed(groove(cross))
      const steps = counts.map((count, i) => count - (i === 0 || count < counts[i - 1]! ? 0 : counts[i - 1]!))
      expect(Math.max(...steps)).toBe(most)
    }
  })
  it('the largest infeed is not exceeded down a flank: 1.5 deep by marks of .05 on the slant takes 31', () => {
    const counts = roughed(`title: Sheave
units: mm
part: { material: gray cast iron, held: chuck, diameter: 80, length: 60, overhang: 45, measured-diameter: 80.06 }
${METRIC}tools: { v34: { shape: vee, angle: 34, nose: 3, reach: 12 } }
features:
  - { kind: v-groove, name: Belt, method: flank-feed, angle: 34, depth: 9, root: 4.2, near: 14, tool: v34 }
`)
    const steps = counts.slice(1).map((count, i) => count - counts[i]!)
    // 1.5 / (.05 · cos 17°) = 31.37
    expect(Math.max(...steps)).toBe(31)
  })
})

const EXAMPLES = readdirSync('examples/jobs').filter((name) => name.endsWith('.yaml'))

describe('no feed across meets metal higher than is left and one infeed, and no infeed is larger than asked', () => {
  it.each(EXAMPLES)('%s', (name) => {
    expect(tooMuch(join('examples/jobs', name), fromDisk)).toEqual([])
  })
  it('random jobs', { timeout: 120_000 }, () => {
    fc.assert(
      fc.property(jobs, ({ text }) => {
        expect(tooMuch('job.yaml', fromText(text))).toEqual([])
      }),
      { numRuns: runs(40), seed: 20 },
    )
  })
})
