import { describe, expect, it } from 'vitest'
import { LATHE, runIn } from '../cli/world.ts'

const JOB = `title: Press beam pin
units: inch
part:
  material: brass
  held: chuck and center
  steps:
    - { name: seat, diameter: 1.125, length: 3 }
    - { name: collar, diameter: 1.5, length: 1 }
    - { name: head, diameter: 1.75, length: 3 }
lathe: bench.yaml
tools:
  neck: { shape: square, width: 0.124, reach: 0.5, blank: 1/4 }
features:
  - kind: groove
    name: Oil groove
    from: collar
    near: 0.25
    width: 0.250 ±0.010
    depth: 0.093 ±0.003
    tool: neck
`

const check = (text: string) => runIn({ files: { 'pin.yaml': text, 'bench.yaml': LATHE } }, 'check', 'pin.yaml')

/** The job with one line made wrong, what is said of it, and the job with what the remedy says. */
const told = async (from: string, to: string): Promise<{ text: string; err: string; remedy: string }> => {
  expect(JOB).toContain(from)
  const text = JOB.replace(from, to)
  const { status, err } = await check(text)
  expect(status).toBeGreaterThan(0)
  return { text, err, remedy: /remedy: (.*)/.exec(err)?.[1] ?? '' }
}

describe('a remedy that is followed mends the job', () => {
  it('which is good before anything is wrong in it', async () => {
    expect((await check(JOB)).status).toBe(0)
  })

  it('where a line is indented wrong', async () => {
    const { text, remedy } = await told('    tool: neck', '   tool: neck')
    expect(remedy).toMatch(/^put before it 4 blanks, in line with "depth" of line 19/)
    expect((await check(text.replace('   tool: neck', '    tool: neck'))).status).toBe(0)
  })

  it('where a tolerance has no unit', async () => {
    const { text, remedy, err } = await told('±0.003', '±3')
    expect(err).toContain('depth: ±3 of what unit?')
    const ways = /too: (.*), or in inches (.*)$/.exec(remedy)!
    expect(ways.slice(1)).toEqual(['0.093 ±3 thou', '0.093 ±0.003'])
    for (const way of ways.slice(1)) expect((await check(text.replace('0.093 ±3', way))).status).toBe(0)
  })

  it('where from: is missing and the place is not on the part', async () => {
    const wrong = await told('    from: collar\n    near: 0.25\n', '    far: 0\n')
    expect(wrong.err).toContain('its place counts from the free end')
    expect(wrong.remedy).toMatch(/^if it counts from a step, write from: collar or from: head; otherwise /)
    for (const step of ['collar', 'head'])
      expect((await check(wrong.text.replace('    far: 0', `    from: ${step}\n    far: 0`))).status).toBe(0)
  })

  it('where from: is missing and the place is across two steps', async () => {
    const wrong = await told('    from: collar\n    near: 0.25\n', '    far: 3.1\n')
    expect(wrong.err).toContain('across the end of step "seat"')
    // 3.1 from the head is off the part.
    expect(wrong.remedy).toMatch(/^if it counts from a step, write from: collar; otherwise place it on one step/)
    expect((await check(wrong.text.replace('    far: 3.1', '    from: collar\n    far: 3.1'))).status).toBe(0)
  })

  it('and no step is proposed where it can be cut from none', async () => {
    const wrong = await told('    from: collar\n    near: 0.25\n', '    near: 8\n')
    expect(wrong.remedy).toBe('move it onto the part, or correct the lengths of the steps')
  })
})
