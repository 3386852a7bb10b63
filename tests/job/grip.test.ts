import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'

const job = (part: string) => `title: Press arbor
units: mm
part: { material: mild steel, ${part}, diameter: 30, length: 100 }
lathe:
  name: School lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14 }
  spindle-speeds: [60, 90, 140, 210]
tools:
  blade: { shape: square, width: 3.02, reach: 7, blank: 8, rake-ground: 0 }
features:
  - { kind: groove, name: Ring, near: 40, width: 3.02 ±0.1, depth: 1 ±0.1, tool: blade }
`
const read = (part: string) => compile('-', () => ({ ok: true, file: '-', bytes: job(part) }))
const said = (part: string) => read(part).diagnostics.map(({ message }) => message)
const codes = (part: string) => read(part).plan!.warnings.map(({ code }) => code)

describe('how the part is held', () => {
  it('a grip of 20 of 100 is an overhang of 80', () => {
    expect(read('held: chuck, grip: 20').plan!.setup.jaws).toBe(80e9)
    expect(codes('held: chuck, grip: 20')).toEqual([])
  })

  it('without either it is asked for, and slender work is still warned of: 100 is 3.3 diameters', () => {
    expect(codes('held: chuck')).toEqual(['slender', 'no-overhang'])
    expect(codes('held: collet')).toContain('no-overhang')
    expect(codes('held: chuck and center')).toEqual([])
  })

  it('is said once, and only where something grips', () => {
    expect(said('held: chuck, grip: 20, overhang: 80')).toEqual(['grip and overhang say the same'])
    expect(said('held: between centers, grip: 20')).toEqual(['nothing grips the work: held: between centers'])
    expect(said('held: chuck, grip: 100')).toEqual(expect.arrayContaining(['the grip takes the whole part']))
  })

  // An eighth of the diameter of 30 is 3.75; a center carries the end of what is held short.
  it('is refused where it is too short to hold', () => {
    expect(said('held: chuck, grip: 3.7')).toEqual(['only 3.70 of the part would be held, and 96.30 sticks out'])
    expect(said('held: chuck, grip: 3.8')).toEqual([])
    expect(said('held: collet, overhang: 97')).toEqual(['only 3.00 of the part would be held, and 97.00 sticks out'])
    expect(said('held: chuck and center, grip: 3')).toEqual([])
  })

  it('a mandrel leaves the whole length free, up to its very end', () => {
    const { plan } = read('held: mandrel')
    expect(plan!.setup).toMatchObject({ jaws: null, tailstockCenter: false })
    expect(plan!.features[0]!.status).toBe('planned')
    expect(plan!.warnings).toEqual([])
  })
})
