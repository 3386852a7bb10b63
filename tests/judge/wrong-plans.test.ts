import { readFileSync } from 'node:fs'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { type BuildContext, context } from 'esbuild'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

/**
 * The planner is made wrong on purpose, one line at a time, and the whole program is built anew with it: the replay that is shipped takes nothing
 * from the planner but the moves and what the hand is told, so it must refuse each.
 */
type Wrong = { readonly file: string; readonly right: string; readonly wrong: string }
type Asked = readonly [tool: string, feature: string, before?: string]
type Compile = typeof import('../../src/compile.ts')['compile']

const GROOVE = 'src/features/groove/draft.ts'
const PECKS = 'src/sequence/pecks.ts'
const ROUGH = 'src/features/rough.ts'
const STAIRS = 'src/sequence/stairs.ts'
const PLUNGE = 'src/sequence/plunge.ts'
const PLACING = '    placing: placingOf(shoulder, near, far),'
const WRONG: Readonly<Record<string, Wrong>> = {
  'a corner chamfered before its tips are touched off': {
    file: 'src/sequence/corner.ts',
    right: "  handMove(program, 'layout')\n  handMove(program, 'swing')",
    wrong:
      "  handMove(program, 'layout')\n  handMove(program, 'deburr', { purpose: 'chamfer' })\n  handMove(program, 'swing')",
  },
  'steps that go on where the flank is': {
    file: ROUGH,
    right: 'Math.min(drawn(z - sides), drawn(z + sides), floor)',
    wrong: 'Math.min(Math.max(drawn(z - sides), drawn(z + sides)), floor)',
  },
  'steps and what they may cut, both to one side': {
    file: ROUGH,
    right: 'const form: Inside = { wanted: draft.wanted, surface,',
    wrong:
      'const form: Inside = { wanted: draft.wanted.map((piece) => aside(piece, 1_270_000_000, piece.from + 1_270_000_000, piece.to + 1_270_000_000)), surface,',
  },
  'the far end of a flank on the line where the corner of the nose belongs': {
    file: ROUGH,
    right: "point: 'nose-tailstock-corner',",
    wrong: "point: 'tailstock-corner',",
  },
  'steps by a V of more angle than the form': {
    file: ROUGH,
    right: 'if (tool.angle > feature.angle.aim)',
    wrong: 'if (tool.angle > 90)',
  },
  'steps thirty marks deeper': {
    file: STAIRS,
    right: '  const target = Math.floor(depth / step + 1e-6)',
    wrong: '  const target = Math.floor(depth / step + 1e-6) + 30',
  },
  'every third step left out': {
    file: STAIRS,
    right: "places = [...new Set(cuts.places.map((place) => countFor(side.scale, place, 'lower')))]",
    wrong:
      "places = [...new Set(cuts.places.map((place) => countFor(side.scale, place, 'lower')))].filter((_, i) => i % 3 !== 2)",
  },
  'a form tool touched off where the steps are': {
    file: ROUGH,
    right: "touch: { diameter: surface, at: { point: 'tip', against: { over } } }",
    wrong: 'touch: { diameter: surface, at: null }',
  },
  'a form tool touched off in the groove beside': {
    file: 'src/features/touched.ts',
    right: '  const over = freeBeside(bench, draft, edge, cut)',
    wrong: '  const over = freeBeside(bench, draft, edge, cut.slice(0, 0))',
  },
  'a corner stepped around, touched off to beyond the end of the part': {
    file: 'src/features/radius/step-corner.ts',
    right: 'Math.min(at + step.length, at + 3 * R)',
    wrong: 'at + 20 * R',
  },
  'a corner stepped around, touched off over a groove': {
    file: 'src/planning/opened.ts',
    right: 'draft: touchedOver(bench, draft, edge, cut)',
    wrong: 'draft',
  },
  'touched ten marks further back': {
    file: 'src/sequence/fine.ts',
    right: '{ back: best, deeper: best * worth }',
    wrong: '{ back: best + 10, deeper: best * worth }',
  },
  'the other corner of the tool': {
    file: GROOVE,
    right: PLACING,
    wrong: "    placing: { point: 'headstock-corner' as const, against: { line: near } },",
  },
  'the other line': {
    file: GROOVE,
    right: PLACING,
    wrong: "    placing: { point: 'tailstock-corner' as const, against: { line: far } },",
  },
  'a line that nobody scribed': {
    file: GROOVE,
    right: PLACING,
    wrong: "    placing: { point: 'tailstock-corner' as const, against: { line: near + 2_540_000_000 } },",
  },
  'a face that is not there': {
    file: GROOVE,
    right: PLACING,
    wrong: "    placing: { point: 'tailstock-corner' as const, against: { face: near } },",
  },
  'another diameter touched': {
    file: GROOVE,
    right: '    touch: { diameter: step.measured, at: null },',
    wrong: '    touch: { diameter: step.measured + 50_800_000, at: null },',
  },
  'two of three places of the finish left out': {
    file: 'src/sequence/steps-places.ts',
    right: '    counts: [...new Set(chosen.flatMap(({ counts }) => counts))],',
    wrong: '    counts: [...new Set(chosen.flatMap(({ counts }) => counts))].filter((_, i) => i % 3 === 0),',
  },
  'the clearance asked for forgotten': {
    file: PLUNGE,
    right: '  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))',
    wrong: '  return -Math.ceil((need - request.clear) / stepTravel(lathe.crossFeed)) - 1',
  },
  'a corner with the compound swung': {
    file: 'src/sequence/corner.ts',
    right: '  if (request.angle !== 0)',
    wrong: '  if (request.angle === 1)',
  },
  'never drawn out on the way in': {
    file: PECKS,
    right: '    if (before !== undefined && pecks.most !== null',
    wrong: '    if (before === null && pecks.most !== null',
  },
  'every other peck left out': {
    file: PECKS,
    right: '  counts.forEach((count, i) => {\n    const before = counts[i - 1]',
    wrong: '  counts.forEach((count, i) => {\n    if (i % 2 === 0) return\n    const before = counts[i - 2]',
  },
  'a series that ends two pecks early': {
    file: PECKS,
    right: '  counts.forEach((count, i) => {',
    wrong: '  counts.slice(0, -2).forEach((count, i) => {',
  },
  'the allowance on the walls forgotten': {
    file: PLUNGE,
    right: "  const rough = unique(cuts.roughPlaces.map((place) => clamp(onDial(place, 'higher'))))",
    wrong: '  const rough = [first, Math.round((first + last) / 3), Math.round((first + last) / 1.5), last]',
  },
  'swept into the far wall': { file: PLUNGE, right: '    [first, middle],', wrong: '    [first, last],' },
  'swept back to the finished wall': { file: PLUNGE, right: '    [last, back],', wrong: '    [last, first],' },
  'sweeps that do not meet': { file: PLUNGE, right: '    [last, back],', wrong: '    [last, last - 1],' },
  'the second sweep shallower than the first': {
    file: PLUNGE,
    right: '    finishIn(program, plan, place)\n    if (sweeps)',
    wrong:
      '    finishIn(program, { ...plan, cuts: { ...cuts, depth: cuts.depth - (place === last ? 20_000_000 : 0) } }, place)\n    if (sweeps)',
  },
  'walls that are swept all the same': {
    file: GROOVE,
    right: "  return walls ?? (several || close ? 'plunged' : 'swept')",
    wrong: "  return walls === null && several && close ? 'swept' : 'swept'",
  },
  'one wall without a plunge of its own': {
    file: PLUNGE,
    right: "  if (feeds && plan.cuts.walls === 'plunged' && places.last - places.first >= 2) {",
    wrong: "  if (false && plan.cuts.walls === 'plunged' && places.last - places.first >= 2) {",
  },
  'turns counted in with the spindle running': {
    file: 'src/sequence/flank.ts',
    right:
      "  dialMove(program, 'return', 'cross-feed', cross, 'approach')\n  if (!runs || counted) handMove(program, 'start')",
    wrong:
      "  if (!runs || counted) handMove(program, 'start')\n  dialMove(program, 'return', 'cross-feed', cross, 'approach')",
  },
  'the straight plunge after a flank feed three marks too deep': {
    file: 'src/sequence/flank.ts',
    right: "'feed-in', 'cross-feed', line.plunge!, 'finish'",
    wrong: "'feed-in', 'cross-feed', line.plunge! + 3, 'finish'",
  },
  'a flank feed that ends at another place along the work': {
    file: 'src/sequence/flank.ts',
    right: "goDown(program, plan, line, [line.last], 'approach')",
    wrong: "goDown(program, plan, line, [line.last + 30], 'approach')",
  },
  'the straight plunge after a flank feed left out': {
    file: 'src/sequence/flank.ts',
    right: "  dialMove(program, 'feed-in', 'cross-feed', line.plunge!, 'finish')\n",
    wrong: '',
  },
  'a compound set over half the angle, not under it': {
    file: 'src/features/v-groove/flank-cuts.ts',
    right: '  90 - included / 2 + underOf(feature, included)',
    wrong: '  90 - included / 2 - underOf(feature, included)',
  },
  'never widened on the way in': {
    file: PECKS,
    right: '  if (layer === null) return',
    wrong: '  if (layer !== 0) return',
  },
}

const NECK: Asked = ['shape: square, width: 0.148', 'kind: groove, near: 1.125, width: 0.156 ±0.005, depth: 0.072']
const SLOT: Asked = ['shape: square, width: 0.050', 'kind: groove, near: 1.125, width: 0.100, depth: 0.270']
const WIDE: Asked = [
  'shape: square, width: 0.148',
  'kind: groove, near: 1.125, width: 0.450 ±0.004, depth: 0.072, leave: 0.010',
]
const ASKED: Asked = [
  'shape: square, width: 0.148',
  'kind: groove, near: 1.125, width: 0.200 ±0.004, depth: 0.072, leave: 0.010, walls: plunged',
]
const NARROW_LIMITS: Asked = [
  'shape: square, width: 0.148',
  'kind: groove, near: 1.125, width: 0.165 ±0.003, depth: 0.072, leave: 0.010',
]
const OPENED: Asked = [
  'shape: vee, angle: 38, nose: 0.150',
  'kind: v-groove, near: 1.125, angle: 38, depth: 0.250, root: 0.180, rough-tool: opener',
]
const BY_A_VEE: Asked = [OPENED[0], OPENED[1].replace('rough-tool: opener', 'rough-tool: steeper')]
const BY_A_WIDER_VEE: Asked = [OPENED[0], OPENED[1].replace('rough-tool: opener', 'rough-tool: wider')]
const ROPE: Asked = [
  'shape: round, radius: 0.250',
  'kind: radius, shape: concave, center: 1.5, radius: 0.250, depth: 0.200, rough-tool: opener',
]
/** Beside it on the tailstock side a groove is cut before it: the tip must touch off on the other side. */
const ROPE_BESIDE: Asked = [
  ROPE[0],
  ROPE[1],
  '{ kind: groove, name: Collar, near: 0.940, width: 0.200, depth: 0.050, tool: opener, order: 1 }',
]
const AROUND = [
  'shape: square, width: 0.125',
  'kind: radius, shape: corner, corner-of: end, radius: 0.250, cusp: 0.004',
] as const
/** The groove takes the cylinder away from .600 on, and what is left of it is enough. */
const AROUND_BESIDE: Asked = [
  ...AROUND,
  '{ kind: groove, name: Collar, near: 0.600, width: 0.150, depth: 0.050, tool: own, order: 1 }',
]
const FLANK: Asked = [
  'shape: vee, angle: 60, nose: 0.020',
  'kind: v-groove, center: 1.500, angle: 60, root: 0.020, depth: 0.250, infeed: 0.040, method: flank-feed',
]
const FINE: Asked = [
  'shape: square, width: 0.156',
  "kind: groove, near: 1.125, width: 0.156, depth: 0.0722, compound: { angle: 5° 44' }",
]
const HOLLOW: Asked = [
  'shape: round, radius: 0.0625',
  'kind: radius, shape: concave, radius: 0.109, width: 0.180, center: 1.5',
]
const PARALLEL_CORNER: Asked = [
  'shape: corner, radius: 0.125',
  'kind: radius, shape: corner, radius: 0.125, corner-of: end',
]
const CORNER: Asked = [
  'shape: corner, radius: 0.125',
  'kind: radius, shape: corner, radius: 0.125, corner-of: end, compound: { angle: 30 }',
]

let folder = ''
let under: BuildContext
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'groovewright-wrong-'))
  under = await context({
    entryPoints: ['src/compile.ts'],
    bundle: true,
    platform: 'node',
    format: 'cjs',
    write: false,
    logLevel: 'error',
    plugins: [
      { name: 'wrong', setup: (plugin) => plugin.onLoad({ filter: new RegExp(`/(${FILES.join('|')})$`) }, changed) },
    ],
  })
})
afterAll(async () => {
  await under.dispose()
  await rm(folder, { recursive: true, force: true })
})

describe('a plan that is made wrong on purpose', () => {
  it.each<[string, Asked]>([
    ['a neck', NECK],
    ['a neck with the compound as a fine dial', FINE],
    ['a hollow stepped along', HOLLOW],
    ['a slot deeper than its tool is wide', SLOT],
    ['a groove several tool widths wide', WIDE],
    ['a groove whose width has narrow limits', NARROW_LIMITS],
    ['a corner by its own tool', PARALLEL_CORNER],
    ['a V that is opened up in steps', OPENED],
    ['a V that is opened up in steps by a steeper V', BY_A_VEE],
    ['a round groove that is opened up in steps', ROPE],
    ['a round groove that is opened up in steps beside a groove', ROPE_BESIDE],
    ['a corner that is stepped around beside a groove', AROUND_BESIDE],
  ])('is planned while nothing is wrong: %s', async (_, asked) => {
    expect(codeOf(await built(null), asked)).toBe('planned')
  })

  it.each<[string, Asked, string]>([
    ['touched ten marks further back', FINE, 'outside-form'],
    ['the other corner of the tool', NECK, 'outside-form'],
    ['the other line', NECK, 'outside-form'],
    ['a line that nobody scribed', NECK, 'set-up'],
    ['a face that is not there', NECK, 'set-up'],
    ['another diameter touched', NECK, 'set-up'],
    ['two of three places of the finish left out', HOLLOW, 'ridge'],
    ['the clearance asked for forgotten', NECK, 'not-clear'],
    ['a corner with the compound swung', CORNER, 'shifted-zero'],
    ['never drawn out on the way in', SLOT, 'no-peck'],
    ['walls that are swept all the same', WIDE, 'no-wall-plunge'],
    ['walls that are swept all the same', ASKED, 'no-wall-plunge'],
    ['walls that are swept all the same', NARROW_LIMITS, 'no-wall-plunge'],
    ['one wall without a plunge of its own', WIDE, 'into-wall'],
    ['turns counted in with the spindle running', FLANK, 'counted-in'],
    ['the allowance on the walls forgotten', WIDE, 'no-wall-plunge'],
    ['swept into the far wall', WIDE, 'into-wall'],
    ['swept back to the finished wall', WIDE, 'into-wall'],
    ['sweeps that do not meet', WIDE, 'open-form'],
    ['the second sweep shallower than the first', WIDE, 'ledge'],
    ['a corner chamfered before its tips are touched off', PARALLEL_CORNER, 'set-up'],
    ['steps that go on where the flank is', OPENED, 'outside-form'],
    ['steps and what they may cut, both to one side', OPENED, 'outside-form'],
    ['steps thirty marks deeper', OPENED, 'outside-form'],
    ['steps thirty marks deeper', BY_A_VEE, 'outside-form'],
    ['the far end of a flank on the line where the corner of the nose belongs', BY_A_VEE, 'outside-form'],
    ['steps by a V of more angle than the form', BY_A_WIDER_VEE, 'outside-form'],
    ['every third step left out', OPENED, 'metal-left'],
    ['a form tool touched off where the steps are', ROPE, 'set-up'],
    ['a form tool touched off in the groove beside', ROPE_BESIDE, 'set-up'],
    ['a corner stepped around, touched off over a groove', AROUND_BESIDE, 'set-up'],
    ['a corner stepped around, touched off to beyond the end of the part', AROUND, 'set-up'],
    ['every other peck left out', SLOT, 'no-peck'],
    ['a series that ends two pecks early', SLOT, 'no-peck'],
    ['never widened on the way in', SLOT, 'binding'],
  ])('is refused: %s', async (which, asked, code) => {
    expect(codeOf(await built(WRONG[which]!), asked)).toBe(code)
  })

  it('is refused by the planner itself where the compound is swung for a corner', async () => {
    expect(codeOf(await built(null), CORNER)).toBe('compound-swung')
  })
})

/** What is wrong now: the program is built anew with it, and each build reads again only the files that something is wrong in. */
let now: Wrong | null = null
const made = new Map<Wrong | null, Compile>()

const built = async (change: Wrong | null): Promise<Compile> => {
  const before = made.get(change)
  if (before !== undefined) return before
  now = change
  const outfile = join(folder, `${made.size}.cjs`)
  await writeFile(outfile, (await under.rebuild()).outputFiles![0]!.contents)
  const { compile } = createRequire(import.meta.url)(outfile) as { compile: Compile }
  made.set(change, compile)
  return compile
}

const changed = ({ path }: { readonly path: string }) => {
  const text = readFileSync(path, 'utf8')
  if (now === null || path !== resolve(now.file)) return { contents: text, loader: 'ts' as const }
  const parts = text.split(now.right)
  if (parts.length !== 2) throw new Error(`${now.file} has "${now.right}" ${parts.length - 1} times`)
  return { contents: parts.join(now.wrong), loader: 'ts' as const }
}

const FILES = [...new Set(Object.values(WRONG).map(({ file }) => file))]

const codeOf = (compile: Compile, asked: Asked): string => {
  const { plan, diagnostics } = compile('job.yaml', (file) => ({ ok: true, file, bytes: job(asked) }))
  if (plan === null) throw new Error(diagnostics.map(({ message }) => message).join('; '))
  const refused = plan.features.find((one) => one.status === 'refused')
  return refused?.status === 'refused' ? refused.code : 'planned'
}

const job = ([tool, feature, before]: Asked): Uint8Array =>
  new TextEncoder().encode(`
title: Cider press screw
units: inch
part: { material: mild steel, held: chuck, diameter: 1.500, length: 4 }
lathe:
  name: Bench lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: diameter, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150]
tools: { own: { ${tool}, reach: 0.300 }, opener: { shape: square, width: 0.100, reach: 0.300 }, steeper: { shape: vee, angle: 30, nose: 0.080, reach: 0.300 }, wider: { shape: vee, angle: 60, nose: 0.060, reach: 0.300 } }
features:${before === undefined ? '' : `\n  - ${before}`}
  - { name: Press screw, ${feature}, tool: own }
`)
