import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { compile } from '../../../src/compile.ts'
import type { Load } from '../../../src/job/read-job.ts'
import { grindSheet } from '../../../src/sheet/grind/grind.ts'
import { INCH } from '../../../src/units/length.ts'
import { program, ROOT, yamlNames } from '../../cases/program.ts'
import { distanceToAxis } from './vectors.ts'

const JOB = 'tests/tools/grind/tilted.yaml'

type Form = Readonly<Record<string, unknown>> & {
  readonly feature: string
  readonly width: { drawn: number; aim: number; edge: number } | null
  readonly endRelief: { inUse: number[]; ground: number[] }
  readonly sideClearance: { ground: number[] | null; inUse: number[] | null }
  readonly form: {
    depth: number
    alongFace: number
    uncorrectedShallow: number
    halfAngle: { drawn: number; grind: number; uncorrectedCuts: number } | null
    radius: { drawn: number; grind: number; uncorrectedCuts: number } | null
    hollow: {
      drawn: number
      grindDown: number
      uncorrectedCutsDown: number
      arc: { radius: number; strays: number; cutsRadius: number; cutsStray: number } | null
      points: { along: number; work: number; face: number; uncorrected: number }[]
    } | null
  }
}
type Data = {
  format: string
  tools: { name: string; forms: Form[]; says: Record<string, string[]>; order: string[]; warnings: string[] }[]
  cautions: string[]
  left: { name: string }[]
}

describe('the grinding sheet of a job', () => {
  let [data, text] = [{} as Data, '']
  beforeAll(async () => {
    const [json, plain] = [await program('grind', JOB, '--format', 'json'), await program('grind', JOB)]
    expect([json.stderr, json.status, plain.status]).toEqual(['', 0, 0])
    data = JSON.parse(json.stdout)
    text = plain.stdout
  })
  const tool = (name: string) => data.tools.find((each) => each.name === name)!
  const form = (name: string) => tool(name).forms[0]!

  it('has every tool, measured or still to be ground', () => {
    expect(data.format).toBe('groovewright.grind/1')
    expect(data.tools.map(({ name }) => name).sort()).toEqual(
      ['bow', 'hollow', 'keen', 'leveled', 'straight', 'to grind: Wide neck'].sort(),
    )
    expect(data.left).toEqual([])
    for (const { name } of data.tools) expect(text).toContain(`"${name}"`)
  })

  // Common practice, no source.
  it('grinds 22 1/2° to 24 1/2° for 8° to 10° in a 14 1/2° holder, and none of it in a level block', () => {
    expect(form('keen').endRelief).toEqual({ inUse: [8, 10], ground: [22.5, 24.5] })
    expect(form('to grind: Wide neck').endRelief).toEqual({ inUse: [8, 10], ground: [8, 10] })
    expect(text).toContain("GRIND 22° 30' to 24° 30'")
  })

  it('has 4° to 6° of side relief, 2° to 4° of clearance, up to 2° of rake in steel', () => {
    expect(form('leveled')).toMatchObject({
      sideRelief: { ground: [4, 6] },
      sideClearance: { ground: [2, 4] },
      rake: { ground: -14.5, inUse: 0, advised: [0, 2] },
    })
  })

  // Common practice, no source: 34° in a 14 1/2° holder, 3/16 deep on 1 1/2.
  it('says that a V ground to 34° cuts 34.8°, and what to grind for 34°', () => {
    const { halfAngle } = form('keen').form
    expect(2 * halfAngle!.uncorrectedCuts).toBeCloseTo(34.8, 1)
    expect(halfAngle!.drawn).toBe(17)
    expect(halfAngle!.grind).toBeLessThan(17)
    expect(tool('keen').order.join(' ')).toContain(tool('keen').says.Correction![0]!.match(/grind (\S+ \S+)/)![1]!)
  })

  it('corrects nothing where the top is leveled, and warns of the clearance that the tilt takes', () => {
    expect(form('leveled').form).toMatchObject({ alongFace: 0.07, uncorrectedShallow: 0 })
    expect(form('leveled').sideClearance.inUse![0]).toBeLessThan(1)
    expect(tool('leveled').warnings.join(' ')).toMatch(/side clearance/)
    expect(tool('straight').warnings.join(' ')).not.toMatch(/side clearance/)
    expect(tool('straight').warnings.join(' ')).toMatch(/14° 30' of rake in use/)
    expect(form('straight').sideClearance.inUse![0]).toBeGreaterThanOrEqual(2)
  })

  it('corrects square, round and corner tools both ways', () => {
    const square = form('straight').form
    expect(square.alongFace).toBeGreaterThan(square.depth)
    expect(square.uncorrectedShallow).toBeGreaterThan(0)
    const { radius } = form('bow').form
    expect(radius!.grind).toBeLessThan(0.25)
    expect(radius!.uncorrectedCuts).toBeGreaterThan(0.25)
    const { hollow } = form('hollow').form
    expect(hollow!.grindDown).toBeGreaterThan(0.125)
    expect(hollow!.uncorrectedCutsDown).toBeLessThan(0.125)
  })

  it('gives points of a hollow both ways, as vectors have them, and the arc that is nearest', () => {
    const { hollow } = form('hollow').form
    const { points, arc } = hollow!
    expect(points.map(({ along }) => along)).toEqual(
      [15, 30, 45, 60, 75, 90].map((turn) => expect.closeTo(0.125 * (1 - Math.cos((turn * Math.PI) / 180)), 8)),
    )
    for (const { along, work, face, uncorrected } of points) {
      expect(Math.hypot(0.125 - along, work)).toBeCloseTo(0.125, 8)
      expect(distanceToAxis(0.75 - 0.125, face, 14.5) - 0.625).toBeCloseTo(work, 8)
      const floor = 0.75 - hollow!.uncorrectedCutsDown
      expect(distanceToAxis(floor, work, 14.5) - floor).toBeCloseTo(uncorrected, 8)
    }
    expect(points.at(-1)!.face).toBeCloseTo(hollow!.grindDown, 8)
    expect(arc!.radius).toBeGreaterThan(0.125)
    expect(arc!.cutsRadius).toBeLessThan(0.125)
    expect(Math.max(arc!.strays, arc!.cutsStray)).toBeLessThan(0.0005)
  })

  it('tells how to grind a tool whose feature is refused for nothing else', async () => {
    const sheet = JSON.parse((await program('sheet', JOB, '--format', 'json')).stdout)
    const refused = sheet.features.filter(({ status }: { status: string }) => status === 'refused')
    expect(refused.map(({ name }: { name: string }) => name)).toEqual(['Rounded end', 'Belt groove', 'Hand hold'])
    for (const { refusal } of refused) expect(refusal.code).toBe('ground-on-face')
    expect(refused[1].refusal.remedy).toContain("grind 33° 14' on the face")
    expect(refused[1].refusal.remedy).toContain('rake-ground: -14.5')
  })

  it('grinds more relief under the flanks of a V, so that 4° to 6° are left in a tilted holder', () => {
    const { sideRelief } = form('keen') as unknown as { sideRelief: { ground: number[]; inUse: number[] } }
    expect(sideRelief.inUse).toEqual([expect.closeTo(4, 6), expect.closeTo(6, 6)])
    expect(sideRelief.ground[0]).toBeGreaterThan(8)
  })

  it('aims a little under for one part', () => {
    expect(form('to grind: Wide neck').width).toEqual({
      drawn: 0.15625,
      aim: 0.15225,
      widest: 0.15225,
      edge: 0.15225,
    })
    expect(tool('to grind: Wide neck').says.Edge![0]).toContain('a little under, for one part')
  })

  it('numbers the order one line each, and says when to check', () => {
    for (const { order } of data.tools) {
      expect(order.length).toBeGreaterThan(5)
      expect(order.filter((line) => line.includes('CHECK')).length).toBeGreaterThan(2)
    }
    expect(tool('bow').order.join(' ')).toMatch(/radius gauge at half way.*again after the top/)
    expect(tool('hollow').order.join(' ')).toMatch(/corner of the wheel.*relief/)
  })

  it('has the cautions of the wheel with their sources, and no line wider than 80 columns', () => {
    expect(data.cautions.join(' ')).toMatch(/\.125 from the wheel.*1910\.215\(a\)\(4\).*\.250 from the wheel/)
    expect(text.split('\n').filter((line) => line.length > 80)).toEqual([])
  })

  it('is a part of the sheet where it is asked for, and only there', async () => {
    const [without, with_] = [await program('sheet', JOB), await program('sheet', JOB, '--grind')]
    expect(without.stdout).not.toContain('TOOLS TO GRIND')
    expect(with_.stdout.startsWith(without.stdout)).toBe(true)
    expect(text.endsWith(with_.stdout.slice(without.stdout.length + 1))).toBe(true)
    const json = JSON.parse((await program('sheet', JOB, '--grind', '--format', 'json')).stdout)
    const belt = json.features.find((each: { name: string }) => each.name === 'Belt groove')
    expect(belt.grind.form.halfAngle).toEqual(form('keen').form.halfAngle)
  })
})

describe('every example', () => {
  it.each(yamlNames('examples/jobs'))('%s: a block for each planned feature, within 80 columns', async (name) => {
    const job = `examples/jobs/${name}.yaml`
    const [text, json] = [await program('grind', job), await program('grind', job, '--format', 'json')]
    const sheet = JSON.parse((await program('sheet', job, '--format', 'json')).stdout)
    const planned = sheet.features.filter(
      ({ status, kind }: { status: string; kind: string }) => status === 'planned' && kind !== 'roughing',
    )
    const data = JSON.parse(json.stdout) as Data
    expect(data.tools.flatMap(({ forms }) => forms.map(({ feature }) => feature)).sort()).toEqual(
      planned.map((each: { name: string }) => each.name).sort(),
    )
    expect(json.stdout).not.toMatch(/-0\b(?!\.)(?!\d)|NaN/)
    expect(text.stdout.split('\n').filter((line) => line.length > 80)).toEqual([])
    expect(text.stdout).not.toMatch(/NaN|undefined|\[object/)
    for (const { forms } of data.tools)
      for (const { form } of forms) expect(form.alongFace).toBeGreaterThanOrEqual(form.depth - 1e-9)
  })
})

describe('work for repeat', () => {
  it('is ground on size', () => {
    const repeat = readFileSync(join(ROOT, JOB), 'utf8').replace('units: inch\n', 'units: inch\nwork: repeat\n')
    const load: Load = (path, from) => {
      const file = from === null ? path : join(dirname(from), path)
      const bytes = file === JOB ? new TextEncoder().encode(repeat) : readFileSync(join(ROOT, file))
      return { ok: true, file, bytes }
    }
    const { plan, diagnostics } = compile(JOB, load)
    expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([])
    const tool = grindSheet(plan!, []).tools.find(({ name }) => name === 'to grind: Wide neck')!
    expect(tool.facts[0]!.width).toEqual({ drawn: 0.15625 * INCH, aim: 0.15625 * INCH, edge: 0.15625 * INCH })
    expect(JSON.stringify(tool.says)).toContain(': on size, for repeat work')
  })
})

describe('a job with a feature that cannot be cut', () => {
  it('says for which feature it has no tool, with status 1', async () => {
    const { stdout, status } = await program('grind', 'examples/broken/tool-too-wide.yaml')
    expect(status).toBe(1)
    expect(stdout).toContain('No tool')
  })
})

describe('a neck against a shoulder', () => {
  it('has sides that pass the shoulder, as far as the plan makes a tool reach that is still to be ground', async () => {
    const text = readFileSync(join(ROOT, 'examples/jobs/03-mill-spindle.yaml'), 'utf8').replace(/^ +tool: .*\n/gm, '')
    const load: Load = (path, from) => {
      const file = from === null ? path : join(dirname(from), path)
      const bytes = from === null ? new TextEncoder().encode(text) : readFileSync(join(ROOT, file))
      return { ok: true, file, bytes }
    }
    const { plan } = compile('examples/jobs/03-mill-spindle.yaml', load)
    const neck = plan!.features.flatMap((each) => (each.status === 'planned' ? [each] : []))[0]!
    expect(neck.edge.measured).toBe(false)
    expect(neck.ground!.form.shoulder).toBeGreaterThan(0)
    expect(neck.ground!.form.sidesReach[0]).toBeCloseTo(neck.edge.reach, -2)
    expect(neck.ground!.form.sidesReach[0]).toBeGreaterThan(neck.ground!.form.face + neck.ground!.form.shoulder)
  })
})
