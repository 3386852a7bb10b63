import { expect, vi } from 'vitest'
import { compilePlain, sheetFor } from '../../src/compile.ts'
import { PRINTERS } from '../../src/index.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet as Replayable } from '../brute/sheet-shape.ts'

// Published figures as whole jobs: from YAML to the sheet as data, read back and replayed from that data alone.

// Whole arcs of many places take seconds on a machine that is busy with other things.
vi.setConfig({ testTimeout: 60_000 })

export type Size = {
  readonly planned: number
  readonly low: number
  readonly high: number
  readonly limits: readonly [number, number] | null
  readonly measured?: { readonly low: number; readonly high: number }
  readonly verdict: 'holds' | 'may not hold' | 'no limits given'
}

type Step = {
  readonly number: number
  readonly feature: number
  readonly action: string
  readonly slide?: 'cross-feed' | 'compound' | 'carriage'
  readonly reading?: number | null
  readonly purpose?: string
  readonly group?: string
  readonly say: string
}

export type Feature = {
  readonly status: 'planned' | 'refused'
  readonly compoundAngle: number
  readonly surface: number
  readonly spindle: {
    readonly rpm: number
    readonly wanted: number
    readonly cuttingSpeed: number
    readonly factor: number
  }
  readonly zero: { readonly fromEnd: number; readonly diameter: number }
  readonly finished: Readonly<Record<string, Size | undefined>>
  readonly inspection: readonly { readonly id: string; readonly planned: number; readonly pin: number | null }[]
  readonly notes: readonly string[]
  readonly refusal?: { readonly code: string; readonly reason: string; readonly remedy: string }
  readonly edge: Readonly<Record<string, unknown>>
}

export type Sheet = { readonly features: readonly Feature[]; readonly steps: readonly Step[] }

export const INCH_LATHE = `
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 3 }
  spindle-speeds: [4, 20, 60, 95, 150, 240, 380, 600, 950]`

export const METRIC_LATHE = `
  name: Village lathe
  units: mm
  cross-feed: { graduation: 0.02, per-turn: 4, reads: diameter, backlash: 0.16 }
  compound: { graduation: 0.01, per-turn: 2, backlash: 0.12, travel: 80 }
  spindle-speeds: [4, 20, 60, 95, 150, 240, 380, 600, 950]`

export type Job = {
  readonly units: 'inch' | 'mm'
  /** Diameter and length of a plain bar, or `steps: […]`. */
  readonly part: string
  readonly tool: string
  readonly feature: string
  readonly lathe?: string
  readonly material?: string
}

export const jobText = ({
  units,
  part,
  tool,
  feature,
  lathe,
  material = 'mild steel',
}: Job): string => `title: Table row
units: ${units}
part: { material: ${material}, held: chuck, ${part} }
lathe: ${lathe ?? (units === 'inch' ? INCH_LATHE : METRIC_LATHE)}
tools:
  bit: { ${tool} }
features:
  - { ${feature}, name: Table row, tool: bit }
`

/** Plans, prints as data, reads back. A sheet that is planned must stand before the second replay too. */
export const sheetOf = (job: Job): Sheet => {
  const bytes = jobText(job)
  const { plan, diagnostics } = compilePlain('row.yaml', (file) => ({ ok: true, file, bytes }))
  if (!plan) throw new Error(`${diagnostics.map(({ message }) => message).join('; ')}\n${bytes}`)
  const sheet: unknown = JSON.parse(PRINTERS.json(sheetFor(plan)))
  return sheet as Sheet
}

export const planned = (
  job: Job,
  { again = true }: { readonly again?: boolean } = {},
): { sheet: Sheet; feature: Feature; size: (id: string) => Size } => {
  const sheet = sheetOf(job)
  const feature = sheet.features[0]!
  if (feature.status !== 'planned') throw new Error(`${feature.refusal!.reason}; ${feature.refusal!.remedy}`)
  const problems = again ? bruteForce(sheet as unknown as Replayable).problems : []
  if (problems.length > 0) throw new Error(`the second replay: ${JSON.stringify(problems)}`)
  return { sheet, feature, size: (id) => feature.finished[id]! }
}

export const refused = (job: Job): NonNullable<Feature['refusal']> => {
  const [feature] = sheetOf(job).features
  if (!feature?.refusal) throw new Error('planned')
  return feature.refusal
}

/** Where each cut stands by the dials: compound and cross-feed as they read when the cross-feed or the compound has fed in. */
export const cuts = (sheet: Sheet, group?: string): { crossFeed: number; compound: number }[] => {
  let crossFeed = 0
  let compound = 0
  let cutting = false
  const list: { crossFeed: number; compound: number }[] = []
  for (const step of sheet.steps) {
    if (step.action === 'start') cutting = true
    if (step.action === 'zero' && step.slide === 'cross-feed') crossFeed = 0
    if (typeof step.reading !== 'number') continue
    if (step.slide === 'cross-feed') crossFeed = step.reading
    if (step.slide === 'compound') compound = step.reading
    if (cutting && step.action === 'feed-in' && (group ?? step.group) === step.group) list.push({ crossFeed, compound })
  }
  return list
}

export const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Depth of the deepest cut as the dials stand, both on depth dials or a cross-feed that reads diameter; in the job's units. */
export const deepestByDial = (sheet: Sheet, angle: number, reads: 'depth' | 'diameter'): number =>
  Math.max(
    ...cuts(sheet).map(
      ({ crossFeed, compound }) =>
        (reads === 'diameter' ? crossFeed / 2 : crossFeed) + compound * Math.sin(radians(angle)),
    ),
  )

/** The verdict must say what the worst case and the published limits say; the limits on the sheet must be the published ones. */
export const judged = (size: Size, low: number, high: number): void => {
  if (size.limits === null) throw new Error('no limits on the sheet')
  expect(size.limits[0]).toBeCloseTo(low, 9)
  expect(size.limits[1]).toBeCloseTo(high, 9)
  const counted = size.measured ?? size
  // A limit missed by a nanometer is met.
  const met = size.measured === undefined ? 1e-9 : 4e-8
  expect(size.verdict).toBe(counted.low >= low - met && counted.high <= high + met ? 'holds' : 'may not hold')
  within(size.planned, low, high)
}

export const within = (value: number, low: number, high: number): void => {
  expect(value).toBeGreaterThanOrEqual(low - 1e-9)
  expect(value).toBeLessThanOrEqual(high + 1e-9)
}
