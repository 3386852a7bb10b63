import type { Diagnostic } from '../../src/diagnostics/diagnostic.ts'
import type { Job } from '../../src/job/job.ts'
import { type Load, type ReadJob, readJob } from '../../src/job/read-job.ts'

/** Files of one invented workshop, by name. */
export type Shop = Readonly<Record<string, string>>

export const loadFrom =
  (shop: Shop): Load =>
  (path) => {
    const bytes = shop[path]
    return bytes === undefined
      ? { ok: false, message: `${path} cannot be read`, hint: 'look at the name' }
      : { ok: true, file: path, bytes }
  }

export const read = (shop: Shop): ReadJob => readJob('job.yaml', loadFrom(shop))

/** The job of a shop without mistakes; a mistake is thrown with its text. */
export const readGood = (shop: Shop): Job => {
  const { job, ...rest } = read(shop)
  if (!job) throw new Error(said({ job, ...rest }).join('\n'))
  return job
}

/** Every problem as "file:line:column message | hint", in the order of the places. */
export const said = ({ diagnostics, sources }: ReadJob): string[] => {
  const files = [...sources.keys()]
  const placed = diagnostics.map((problem) => ({ problem, span: spanOf(problem, sources) }))
  placed.sort(
    (a, b) =>
      files.indexOf(a.problem.origin.file) - files.indexOf(b.problem.origin.file) ||
      a.span.line - b.span.line ||
      a.span.column - b.span.column,
  )
  return placed.map(
    ({ problem, span }) =>
      `${problem.origin.file}:${span.line}:${span.column} ${problem.message}${problem.hint ? ` | ${problem.hint}` : ''}`,
  )
}

const spanOf = (problem: Diagnostic, sources: ReadJob['sources']): { line: number; column: number } =>
  problem.span ??
  sources.get(problem.origin.file)?.locate(problem.origin.path, problem.at ?? 'value') ?? { line: 0, column: 0 }

export const LATHE = `name: Bench lathe
units: inch
cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
carriage: { graduation: 0.010, per-turn: 0.800, backlash: 0.030 }
spindle-speeds: [60, 95, 150, 240, 380, 600, 950]
`

export const TOOLBOX = `neck: { shape: square, width: 0.148 ±0.0005, reach: 0.125, blank: 5/16, holder-angle: 14 1/2 deg, rake-ground: 0 }
oil: { shape: round, radius: 3/32, reach: 0.1 }
sheave: { shape: vee, angle: 38, nose: 0.140, reach: 0.45 }
quarter: { shape: corner, radius: 1/8 }
`

export const JOB = `title: Cider press screw
units: inch
part:
  material: mild steel
  overhang: 4
  steps:
    - { name: pilot, diameter: 0.875, length: 2 }
    - { name: body, diameter: 1.500, length: 3, measured-diameter: 1.4985 }
lathe: lathe.yaml
tools: toolbox.yaml
features:
  - kind: groove
    name: Thread relief
    near: 1.125
    width: 5/32 ±0.005
    depth: 0.070 +0.004 -0
    corner-radius: 0.010 max
    tool: neck
  - kind: radius
    shape: concave
    center: 1 1/2
    radius: 3/32
    width: 5/32
  - kind: radius
    shape: corner
    corner-of: body
    radius: 1/8
  - kind: v-groove
    from: body
    near: 1
    angle: 38
    width: 0.500
    depth: 0.400
`

export const SHOP: Shop = { 'job.yaml': JOB, 'lathe.yaml': LATHE, 'toolbox.yaml': TOOLBOX }

/** The shop with one text replaced in one file; the text must stand there. */
export const change = (file: keyof typeof SHOP & string, from: string, to: string, shop: Shop = SHOP): Shop => {
  const text = shop[file]
  if (!text?.includes(from)) throw new Error(`${file} has no "${from}"`)
  return { ...shop, [file]: text.replace(from, () => to) }
}
