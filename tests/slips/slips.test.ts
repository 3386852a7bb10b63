import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { compile } from '../../src/compile.ts'
import type { Operation } from '../../src/moves/operation.ts'
import type { Plan } from '../../src/plan/plan.ts'
import { mutantsOf } from '../../src/slips/mistakes.ts'
import { slipsOf } from '../../src/slips/slips.ts'
import { INCH } from '../../src/units/length.ts'
import { runIn } from '../cli/world.ts'
import { examplePlans } from '../print/examples.ts'

const FILES: Record<string, string> = Object.fromEntries(
  ['jobs', 'lathes', 'toolboxes'].flatMap((folder) =>
    readdirSync(`examples/${folder}`).map((name) => [
      `examples/${folder}/${name}`,
      // The press screw is swept from wall to wall here.
      readFileSync(`examples/${folder}/${name}`, 'utf8')
        .replace('    tool: neck\n', '    tool: neck\n    walls: swept\n')
        // The rope groove is finished down the flank itself.
        .replace('method: flank-feed\n', 'method: flank-feed\n    flank-under: 0\n'),
    ]),
  ),
)
const sheet = async (job: string, ...args: string[]) =>
  (await runIn({ files: FILES }, 'sheet', ...args, `examples/jobs/${job}.yaml`)).out
/** 18 by the compound at half the angle itself. */
const ropeGroove = (): Plan =>
  compile('examples/jobs/18-flank-feed.yaml', (path, from) => {
    const file = from === null ? path : join(dirname(from), path)
    return { ok: true, file, bytes: FILES[file]! }
  }).plan!
/** What is measured, by the mistake that measures so. */
const card = async (job: string): Promise<Record<string, string>> => {
  const { slips } = JSON.parse(await sheet(job, '--slips', '--format', 'json'))
  return Object.fromEntries(
    slips[0].lines.map((line: { shows: string; mistake: string }) => [line.mistake, line.shows]),
  )
}

/** 01: dials of .001 by .100 that read depth; .148 tool in a .165 groove, .072 deep in two passes of which the last is .018; .006 backlash. */
test('each mistake on the press screw measures what plane sums say', async () => {
  expect(await card('01-press-screw')).toEqual({
    'one turn of the cross-feed too many': 'bottom .200 small',
    'ten marks too far: the next number on the dial': 'bottom .020 small',
    'the finish pass was forgotten': 'bottom .036 large',
    'the depth dial was taken for one that reads diameter': 'bottom .144 small',
    'the shift of the compound was forgotten': 'width .017 narrow',
    'one turn of the compound too many': 'width .100 wide',
    'shifted by the whole width: the width of the tool was forgotten': 'width .148 wide',
    'backlash not taken up: the compound was turned straight back (so much at the most)':
      'step of .018 left in the form, .006 wide, on the tailstock side',
    'the wrong corner of the tool was set to the line': 'near edge .148 toward the free end',
    // .05 mm on the radius.
    'touched off on a burr, or on dye and oil': 'bottom .0039 large',
    // 2 tan 2° · 1.5 mm, and .2 mm.
    'the tool was measured behind its edge, where it is relieved': 'width .0041 wide',
    'the corners of the tool are worn round': 'corner radius .0079 large',
    // .148 tan 1°.
    'the tool stood askew by a degree': 'floor .0026 out of flat',
  })
})

test('a swung compound left uncorrected, and its backlash, are slips of their own', async () => {
  const { lathe, setup, features } = examplePlans().find(([name]) => name === '09-swung-compound.yaml')![1]
  const operation = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))[0]!
  const last = Math.max(...operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count ?? 0] : [])))
  const scale = lathe.compound.scale as Extract<typeof lathe.compound.scale, { kind: 'dial' }>
  const [slips] = slipsOf(lathe, setup, [operation])
  const found = (mistake: string) => slips!.find(({ mistakes }) => mistakes.some((one) => one === mistake))
  const deeper = last * scale.graduation * scale.readTo * Math.sin((operation.angle * Math.PI) / 180)
  const step = lathe.crossFeed.kind === 'dial' ? lathe.crossFeed.graduation : 0
  expect(Math.abs(found('swing-forgotten')!.changes[0]!.by + 2 * deeper)).toBeLessThanOrEqual(2 * step)
  const { id, by } = found('backlash-left')!.changes[0]!
  const lag = scale.backlash * Math.sin((operation.angle * Math.PI) / 180)
  expect(id).toBe('bottomDiameter')
  expect(Math.abs(by + 2 * lag)).toBeLessThan(1_000_000)
})

/** 18: half of 38 degrees from square, 0.125 to a turn of the compound, .100 of slide to a turn of the cross-feed; the finish takes .020. */
test('a V fed down its flank has slips of its own', async () => {
  const { lathe, setup, features } = ropeGroove()
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const [slips] = slipsOf(lathe, setup, operations)
  const by = (mistake: string, id: string) =>
    slips!.find(({ mistakes }) => mistakes.some((one) => one === mistake))!.changes.find((one) => one.id === id)!.by /
    INCH
  const down = 0.125 * Math.cos((19 * Math.PI) / 180)
  expect(by('turn-more-along', 'bottomDiameter')).toBeCloseTo(-2 * down, 6)
  // A turn too few stops before the floor that roughing left: the same as no finish at all.
  expect(by('turn-less-down', 'bottomDiameter')).toBe(by('finish-forgotten', 'bottomDiameter'))
  expect(by('short-of-zero', 'bottomDiameter')).toBeCloseTo(0.2, 6)
  // Set to 19 degrees from parallel, .397 of slide go in by their sine only.
  const wrong = 2 * 0.397 * (Math.cos((19 * Math.PI) / 180) - Math.sin((19 * Math.PI) / 180))
  expect(by('other-scale-zero', 'bottomDiameter')).toBeCloseTo(wrong, 6)
})

/**
 * 18: the cross-feed a turn short, .100 of slide, each time it comes in: the V is .100 shallower, and its tailstock-side flank slides so much
 * less than half of 38 degrees wide toward the headstock: .100 x tan 19 = .0344, past the ±.020 of its near edge.
 */
test('a place along the work that ends outside its limits is told beside the width', () => {
  const { lathe, setup, features } = ropeGroove()
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const [slips] = slipsOf(lathe, setup, operations)
  const short = slips!.find(({ mistakes }) => mistakes.includes('short-of-zero'))!
  expect(short.changes.map(({ id }) => id)).toEqual(['bottomDiameter', 'width', 'near'])
  expect(short.changes[2]!.by / INCH).toBeCloseTo(0.1 * Math.tan((19 * Math.PI) / 180), 4)
  // A turn too many moves the near edge by nothing, and within limits ten times as wide it would not be told either.
  const wide = operations.map((operation) => ({
    ...operation,
    dimensions: operation.dimensions.map((one) =>
      one.id === 'near' ? { ...one, limits: [one.aim - 0.2 * INCH, one.aim + 0.2 * INCH] as const } : one,
    ),
  }))
  const untold = slipsOf(lathe, setup, wide)[0]!.find(({ mistakes }) => mistakes.includes('short-of-zero'))!
  expect(untold.changes.map(({ id }) => id)).toEqual(['bottomDiameter', 'width'])
})

/** 18: the one long way back is before the finish, from 3 turns and 1 past 0 four times: wound past it three times, it stands a turn forward. */
test('a compound that comes back a turn short misses one passing of its 0', async () => {
  const { lathe, features } = ropeGroove()
  const operation = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))[0]!
  const mutant = mutantsOf(operation, lathe).find(({ mistake }) => mistake === 'back-turn-short')!
  const back = operation.moves.findIndex(
    ({ action, count }, i) => action === 'go-past' && mutant.operation.moves[i]!.count !== count,
  )
  const [from, to] = [376, mutant.operation.moves[back]!.count!]
  const passings = (end: number) => [0, 125, 250, 375].filter((zero) => zero < from && zero > end).length
  expect([passings(operation.moves[back]!.count!), passings(to)]).toEqual([4, 3])
  expect(Object.keys(await card('18-flank-feed')).join()).toContain('came back one turn short: past 0 once too few')
})

/** 20: the last place, at the wall, cut .182 deep where .125 is the floor: a gauge finds the tool's own corner there, no fillet. */
test('over a floor that is off, no corner radius is told; over a level one it is', () => {
  const { lathe, setup, features } = examplePlans().find(([name]) => name === '20-filleted-groove.yaml')![1]
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const [keeper, bearing] = slipsOf(lathe, setup, operations)
  const more = bearing!.find(({ mistakes }) => mistakes.includes('turn-more'))!
  expect(more.changes.map(({ id }) => id)).toEqual(['bottomDiameter'])
  expect(more.changes[0]!.by / INCH).toBeCloseTo(-2 * (0.182 - 0.125), 6)
  for (const { changes } of [...keeper!, ...bearing!])
    if (changes.some(({ id }) => id === 'cornerRadius'))
      expect(changes.map(({ id }) => id)).not.toContain('bottomDiameter')
  expect(keeper!.flatMap(({ changes }) => changes).map(({ id }) => id)).toContain('cornerRadius')
})

/** 20: the keeper groove comes back to its first place once, the bearing groove before roughing and again before the finish. */
test('a backlash that shows only where it is left open each time says so', async () => {
  const { slips } = JSON.parse(await sheet('20-filleted-groove', '--slips', '--format', 'json'))
  const [once, twice] = slips.map(({ lines }: { lines: { mistake: string }[] }) =>
    lines.map(({ mistake }) => mistake).find((mistake) => mistake.startsWith('backlash')),
  )
  expect(once).toMatch(/^backlash not taken up: /)
  expect(twice).toMatch(/^backlash not taken up, every time: /)
})

/** A compound that feeds a V in is wound back before each run: left where it is, the cross-feed plunges; its backlash cannot be left open so. */
test('a compound not turned back is not taken for a hair of backlash, nor told as one with it', () => {
  const { lathe, setup, features } = ropeGroove()
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const mistakes = mutantsOf(operations[0]!, lathe).map(({ mistake }) => mistake)
  expect(mistakes).toContain('not-turned-back')
  expect(mistakes).not.toContain('backlash-left')
  expect(mistakes).not.toContain('shift-forgotten')
  // Mistakes on one line come out alike in every size.
  const [slips] = slipsOf(lathe, setup, operations)
  expect(slips!.flatMap((slip) => slip.mistakes).length).toBeGreaterThan(4)
})

/** Swung to the other side of square, the compound slides the tool as far toward the free end as it should go toward the headstock. */
test('a flank fed with the swivel on the wrong side of square stands too near to the free end', () => {
  const { lathe, setup, features } = ropeGroove()
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const operation = operations[0]!
  const [slips] = slipsOf(lathe, setup, operations)
  const { changes } = slips!.find(({ mistakes }) => mistakes.includes('wrong-side'))!
  const last = Math.max(...operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count ?? 0] : [])))
  const scale = lathe.compound.scale as Extract<typeof lathe.compound.scale, { kind: 'dial' }>
  const along = last * scale.graduation * scale.readTo * Math.cos((operation.angle * Math.PI) / 180)
  expect(changes).toHaveLength(1)
  expect(changes[0]!.id).toBe('near')
  expect(Math.abs(changes[0]!.by + 2 * along)).toBeLessThan(1_000_000)
})

/** 09: 30 degrees; at the last place the cross-feed was held back for what the compound carries in, and it carries as much out. */
test('a compound swung to the wrong side of parallel leaves metal where it was to carry the tool in', () => {
  const { lathe, setup, features } = examplePlans().find(([name]) => name === '09-swung-compound.yaml')![1]
  const operation = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))[0]!
  const [slips] = slipsOf(lathe, setup, [operation])
  const { ridge, changes } = slips!.find(({ mistakes }) => mistakes.includes('wrong-side'))!
  const last = Math.max(...operation.moves.flatMap(({ slide, count }) => (slide === 'compound' ? [count ?? 0] : [])))
  const scale = lathe.compound.scale as Extract<typeof lathe.compound.scale, { kind: 'dial' }>
  expect(changes).toEqual([])
  expect(ridge!.high / (2 * last * scale.graduation * scale.readTo * Math.sin(Math.PI / 6))).toBeCloseTo(1, 6)
  expect(ridge!.side).toBe('headstock')
})

/** 19: a corner stair and a groove of round places. The compound's backlash is .006; the tables are those of the sheet itself. */
test('a form stepped along has slips of its own', () => {
  const { lathe, setup, features } = examplePlans().find(([name]) => name === '19-no-form-tool.yaml')![1]
  const operations = features.flatMap((one) => (one.status === 'planned' ? [one.operation] : []))
  const cards = slipsOf(lathe, setup, operations)
  expect(cards).toHaveLength(2)
  const [corner, groove] = cards.map((slips) => {
    for (const mistake of ['next-line-read', 'place-backward'])
      expect(slips.some(({ mistakes }) => mistakes.some((one) => one === mistake))).toBe(true)
    return slips.find(({ mistakes }) => mistakes.includes('place-left-out'))!.ridge!
  })
  // A square tool leaves a stair: without its place, a quarter of the way, that step stands at the depth of the next one.
  const depths = reached(operations[0]!.moves)
  const at = Math.floor(depths.length / 4)
  expect(corner!.high / INCH).toBeCloseTo((depths[at]! - depths[at + 1]!) / 1000, 6)
  // Four times the chord leaves about four times the ridge: more than the .001 that the job allows.
  expect(groove!.high / INCH).toBeGreaterThan(0.001)
  expect(groove!.side).toBe('tailstock')
})

/** Where each place of the finish ends, in marks. */
const reached = (moves: Operation['moves']): number[] =>
  moves.flatMap(({ purpose, count }, i) =>
    purpose === 'finish' && moves[i + 1]?.action === 'back-out' ? [count!] : [],
  )

test('one line too far down gives every place the depth of the one behind it', () => {
  const { lathe, features } = examplePlans().find(([name]) => name === '19-no-form-tool.yaml')![1]
  for (const feature of features) {
    if (feature.status !== 'planned') continue
    const { operation } = feature
    const mutant = mutantsOf(operation, lathe).find(({ mistake }) => mistake === 'next-line-read')!
    const planned = reached(operation.moves)
    const wrong = reached(mutant.operation.moves)
    expect(wrong).toEqual([...planned.slice(1), planned.at(-1)])
  }
})

describe.each(examplePlans().filter(([, plan]) => plan.features.some(({ status }) => status === 'planned')))(
  '%s',
  (name, { lathe, setup, features }) => {
    const planned = features.flatMap((one) => (one.status === 'planned' ? [one] : []))
    const operations = planned.map(({ operation }) => operation)
    const cards = slipsOf(lathe, setup, operations)

    test('every slip shows in something, no two in the same', () => {
      expect(cards).toHaveLength(operations.length)
      for (const slips of cards) {
        expect(slips.length).toBeGreaterThan(0)
        const shown = slips.map(({ changes, ridge }) => {
          expect(changes.length + (ridge === null ? 0 : 1)).toBeGreaterThan(0)
          return JSON.stringify([changes.map(({ id, by }) => [id, Math.round(by / 1e6)]), ridge?.high, ridge?.wide])
        })
        expect(new Set(shown).size).toBe(shown.length)
      }
    })

    test('one turn too many is a turn of the cross-feed deeper, wherever a diameter or a depth is measured', () => {
      const scale = lathe.crossFeed
      let told = 0
      for (const [i, slips] of cards.entries()) {
        // The last place of a stepped form is not its deepest.
        const { moves, cusp } = operations[i]!
        const fed = moves.some(({ action, slide }) => action === 'feed-in' && slide === 'cross-feed')
        if (!fed || cusp !== undefined || operations[i]!.dimensions.length === 0) continue
        told++
        const slip = slips.find(({ mistakes }) => mistakes.includes('turn-more'))
        expect(slip !== undefined).toBe(scale.kind === 'dial')
        if (slip === undefined || scale.kind !== 'dial') continue
        const travel = scale.reads === 'diameter' ? scale.perTurn / 2 : scale.perTurn
        const { id, by } = slip.changes[0]!
        const off = Math.abs(by - (id === 'bottomDiameter' ? -2 : 1) * travel)
        // Down the face a corner comes out short by the .25 mm, or .010, that its tip overlapped the face when it touched; cut a turn too deep it does not.
        expect(off).toBeLessThan(id === 'legDown' ? 0.254e9 + 1000 : 1000)
      }
      expect(told > 0).toBe(!/^19/.test(name))
    })

    test('a mistake changes only the moves, where the tool or the compound was set or touched, or the edge', () => {
      const changing = ({ moves, placing, angle, off, edge }: Operation) => ({ moves, placing, angle, off, edge })
      const nothing = { moves: [], placing: null, angle: null, off: null, edge: null }
      for (const operation of operations)
        for (const { operation: wrong } of mutantsOf(operation, lathe)) {
          // What is nothing on the drawing may be asked for besides.
          const dimensions = wrong.dimensions.slice(0, operation.dimensions.length)
          expect({ ...wrong, ...nothing, dimensions }).toEqual({ ...operation, ...nothing })
          expect(changing(wrong)).not.toEqual(changing(operation))
        }
    })
  },
)

test('the card stands at the end of the sheet, and only where it is asked for', async () => {
  const bare = await sheet('14-whole-screw')
  const full = await sheet('14-whole-screw', '--slips')
  expect(bare).not.toContain('COMMON MISTAKES')
  expect(full.startsWith(bare)).toBe(true)
  const added = full.slice(bare.length)
  expect(added).toContain('COLLAR GROOVE\n bottom .200 small\n      one turn of the cross-feed too many\n')
  expect(added).toMatch(/PILOT CORNER\n leg down the face \.100 deep/)
  expect(added).toMatch(/leg along the work \.100 long\n {6}one turn of the compound too many/)
  expect(added.split('\n').filter((line) => line.length > 80)).toEqual([])
})

/** A job of one file on one of two lathes; sums in the comments are plane trigonometry with the dials' own marks. */
const cardOf = async (job: string): Promise<Record<string, string>[]> => {
  const { out } = await runIn({ files: { 'job.yaml': job } }, 'sheet', '--slips', '--format', 'json', 'job.yaml')
  const { slips } = JSON.parse(out)
  return slips.map(({ lines }: { lines: { shows: string; mistake: string }[] }) =>
    Object.fromEntries(lines.map(({ mistake, shows }) => [mistake, shows])),
  )
}
const METRIC = `  name: School lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14, travel: 90, scale-zero: square }
  spindle-speeds: [60, 90, 140, 210]
`
const SWUNG = `title: Press spindle
units: mm
part: { material: mild steel, held: chuck, diameter: 40, length: 120, overhang: 90, measured-diameter: 39.98 }
lathe:
${METRIC}tools: { p3: { shape: square, width: 2.95, reach: 6, blank: 8, rake-ground: 0 } }
cutting: { compound: { angle: 30 } }
features:
  - { kind: groove, name: Swung, near: 45 ±0.3, width: 5 ±0.2, depth: 2.5 ±0.1, tool: p3 }
`

/** Second place: 2.36 along the compound, 1.325 by the cross-feed. Swung the other way it is 1.325 - 2.36 sin 30° = .145 deep, for 2.505. */
test('a compound swung to the wrong side leaves a step of 2.36, though the bottom beside it is .01 off', async () => {
  const [card] = await cardOf(SWUNG)
  expect(card!['the compound was swung to the wrong side']).toBe(
    'step of 2.36 left in the form, 2.044 wide, on the headstock side',
  )
})

/** A scale marked alike on both sides of its square 0: the second place lies 2.36 cos 30° = 2.044 before the first, not behind it. */
test('a compound set on the other side of a square 0 goes toward the tailstock', async () => {
  const [card] = await cardOf(SWUNG)
  expect(card!['the compound was set on the other side of 0: toward the tailstock']).toBe(
    'near edge 2.044 toward the free end',
  )
})

/** Touched at .010 before 0 at 5° 44': on to 0 it goes .001 out, not in, so .029 deep for .031. One plunge cuts no wider than its tool. */
test('a slip of the swivel is touched off at its own angle', async () => {
  const [card] = await cardOf(`title: Press clip
units: inch
part: { material: mild steel, held: chuck, diameter: 1, length: 3, overhang: 2, measured-diameter: 1.002 }
lathe:
  name: Coarse lathe
  units: inch
  cross-feed: { graduation: 0.002, per-turn: 0.2, reads: depth, backlash: 0.016 }
  compound: { graduation: 0.002, per-turn: 0.1, backlash: 0.010, travel: 2, scale-zero: square }
  spindle-speeds: [60, 90, 150, 240]
tools: { clip: { shape: square, width: 0.0460, reach: 0.08, blank: 1/4, rake-ground: 0 } }
cutting: { compound: { angle: "5° 44'" } }
features:
  - { kind: groove, name: Clip, near: 0.5 ±0.010, width: 0.046 ±0.002, bottom-diameter: 0.940 ±0.003, tool: clip }
`)
  expect(card!['the compound was swung to the wrong side']).toBe('bottom .004 large')
})

/** Wound back from 7.96 to mark 100: met at 5.00 before 2.00. The roughing ends a turn of 3 further, 2.837 by the cosine of 19°: 7.539 + 2.837
 * for 8.037 deep. */
test('a flank fed from a compound that came back one turn short is too deep', async () => {
  const [card] = await cardOf(`title: Press pulley
units: mm
part: { material: cast iron, held: chuck, diameter: 80, length: 60, overhang: 50, measured-diameter: 80.06 }
lathe:
${METRIC}tools: { vee: { shape: vee, angle: 38, nose: 3.0, reach: 12, rake-ground: 0 } }
features:
  - { kind: v-groove, name: V, method: flank-feed, flank-under: 0, angle: 38 ±1, depth: 8 ±0.15, root: 4 ±0.15, near: 6 ±0.3, tool: vee }
`)
  const shows = card!['the compound came back one turn short: past 0 once too few']!
  expect(Number(/^bottom ([.\d]+) small/.exec(shows)![1])).toBeCloseTo(2 * (7.539 + 2.837 - 8.037), 2)
})

test('a slip at one of several places says at which', async () => {
  const shown = Object.keys((await cardOf(SWUNG))[0]!)
  expect(shown).toContain('one turn of the cross-feed too many, at the last place')
  expect(shown).toContain('one turn of the compound too many, at the furthest place')
  expect(Object.keys(await card('01-press-screw'))).toContain('one turn of the cross-feed too many')
})
