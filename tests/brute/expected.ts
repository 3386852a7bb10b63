import type { Drawn, DrawnConcave, DrawnGroove, DrawnVee } from '../properties/drawn.ts'
import type { BruteFeature, BruteRun } from './brute-force.ts'
import { dialOf, travelPerUnit } from './screws.ts'
import type { Edge, Sheet, SheetFeature } from './sheet-shape.ts'

/** A form as depth below the surface along the work, with the stretch over which it is deepest. */
type Wanted = {
  depth: (z: number) => number
  from: number
  to: number
  peakFrom: number
  peakTo: number
  leaves: number
  /** What is deepest is a floor, not a place. */
  level?: boolean
}

type Box = { along: number; deep: number }

/** Compares what the brute force cut with what the numbers of the drawing ask for, node by node. */
export function formProblems(sheet: Sheet, brute: BruteFeature, drawn: Drawn): string[] {
  const feature = sheet.features[brute.index]!
  const drawnForm = wantedForm(feature, drawn, sheet.units)
  const wanted = { ...drawnForm, leaves: leavesBy(feature, drawn, drawnForm.leaves) }
  const box = boxOf(sheet, brute, feature)
  const runs = brute.runs.filter((run, at) => at === 0 || run.differs)
  const found = runs.flatMap((run) => compare(brute, run, wanted, box, drawn))
  return [...new Set(found)].slice(0, 3).map((problem) => `${drawn.name}: ${problem}`)
}

/** A ridge is no taller than asked for; where the job asks for none, marks far apart may leave more than the shop's default: no more than the sheet says. */
function leavesBy({ notes }: SheetFeature, drawn: Drawn, leaves: number): number {
  if (leaves === 0 || drawn.cusp !== null) return leaves
  const said = /ridges are at most ([\d.]+) out of the form/.exec((notes ?? []).join(' '))?.[1]
  if (said === undefined) return leaves
  const lastPlace = 10 ** -(said.split('.')[1]?.length ?? 0)
  return Math.max(leaves, Number(said) + lastPlace / 2)
}

function wantedForm(feature: SheetFeature, drawn: Drawn, units: 'inch' | 'mm'): Wanted {
  const edge = feature.edge!
  const fine = units === 'inch' ? 0.0005 : 0.01
  if (drawn.kind === 'groove') {
    const width = Math.max(drawn.width, Math.min(edge.width ?? 0, drawn.widest))
    return filleted(pit(drawn.near, width, 0, drawn.depth), drawn, edge.radius ?? 0, units)
  }
  if (drawn.kind === 'concave') {
    const { center } = drawn
    const { radius, depth } = ownRadius(drawn, edge)
    const half = Math.sqrt(Math.max(0, 2 * radius * depth - depth * depth))
    const curve = (z: number): number =>
      Math.max(0, depth - radius + Math.sqrt(Math.max(0, radius ** 2 - (z - center) ** 2)))
    const at = { from: center - half, to: center + half, peakFrom: center, peakTo: center }
    return { ...at, depth: (z) => (Math.abs(z - center) > half ? 0 : curve(z)), leaves: drawn.cusp ?? fine }
  }
  if (drawn.kind === 'corner') {
    const { radius, start } = drawn
    const curve = (z: number): number =>
      radius - Math.sqrt(Math.max(0, radius ** 2 - (radius - Math.max(0, z - start)) ** 2))
    const coarse = units === 'inch' ? 0.003 : 0.08
    const leaves = edge.shape === 'corner' ? 0 : (drawn.cusp ?? (edge.shape === 'square' ? coarse : fine))
    const at = { from: start, to: start + radius, peakFrom: start, peakTo: start }
    return { ...at, depth: (z) => (z > start + radius ? 0 : curve(z)), leaves }
  }
  return wantedVee(drawn, edge.nose ?? 0, ownSlope(drawn, edge))
}

/** A tool of an angle inside the limits leaves its own. */
function ownSlope({ slope, within }: DrawnVee, { angle }: Edge): number {
  const wanted = (Math.atan(slope) * 360) / Math.PI
  const own = angle !== null && within !== undefined && within > 0 && Math.abs(angle - wanted) <= within
  return own ? Math.tan((angle * Math.PI) / 360) : slope
}

/** A tool of a radius inside the limits is plunged, and leaves its own. */
function ownRadius(drawn: DrawnConcave, { radius }: Edge): { radius: number; depth: number } {
  if (radius === null || radius < drawn.low || radius > drawn.high || drawn.high === drawn.low) return drawn
  const { chord } = drawn
  const depth = chord === null ? drawn.depth : radius - Math.sqrt(Math.max(0, radius ** 2 - chord ** 2 / 4))
  return { radius, depth }
}

/**
 * A V drawn sharp keeps the size that was given; the tool's flat remains at the bottom. The V is drawn on the nominal
 * diameter: on smaller stock less of it is left.
 */
function wantedVee(drawn: DrawnVee, nose: number, slope: number): Wanted {
  const lower = (drawn.nominal - drawn.measured) / 2
  const sharp = drawn.root < nose
  const width = sharp && drawn.holds === 'depth' ? nose + 2 * drawn.depth * slope : drawn.width
  const full = drawn.byRoot ? (drawn.width - drawn.root) / 2 / slope : drawn.depth
  const depth = sharp && drawn.holds !== 'depth' ? (drawn.width - nose) / 2 / slope : full
  return pit(drawn.near + lower * slope, width - 2 * lower * slope, slope, depth - lower)
}

/** Fillets as drawn, or the tool's own where the drawing allows them: it is stepped along where they are sharper than that. */
function filleted(pit: Wanted, { corner, depth, cusp }: DrawnGroove, own: number, units: 'inch' | 'mm'): Wanted {
  const stepped = corner !== null && own < corner.low
  const radius = stepped ? corner.aim : own
  const curve = (z: number): number => {
    const into = Math.max(0, radius - Math.min(z - pit.from, pit.to - z))
    return z < pit.from || z > pit.to ? 0 : depth - radius + Math.sqrt(Math.max(0, radius ** 2 - into ** 2))
  }
  const [fine, coarse] = units === 'inch' ? [0.0005, 0.003] : [0.01, 0.08]
  const leaves = stepped ? (cusp ?? (own > 0 ? fine : coarse)) : 0
  return { ...pit, depth: curve, peakFrom: pit.from + radius, peakTo: pit.to - radius, leaves, level: true }
}

function pit(near: number, width: number, slope: number, depth: number): Wanted {
  const far = near + width
  const flank = (z: number): number => (slope === 0 ? depth : Math.min(z - near, far - z) / slope)
  const curve = (z: number): number => (z < near || z > far ? 0 : Math.min(depth, flank(z)))
  return { depth: curve, from: near, to: far, peakFrom: near + depth * slope, peakTo: far - depth * slope, leaves: 0 }
}

/** Half of what can be read on each dial, as travel, and a cell of the grid. */
function boxOf(sheet: Sheet, brute: BruteFeature, feature: SheetFeature): Box {
  const half = (slide: 'cross-feed' | 'compound' | 'carriage'): number => {
    const dial = dialOf(sheet, slide)
    return dial === null ? 0 : (dial.graduation * (dial.readTo ?? 1) * travelPerUnit(sheet, dial)) / 2
  }
  const angle = ((feature.compoundAngle ?? 0) * Math.PI) / 180
  const carriage = byCarriage(sheet, brute.index)
  return {
    along: half('compound') * Math.cos(angle) + (carriage ? half('carriage') : 0) + brute.step,
    deep: half('cross-feed') + half('compound') * Math.abs(Math.sin(angle)) + 2e-5,
  }
}

/** Does the carriage place the tool by what its dial shows? */
function byCarriage(sheet: Sheet, index: number): boolean {
  return sheet.steps.some(
    ({ feature, slide, reading }) => feature === index && slide === 'carriage' && typeof reading === 'number',
  )
}

function compare(brute: BruteFeature, run: BruteRun, wanted: Wanted, box: Box, drawn: Drawn): string[] {
  const stand = (wanted.peakFrom + wanted.peakTo) / 2
  const surface = drawn.measured / 2
  let [over, short] = ['', '']
  const margin = 4 * box.along + wanted.leaves
  const first = Math.max(
    0,
    Math.floor((Math.min(wanted.from - margin, placeOf(brute, run.first)) - brute.offset) / brute.step),
  )
  const last = Math.min(
    run.profile.length - 1,
    Math.max(run.last, Math.ceil((wanted.to + margin - brute.offset) / brute.step)),
  )
  for (let i = first; i <= last; i++) {
    const z = placeOf(brute, i)
    const elsewhere = Math.abs(run.raw[i]! - surface) > 1e-6
    const mine = i >= run.first && i <= run.last
    if (elsewhere && !mine) continue
    const cut = run.raw[i]! - run.profile[i]!
    const most = elsewhere ? 0 : mostWithin(wanted, stand, z, box.along) + box.deep
    if (mine && cut > most + 1e-9) over = worst(over, z, cut, most, 'more')
    // The floor between two fillets is fed across: there no ridge is left.
    const leaves =
      wanted.level === true && z - 2 * box.along > wanted.peakFrom && z + 2 * box.along < wanted.peakTo
        ? 0
        : wanted.leaves
    const least = elsewhere ? 0 : leastWithin(wanted, z, box.along + leaves) - box.deep - leaves
    if (cut < least - 1e-9) short = worst(short, z, cut, least, 'less')
  }
  return [over, short].filter((text) => text !== '')
}

function placeOf(brute: BruteFeature, node: number): number {
  return Number.isFinite(node) ? brute.offset + node * brute.step : Number.POSITIVE_INFINITY
}

/** Keeps the finding that is furthest off. */
function worst(before: string, z: number, cut: number, limit: number, word: string): string {
  const off = Math.abs(cut - limit)
  const known = Number(/off by (\S+)/.exec(before)?.[1] ?? 0)
  if (off <= known) return before
  return `cut ${word} than drawn at ${z.toFixed(5)}: ${cut.toFixed(6)} against ${limit.toFixed(6)}, off by ${off.toPrecision(4)}`
}

function mostWithin(wanted: Wanted, stand: number, z: number, along: number): number {
  const inside = z + along >= wanted.peakFrom && z - along <= wanted.peakTo
  return inside
    ? wanted.depth(Math.min(wanted.peakTo, Math.max(wanted.peakFrom, stand)))
    : Math.max(wanted.depth(z - along), wanted.depth(z + along))
}

function leastWithin(wanted: Wanted, z: number, along: number): number {
  if (z - along < wanted.from && wanted.peakFrom > wanted.from) return 0
  return Math.min(wanted.depth(z - along), wanted.depth(z + along))
}

/** The sizes that the sheet promises, against those that the brute force measured on what it cut. */
export function sizeProblems(sheet: Sheet, brute: BruteFeature): string[] {
  const feature = sheet.features[brute.index]!
  const run = brute.runs[0]!
  const half = (slide: 'cross-feed' | 'compound' | 'carriage'): number => {
    const dial = dialOf(sheet, slide)!
    return (dial.graduation * (dial.readTo ?? 1) * travelPerUnit(sheet, dial)) / 2
  }
  // The point of a sharp V falls between two nodes: what it lacks in depth there is the flank's, over half a cell.
  const edge = feature.edge!
  const sharp = edge.shape === 'vee' && edge.nose! < 2 * brute.step
  const between = sharp ? brute.step / Math.tan((edge.angle! * Math.PI) / 360) : 0
  const along = half('compound') + (byCarriage(sheet, brute.index) ? half('carriage') : 0)
  const allowed = {
    width: 2 * brute.step + along,
    depth: half('cross-feed') + between,
    bottomDiameter: 2 * (half('cross-feed') + between),
    near: brute.step + along,
  }
  const found = { width: run.width, depth: run.depth, bottomDiameter: run.bottomDiameter, near: run.near }
  return (Object.keys(allowed) as (keyof typeof allowed)[]).flatMap((name) => {
    const planned = feature.finished?.[name]?.planned
    if (typeof planned !== 'number' || Math.abs(planned - found[name]) <= allowed[name] + 2e-5) return []
    return [`${feature.name}: ${name} is planned as ${planned} and measures ${found[name].toFixed(6)}`]
  })
}
