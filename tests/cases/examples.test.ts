import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, test, vi } from 'vitest'
import { parse } from 'yaml'
import { breaches } from './json-schema.ts'
import { golden, program, projectText, type Ran, ROOT, yamlNames } from './program.ts'
import { type Cut, cutsOf, type SheetData, type SheetFeature, scaleOf, stepsOf } from './sheet-data.ts'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })
const names = yamlNames('examples/jobs')
const schemaOf = async (name: string) => JSON.parse((await program('schema', name)).stdout)

/** One sheet of each sort is kept as data too: by lines, a form by its corner, a readout, several features, down a flank. */
const asData = (name: string): boolean => /^(01|06|11|14|18|32)-/.test(name)

/** One of each sort is kept as a card too: of one cut, of many, of alternating ones, of several features. */
const asCard = (name: string): boolean => /^(01|04|10|14)-/.test(name)

/** One is kept as a learner gets it. */
const asSupervised = (name: string): boolean => name.startsWith('31-')

/** So that a change of one step is one line. */
const oneStepALine = ({ steps, ...rest }: Record<string, unknown>): string =>
  `${JSON.stringify({ ...rest, steps: 'STEPS' }, null, 2).replace(
    '"STEPS"',
    () => `[\n${(steps as unknown[]).map((step) => `    ${JSON.stringify(step)}`).join(',\n')}\n  ]`,
  )}\n`

test('every golden belongs to a job', () => {
  const kept = readdirSync(join(ROOT, 'tests/cases/golden')).sort()
  const files = names.flatMap((name) => [
    ...(asCard(name) ? [`${name}.card.txt`] : []),
    ...(asData(name) ? [`${name}.json`] : []),
    ...(asSupervised(name) ? [`${name}.supervised.txt`] : []),
    `${name}.txt`,
  ])
  expect(kept).toEqual(files)
})

test('there are at least ten example jobs, and all of them can be cut and held', async () => {
  expect(names.length).toBeGreaterThanOrEqual(10)
  const { status, stdout } = await program('check', 'examples/jobs')
  expect(status, stdout).toBe(0)
  expect(stdout).toContain(`${names.length} jobs: ${names.length} good`)
})

test('the examples show every kind of form, every sort of dial, and both systems of units', async () => {
  const sheets = await Promise.all(
    names.map(
      async (name) =>
        JSON.parse((await program('sheet', '--format', 'json', `examples/jobs/${name}.yaml`)).stdout) as SheetData,
    ),
  )
  const all = <T>(of: (sheet: SheetData) => readonly T[]) => new Set(sheets.flatMap(of))
  expect(all((sheet) => sheet.features.map((one) => one.edge.shape))).toEqual(
    new Set(['square', 'round', 'corner', 'vee']),
  )
  expect(all((sheet) => [sheet.units])).toEqual(new Set(['inch', 'mm']))
  expect(
    all((sheet) => [
      `${sheet.lathe.crossFeed.readout ? 'readout' : 'dial'} ${sheet.lathe.crossFeed.reads} ${sheet.lathe.crossFeed.readTo}`,
    ]),
  ).toEqual(new Set(['dial depth 1', 'dial diameter 1', 'readout diameter 1', 'dial depth 0.5']))
  expect(all((sheet) => [`${sheet.units} on ${sheet.lathe.crossFeed.units}`])).toEqual(
    new Set(['inch on inch', 'mm on mm', 'inch on mm', 'mm on inch']),
  )
  expect(all((sheet) => sheet.features.map((one) => one.compoundAngle))).toContain(30)
})

describe.each(['jobs', 'lathes', 'toolboxes'])('examples/%s', (folder) => {
  const kind = { jobs: 'job', lathes: 'lathe', toolboxes: 'toolbox' }[folder]!
  test.each(yamlNames(`examples/${folder}`))('%s names its schema in the first line and keeps to it', async (name) => {
    const text = projectText(`examples/${folder}/${name}.yaml`)
    expect(text.split('\n')[0]).toBe(`# yaml-language-server: $schema=../schema/${kind}.schema.json`)
    expect(breaches(await schemaOf(kind), parse(text))).toEqual([])
  })
})

describe.each(names)('%s', (name) => {
  const path = `examples/jobs/${name}.yaml`
  let text: Ran
  let json: Ran
  let sheet: SheetData
  beforeAll(async () => {
    text = await program('sheet', path)
    json = await program('sheet', '--format', 'json', path)
    sheet = JSON.parse(json.stdout)
  })

  test('prints the same sheet as text, as a card and as data as it did before', async () => {
    expect({ status: text.status, stderr: text.stderr }).toEqual({ status: 0, stderr: '' })
    expect({ status: json.status, stderr: json.stderr }).toEqual({ status: 0, stderr: '' })
    expect(text.stdout).toBe(golden(`tests/cases/golden/${name}.txt`, text.stdout))
    if (asCard(name)) {
      const card = (await program('sheet', '--card', path)).stdout
      expect(card).toBe(golden(`tests/cases/golden/${name}.card.txt`, card))
    }
    if (asSupervised(name)) {
      const supervised = (await program('sheet', '--supervised', path)).stdout
      expect(supervised).toBe(golden(`tests/cases/golden/${name}.supervised.txt`, supervised))
    }
    if (!asData(name)) return
    const data = oneStepALine(JSON.parse(json.stdout))
    expect(data).toBe(golden(`tests/cases/golden/${name}.json`, data))
  })

  test('fits 80 columns, ends its last line, and has no character that a plain terminal lacks', () => {
    const lines = text.stdout.split('\n')
    expect(lines.at(-1)).toBe('')
    expect(lines.filter((line) => [...line].length > 80)).toEqual([])
    expect(text.stdout).toMatch(/^[\n\x20-\x7e°±]*$/u)
    expect(json.stdout.endsWith('}\n')).toBe(true)
  })

  test('keeps to the schema of the sheet', async () => {
    expect(breaches(await schemaOf('sheet'), sheet)).toEqual([])
  })

  test('numbers its steps from 1 without a gap, the same in text as in data', () => {
    // A place of a form that is stepped along is one line with the numbers of all its steps.
    const printed = [...text.stdout.matchAll(/^ {0,8}(\d+)(?:-(\d+))? {2}[A-Z]/gm)].flatMap(([, from, to]) =>
      Array.from({ length: Number(to ?? from) - Number(from) + 1 }, (_, i) => Number(from) + i),
    )
    const expected = sheet.steps.map((_, index) => index + 1)
    expect(sheet.steps.map((step) => step.number)).toEqual(expected)
    expect(printed).toEqual(expected)
  })

  test('asks only for readings that the dial shows', () => {
    for (const step of sheet.steps) {
      if (typeof step.reading !== 'number') continue
      const scale = scaleOf(sheet, step.slide)
      const steps = step.reading / (scale.graduation * scale.readTo)
      expect(Math.abs(steps - Math.round(steps)), step.say).toBeLessThan(1e-6)
      if (scale.readout) expect([step.turns, step.mark]).toEqual([null, null])
      else expect(step.turns! * scale.perTurn! + step.mark! * scale.graduation, step.say).toBeCloseTo(step.reading, 9)
    }
  })

  test('cuts only with both slides approached forward, the spindle running and the carriage locked', () => {
    expect(sheet.features.flatMap((_, feature) => approachFaults(sheet, feature))).toEqual([])
  })

  test('comes to the stated sizes by adding up its own readings', () => {
    sheet.features.forEach((feature, index) => {
      // What another tool finishes is not on the drawing.
      if (feature.kind === 'roughing') {
        expect(feature.finished).toEqual({})
        return
      }
      const found = sizesFrom(feature, cutsOf(sheet, index))
      for (const [id, size] of Object.entries(found))
        expect(Math.abs(feature.finished[id]!.planned - size), `${feature.name}: ${id}`).toBeLessThan(2e-4)
    })
  })

  test('gives a verdict that its own figures bear out', () => {
    for (const { finished } of sheet.features)
      for (const { planned, low, high, rss, limits, verdict, measured } of Object.values(finished)) {
        expect(low).toBeLessThanOrEqual(planned)
        expect(high).toBeGreaterThanOrEqual(planned)
        expect(rss).toBeLessThanOrEqual(Math.max(high - planned, planned - low) + 1e-6)
        if (limits === null) expect(verdict).toBe('no limits given')
        else {
          const counted = measured ?? { low, high }
          expect({ verdict, inside: counted.low >= limits[0] && counted.high <= limits[1] }).toEqual({
            verdict: 'holds',
            inside: true,
          })
        }
      }
  })
})

test('the rule of approach sees a dropped go-past, a dropped start, a dropped lock and a backward feed', async () => {
  const sheet = JSON.parse(
    (await program('sheet', '--format', 'json', 'examples/jobs/01-press-screw.yaml')).stdout,
  ) as SheetData
  expect(approachFaults(sheet, 0)).toEqual([])
  for (const action of ['go-past', 'start', 'lock', 'take-up'])
    expect(
      approachFaults({ ...sheet, steps: sheet.steps.filter((step) => step.action !== action) }, 0),
      action,
    ).not.toEqual([])
  const finish = sheet.steps.findLast((step) => step.action === 'feed-in')!
  const repeated = sheet.steps.flatMap((step) => (step === finish ? [step, { ...step, reading: 0.01 }] : [step]))
  expect(approachFaults({ ...sheet, steps: repeated }, 0)).not.toEqual([])
})

/** Steps of a feature at which a slide cuts after it came backward, the spindle stands, the carriage is loose, or hands are near a running spindle. */
function approachFaults(sheet: SheetData, feature: number): string[] {
  const faults: string[] = []
  const last = { 'cross-feed': 0, compound: 0, carriage: 0 }
  const forward = { 'cross-feed': true, compound: false, carriage: true }
  let [running, locked] = [false, false]
  for (const step of stepsOf(sheet, feature)) {
    if (step.action === 'start') running = true
    if (step.action === 'stop') running = false
    if (step.action === 'lock') locked = true
    if (step.action === 'unlock') locked = false
    if (step.action === 'measure' && running) faults.push(`${step.number}: measures with the spindle running`)
    if (step.slide === undefined) continue
    const moved = step.slide === 'carriage' && step.action !== 'zero' && step.action !== 'take-up'
    if (moved && locked) faults.push(`${step.number}: moves the carriage while it is locked`)
    if (moved && step.action === 'feed-across' && !running)
      faults.push(`${step.number}: cuts with the spindle standing`)
    if (step.placeFromEnd !== undefined) continue
    const scale = scaleOf(sheet, step.slide)
    if (step.action === 'take-up' || scale.readout) forward[step.slide] = true
    if (typeof step.reading !== 'number') continue
    const before = last[step.slide]
    if (step.action === 'zero' && !forward[step.slide]) faults.push(`${step.number}: sets a zero on a slack screw`)
    if (step.action !== 'zero' && step.reading !== before) forward[step.slide] = scale.readout || step.reading > before
    if (step.action === 'go-past' && before - step.reading <= scale.backlash)
      faults.push(`${step.number}: does not go past by more than the backlash`)
    last[step.slide] = step.reading
    if (step.action !== 'feed-in' && step.action !== 'feed-across') continue
    // From a wall back over the floor: where the slide then stands tells nothing, and nothing may be cut from there.
    if (step.action === 'feed-across' && step.reading < before && forward['cross-feed']) continue
    if (step.reading <= before)
      faults.push(`${step.number}: ${step.slide} feeds from ${before} back to ${step.reading}`)
    if (!forward.compound || !forward['cross-feed'] || !forward.carriage)
      faults.push(`${step.number}: cuts at a place approached backward`)
    if (!running || (!locked && !moved))
      faults.push(`${step.number}: cuts with the spindle standing or the carriage loose`)
  }
  return faults
}

/** Sizes from the places of the tool alone: sums of readings, and plane geometry of the edge. In the units of the sheet. */
function sizesFrom(feature: SheetFeature, cuts: readonly Cut[]): Record<string, number> {
  const depth = Math.max(...cuts.map((cut) => cut.depth))
  const { width, nose, angle, radius } = feature.edge
  const places = cuts.filter((cut) => depth - cut.depth < depth / 50).map((cut) => cut.along)
  const over = Math.max(...places) - Math.min(...places)
  const all = cuts.map((cut) => cut.along)
  const bottomDiameter = feature.surface - 2 * depth
  switch (feature.edge.shape) {
    case 'square':
      if (feature.kind === 'corner radius') return { radius: aroundCorner(cuts) }
      return {
        width: Math.max(...all) - Math.min(...all) + width!,
        depth,
        bottomDiameter,
        near: feature.zero.fromEnd + Math.min(...all),
      }
    case 'vee':
      return { root: over + nose!, depth, bottomDiameter, angle: angle!, ...flankWidth(feature, over + nose!, depth) }
    case 'round': {
      const half = (deep: number) => Math.sqrt(2 * radius! * deep - deep * deep)
      const ends = [1, -1].map((side) => Math.max(...cuts.map((cut) => side * cut.along + half(cut.depth))))
      const chord = ends[0]! + ends[1]!
      return { width: chord, depth, bottomDiameter, radius: chord ** 2 / (8 * depth) + depth / 2 }
    }
    default: {
      // The arc ends where it meets the face, and where it meets the cylinder: e(u) = R − √(R² − (R − u)²), the same both ways.
      const rises = (u: number) => radius! - Math.sqrt(radius! ** 2 - (radius! - u) ** 2)
      const along = Math.max(...all) + feature.zero.fromEnd - feature.placing.against.beside!
      const short = (feature.zero.diameter - feature.surface) / 2 - depth
      return { radius: radius!, legAlong: rises(short) + along, legDown: rises(-along) - short }
    }
  }
}

/** The arc tangential to face and cylinder through the lowest corner of a stair: x along and y deep lie on it when it is x + y + √(2xy). */
function aroundCorner(cuts: readonly Cut[]): number {
  const inReach = cuts.filter(({ along, depth }) => along <= 4 * depth && depth <= 4 * along)
  return Math.max(...inReach.map(({ along, depth }) => along + depth + Math.sqrt(2 * along * depth)))
}

/** Width of a V at the surface; where the drawing gives it at another diameter the sheet states it there, and the sum does not apply. */
function flankWidth(feature: SheetFeature, root: number, depth: number): Record<string, number> {
  const width = root + 2 * depth * Math.tan((feature.edge.angle! * Math.PI) / 360)
  return Math.abs(width - feature.finished.width!.planned) > depth / 50 ? {} : { width }
}
