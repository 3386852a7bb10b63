import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bruteForce } from '../brute/brute-force.ts'
import { runIn } from '../cli/world.ts'
import { runs } from '../runs.ts'

/**
 * Wide forms that a square tool, or a steeper V, opens up in steps before their own tool finishes them. Expected by plane trigonometry, from the job alone: where the
 * flank is at a depth, and where the corners of the tool are.
 */
type Drawn = {
  readonly kind: 'v-groove' | 'radius'
  readonly half: number
  readonly depth: number
  readonly root: number
  readonly under: number
  readonly opener: number
  /** Included angle of a V tool that opens it up, degrees; null: a square tool does. */
  readonly steeper: number | null
  readonly mark: number
  readonly reads: 'depth' | 'diameter'
  readonly side: 'compound' | 'carriage'
  readonly method: 'plunge' | 'flank-feed'
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  kind: fc.constantFrom('v-groove', 'v-groove', 'radius'),
  half: fc.constantFrom(14.5, 18, 19, 20, 30, 45),
  depth: fc.integer({ min: 120, max: 450 }).map((n) => n / 1000),
  root: fc.integer({ min: 0, max: 200 }).map((n) => n / 1000),
  under: fc.integer({ min: 0, max: 40 }).map((n) => n / 1000),
  opener: fc.integer({ min: 40, max: 200 }).map((n) => n / 1000),
  steeper: fc.constantFrom(null, null, 15, 30, 36),
  mark: fc.constantFrom(0.0005, 0.001, 0.002),
  reads: fc.constantFrom('depth', 'diameter'),
  side: fc.constantFrom('compound', 'compound', 'carriage'),
  method: fc.constantFrom('plunge', 'plunge', 'plunge', 'flank-feed'),
})

const NEAR = 1.5
const DIAMETER = 4

const widthOf = ({ kind, half, depth, root }: Drawn): number =>
  kind === 'v-groove'
    ? root + 2 * depth * Math.tan((half * Math.PI) / 180)
    : 2 * Math.sqrt(RADIUS ** 2 - (RADIUS - depth) ** 2)
const RADIUS = 0.5

const jobOf = (one: Drawn): string => {
  const { kind, half, depth, root, under, opener, mark, reads, side, method, steeper } = one
  const form =
    kind === 'v-groove'
      ? `kind: v-groove, angle: ${2 * half}, depth: ${depth}, root: ${root}, method: ${method}`
      : `kind: radius, shape: concave, radius: ${RADIUS}, depth: ${depth}`
  const nose = Math.max(0, root - under)
  const tool =
    kind === 'v-groove'
      ? `shape: vee, angle: ${2 * half}, nose: ${nose.toFixed(3)}, reach: 0.7`
      : `shape: round, radius: ${RADIUS}, reach: 0.7`
  return [
    'title: Wide forms of the press',
    'units: inch',
    `part: { material: mild steel, held: chuck and center, diameter: ${DIAMETER}, measured-diameter: ${DIAMETER}, length: 6, overhang: 5 }`,
    'lathe:',
    '  name: Long shed lathe',
    '  units: inch',
    `  cross-feed: { graduation: ${mark}, per-turn: 0.100, backlash: 0.006, reads: ${reads} }`,
    `  compound: { graduation: ${mark}, per-turn: 0.100, backlash: 0.004, angle: 0, travel: 3 }`,
    '  carriage: { graduation: 0.001, per-turn: 0.200, backlash: 0.010 }',
    '  spindle-speeds: [20, 45, 70, 110]',
    'tools:',
    `  former: { ${tool} }`,
    steeper === null
      ? `  opener: { shape: square, width: ${opener}, reach: 0.7 }`
      : `  opener: { shape: vee, angle: ${steeper}, nose: ${opener}, reach: 0.7 }`,
    'features:',
    `  - { ${form}, name: Wide form, near: ${NEAR}, tool: former, rough-tool: opener, side-feed: ${side} }`,
    '',
  ].join('\n')
}

type Step = {
  readonly feature: number
  readonly action: string
  readonly slide?: string
  readonly reading?: number | null
}

/** Depth of the drawn form at a place. */
const formAt = (one: Drawn, z: number): number => {
  const width = widthOf(one)
  const x = Math.min(z - NEAR, NEAR + width - z)
  if (x <= 0) return 0
  if (one.kind === 'radius') {
    const along = z - NEAR - width / 2
    return Math.sqrt(RADIUS ** 2 - along ** 2) - (RADIUS - one.depth)
  }
  return Math.min(one.depth, x / Math.tan((one.half * Math.PI) / 180))
}

/** Place along the work and depth of every plunge of the steps, from the readings on the sheet. */
const plunges = (steps: readonly Step[], { reads }: Drawn): { z: number; d: number }[] => {
  let along = 0
  return steps.flatMap(({ feature, action, slide, reading }) => {
    if (feature !== 0 || typeof reading !== 'number') return []
    if (slide === 'compound' || slide === 'carriage') along = action === 'zero' ? 0 : reading
    if (action !== 'feed-in') return []
    return [{ z: NEAR + along, d: reads === 'diameter' ? reading / 2 : reading }]
  })
}

const LEAVES = 0.015

describe('a wide form that another tool opens up in steps', () => {
  it('is left metal on its flanks everywhere, is finished right, and its table and the brute force agree', {
    timeout: 300_000,
  }, async () => {
    let planned = 0
    let byVees = 0
    const refused = new Set<string>()
    await fc.assert(
      fc.asyncProperty(drawn, async (one) => {
        const files = { 'job.yaml': jobOf(one) }
        const { status, out, err } = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'json')
        if (status !== 0) {
          expect(status).toBe(1)
          expect(err).toContain('remedy: ')
          refused.add(/cannot be cut as asked: Wide form: (.{0,30})/.exec(err)?.[1] ?? err)
          return
        }
        planned++
        const sheet = JSON.parse(out)
        expect(sheet.features.map(({ kind }: { kind: string }) => kind)[0]).toBe('roughing')
        const cuts = plunges(sheet.steps, one)
        expect(cuts.length).toBeGreaterThan(0)
        if (one.steeper !== null) byVees++
        // The corners of the nose, and of a V its flanks up to the surface.
        const run = Math.tan((((one.steeper ?? 0) / 2) * Math.PI) / 180)
        for (const { z, d } of cuts)
          for (let up = 0; up < d; up += one.steeper === null ? d : d / 10)
            for (const corner of [z - up * run, z + one.opener + up * run])
              for (const side of [-LEAVES, LEAVES]) expect(formAt(one, corner + side)).toBeGreaterThan(d - up - 1e-6)
        const deepest = Math.max(...cuts.map(({ d }) => d))
        expect(deepest).toBeGreaterThan(one.depth / 3)
        expect(bruteForce(sheet).problems).toEqual([])
        const table = await runIn({ files }, 'sheet', 'job.yaml', '--format', 'csv')
        const replayed = await runIn({ files: { ...files, 'moves.csv': table.out } }, 'replay', 'job.yaml', 'moves.csv')
        expect([replayed.status, replayed.out.includes('Proven')]).toEqual([0, true])
      }),
      { numRuns: runs(40), seed: 23 },
    )
    expect(planned).toBeGreaterThan(15)
    expect(byVees).toBeGreaterThan(3)
    expect(refused.size).toBeGreaterThan(0)
  })
})
