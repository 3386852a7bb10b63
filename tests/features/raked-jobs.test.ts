import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printJson } from '../../src/print/json/print.ts'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'

const TILTED = 'holder-angle: 14 1/2 deg'

/** One feature with one tool, planned and proved twice, or refused. */
const made = (tool: string, feature: string, more = '') => {
  const text = `
title: Spindle of the cider pump
units: inch
part: { material: mild steel, held: chuck, diameter: 1.5, length: 5, overhang: 4 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5${more} }
  spindle-speeds: [60, 95, 150, 240]
tools:
  bit: { ${tool} }
features:
  - { name: Form, tool: bit, ${feature} }
`
  const { plan, diagnostics } = compile('job.yaml', (path) => ({ ok: true, file: path, bytes: Buffer.from(text) }))
  expect(diagnostics).toEqual([])
  const sheet = JSON.parse(printJson(sheetFor(plan!))) as Sheet
  const one = sheet.features[0]!
  if (one.status === 'planned') expect(bruteForce(sheet).problems).toEqual([])
  return one
}
const vee = (angle: string, keys = TILTED) => `shape: vee, angle: ${angle}, nose: 0.030, reach: 0.260, ${keys}`
const round = (radius: string, keys = TILTED) => `shape: round, radius: ${radius}, reach: 0.260, ${keys}`
const hollow = (radius: string, keys = TILTED) => `shape: corner, radius: ${radius}, ${keys}`
const belt = 'kind: v-groove, angle: 34, depth: 3/16, root: 0.030, center: 1'
const cord = 'kind: radius, shape: concave, radius: 1/4, depth: 0.080, center: 2'

describe('a V on a sloping face', () => {
  it('is refused when it was ground to the drawing, with what to grind and how to level the top', () => {
    const { code, reason, remedy } = made(vee('34'), belt).refusal!
    expect(code).toBe('ground-on-face')
    expect(reason).toMatch(/34° on its face.*14° 30' of rake in use it cuts 34° 47', the drawing asks for 34°/)
    expect(remedy).toBe("grind 33° 14' on the face, or level the top (rake-ground: -14.5) and grind 34°")
  })

  it.each([
    ['corrected', vee("33° 14'"), belt],
    ['keen and corrected', vee("33° 12'").replace('0.030', '0'), 'kind: v-groove, angle: 34, width: 0.1, center: 1'],
    ['falling toward the edge', vee("33° 55'", 'rake-in-use: -5'), belt],
    ['with limits that it stands in', vee('34'), belt.replace('34,', '34 ±1,')],
  ])('is planned when it is %s', (_, tool, feature) => {
    const one = made(tool, feature)
    expect(one.status).toBe('planned')
    expect(one.edge!.angle).not.toBe(one.edge!.face!.angle)
    expect(Math.abs(one.finished!.angle!.planned - one.edge!.angle!)).toBeLessThan(0.01)
  })

  it('feeds down its flank as well', () => {
    const one = made(vee("33° 14'"), `${belt}, method: flank-feed, cutting: { compound: { angle: 73 } }`)
    expect(one.refusal?.code ?? one.status).toBe('planned')
  })
})

describe('a round end on a sloping face', () => {
  it('is refused when it was ground to the drawing, with the radius to grind', () => {
    const { code, remedy } = made(round('1/4'), cord).refusal!
    expect(code).toBe('ground-on-face')
    expect(remedy).toMatch(/^grind a radius of \.2452 on the face, or level the top/)
  })

  it('is planned when it is ground so, or stands in the limits, and shows the radius that it cuts', () => {
    expect(made(round('0.2452'), cord).finished!.radius!.planned).toBeCloseTo(0.25, 3)
    const wide = made(round('1/4'), cord.replace('1/4', '1/4 ±.01'))
    expect(wide.finished!.radius!.planned).toBeCloseTo(wide.edge!.radius!, 4)
    expect(wide.edge!.radius!).toBeGreaterThan(0.254)
  })

  it('is refused over half a circle: right at bottom and edges, too flat between them', () => {
    const { reason, remedy } = made(round('0.0938'), cord.replace('1/4, depth: 0.080', '3/32, width: 3/16')).refusal!
    expect(reason).toContain('its round end comes out flat between them')
    expect(remedy).toBe('level the top (rake-ground: -14.5)')
  })

  it('steps along a larger form with the radius that it shows there', () => {
    expect(made(round('1/8'), cord).status).toBe('planned')
  })
})

describe('a hollow and a square edge on a sloping face', () => {
  const end = (radius: string) => `kind: radius, shape: corner, corner-of: end, radius: ${radius}`

  it('refuses a hollow whose leg comes out short by more than half a mark, and plans one that does not', () => {
    const { code, reason } = made(hollow('1/8'), end('1/8')).refusal!
    expect(code).toBe('ground-on-face')
    expect(reason).toMatch(/cuts \.1250 along the work and \.1217 down the face/)
    const small = made(hollow('1/64'), end('1/64'))
    expect(small.status).toBe('planned')
    expect(small.finished!.legDown!.planned).toBeLessThan(small.finished!.legAlong!.planned)
  })

  it('plans a hollow that was stretched to the leg that it is told to grind, and holds its radius', () => {
    const { remedy } = made(hollow('1/8'), end('1/8')).refusal!
    const leg = /^grind the leg that goes down the work ([.\d]+) long on the face/.exec(remedy!)?.[1] ?? ''
    // Plane geometry: the deep tip stands on center .625 from the axis, the end of the leg .750: L² + 2·L·.625·cos 14.5° + .625² = .750².
    const [floor, surface, cosine] = [0.625, 0.75, Math.cos((14.5 * Math.PI) / 180)]
    const level = floor * cosine
    expect(Number(leg)).toBeCloseTo(Math.sqrt(level * level + surface * surface - floor * floor) - level, 4)
    const one = made(hollow('1/8', `leg-on-face: ${leg}, ${TILTED}`), end('1/8 ±.002'))
    expect(one.refusal?.reason ?? one.status).toBe('planned')
    expect(one.edge!.face).toMatchObject({ radius: 0.125, leg: Number(leg) })
    // What touches the face is .003 up from the tip: there the form meets the face.
    expect(one.finished!.legDown!.planned).toBeCloseTo(0.122, 6)
    expect(Math.abs(one.finished!.radius!.planned - 0.125)).toBeLessThan(0.0015)
  })

  it('refuses a hollow that was stretched too far, with what it cuts', () => {
    const { code, reason, remedy } = made(hollow('1/8', `leg-on-face: 0.136, ${TILTED}`), end('1/8')).refusal!
    expect(code).toBe('ground-on-face')
    expect(reason).toMatch(
      /a quarter of \.1250, stretched to \.1360, on its face.*along the work and \.13\d\d down the face/,
    )
    expect(remedy).toMatch(/^grind the leg .* \.128\d long on the face.*leg-on-face/)
  })

  it('plans a square edge as ever, and one with small rounded corners as they stand', () => {
    const groove = 'kind: groove, near: 1, width: 1/8, depth: 0.1'
    const straight = made(`shape: square, width: 0.120, reach: 0.2, ${TILTED}`, groove)
    expect([straight.status, straight.edge!.face]).toEqual(['planned', undefined])
    const round = made(`shape: square, width: 0.120, corner-radius: 0.010, reach: 0.2, ${TILTED}`, groove)
    expect([round.status, round.edge!.face!.radius]).toEqual(['planned', 0.01])
  })
})

describe('corners that the drawing only bounds, by a tool on a sloping face', () => {
  // A corner of .7 on a face that slopes by 16.5° comes out about .700 along by .672 deep: flatter than its arc, and all of it under 1.
  const job = (reads: string, bound: string) => `title: Wringer roller of the cider press
units: mm
part: { material: mild steel, held: chuck, diameter: 40, length: 100, overhang: 80 }
lathe:
  name: Village lathe
  units: mm
  cross-feed: { graduation: 0.02, per-turn: 4, reads: ${reads}, backlash: 0.16 }
  compound: { graduation: 0.01, per-turn: 2, backlash: 0.12, travel: 80 }
  spindle-speeds: [20, 60, 95, 150]
tools: { own: { shape: square, width: 5.3, corner-radius: 0.7, reach: 6, rake-in-use: 16.5 } }
features:
  - { kind: groove, name: Ring groove, near: 30, width: 6.6, depth: 3, corner-radius: ${bound}, tool: own }
`
  const featureOf = (text: string) => compile('-', () => ({ ok: true, file: '-', bytes: text })).plan!.features[0]!
  it.each(['depth', 'diameter'])('are planned on a dial that reads %s', (reads) => {
    expect(featureOf(job(reads, '1 max')).status).toBe('planned')
  })
  it('are refused where the tool is rounder than the bound', () => {
    const feature = featureOf(job('depth', '0.6 max'))
    expect(feature.status === 'refused' && feature.code).toBe('corner-too-round')
  })
})
