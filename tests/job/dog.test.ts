import { describe, expect, it } from 'vitest'
import { compile, sheetFor } from '../../src/compile.ts'
import { printText } from '../../src/print/text/print.ts'

const jobOf = (part: string, near = 74, carriage = '') => `title: Press arbor
units: mm
part: { material: mild steel, ${part}, diameter: 30, length: 100 }
lathe:
  name: School lathe
  units: mm
  cross-feed: { graduation: 0.05, per-turn: 5, reads: diameter, backlash: 0.3 }
  compound: { graduation: 0.02, per-turn: 3, backlash: 0.14 }
${carriage}  spindle-speeds: [60, 90, 140, 210]
tools:
  blade: { shape: square, width: 3.02, reach: 7, blank: 8, rake-ground: 0 }
features:
  - { kind: groove, name: Near dog, near: ${near}, width: 3.02 ±0.1, depth: 1 ±0.1, tool: blade }
`
const read = (text: string) => compile('-', () => ({ ok: true, file: '-', bytes: text }))
const printed = (plan: Parameters<typeof sheetFor>[0]) => printText(sheetFor(plan))
const planned = (text: string) => read(text).plan!

describe('a dog at the headstock end, as a trial planned a groove under it', () => {
  it.each([
    [94, 'beyond-overhang'],
    // The blank reaches to 72 + 3.02 + 2.49 = 77.51, and 6 is kept clear of the dog at 80.
    [72, 'near-dog'],
  ])('a groove at %d is refused beside a dog that takes 20', (near, code) => {
    const { features, setup } = planned(jobOf('held: between centers, dog: 20', near))
    expect(features[0]).toMatchObject({ status: 'refused', code })
    expect(setup.jaws).toBe(80e9)
  })
  it('a groove clear of it is planned, and warned of nothing', () => {
    const plan = planned(jobOf('held: between centers, dog: 20', 60))
    expect(plan.features[0]!.status).toBe('planned')
    expect(plan.warnings).toEqual([])
  })
  it('where nothing is said of a dog, a tool that comes near that end is warned of', () => {
    expect(planned(jobOf('held: between centers', 94)).warnings.map(({ code }) => code)).toEqual(['near-dog'])
    expect(planned(jobOf('held: between centers', 60)).warnings).toEqual([])
    expect(planned(jobOf('held: chuck, overhang: 80', 60)).warnings).toEqual([])
  })
  it('has no place in a chuck, nor over the whole part', () => {
    expect(read(jobOf('held: chuck, dog: 20')).diagnostics.map(({ message }) => message)).toEqual([
      'a dog drives work between centers',
    ])
    expect(read(jobOf('held: between centers, dog: 100')).diagnostics.map(({ message }) => message)).toEqual([
      'the dog takes the whole part',
    ])
  })
  it('is what the hand looks to before power, not the key of a chuck', () => {
    const between = printed(planned(jobOf('held: between centers, dog: 20', 60)))
    expect(between.replace(/\s+/g, ' ')).toContain(
      'Dog tight, its screw guarded, its tail free; center greased, tailstock locked. Turn the work by hand once before power.',
    )
    expect(between.replace(/\s+/g, ' ')).toContain('between centers, the dog takes 20.00 of the headstock end')
    expect(between).toMatch(/SPINDLE +start +dog free\? stand clear/)
    expect(between).not.toMatch(/\bkey\b/)
    expect(printed(planned(jobOf('held: chuck', 60)))).toMatch(/key out of the chuck[\s\S]*key out\? stand clear/)
  })
})

describe('a key that the carriage does not have', () => {
  const hints = (carriage: string) =>
    read(jobOf('held: chuck', 60, `  carriage: ${carriage}\n`)).diagnostics.map(({ hint }) => hint)
  it('is answered with keys that fit what is given', () => {
    expect(hints('{ readout: 0.01, reads: diameter }')).toEqual(['take it out'])
    expect(hints('{ indicator: 0.01, reads: diameter, range: 5 }')).toEqual(['take it out'])
    expect(hints('{ graduation: 0.1, shows: depth, backlash: 0.5, per-turn: 20 }')).toEqual([
      'keys not given yet: read-to',
    ])
  })
})
