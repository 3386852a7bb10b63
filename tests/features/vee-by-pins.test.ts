import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

/** A V whose bottom nothing else at hand takes, on a bar of 1.500. */
const job = (form: string, nose: number, missing = 'depth-indicator, blade-micrometer, depth-micrometer') => `
title: Rollers of the press
units: inch
part: { material: mild steel, held: chuck and center, diameter: 1.5, measured-diameter: 1.5, length: 8, overhang: 7 }
lathe:
  name: Long shed lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, reads: depth }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.004, angle: 0, travel: 3 }
  spindle-speeds: [20, 45, 70, 110, 200]
  instruments: { missing: [${missing}] }
tools:
  cord: { shape: vee, angle: 60, nose: ${nose}, reach: 0.3 }
features:
  - { kind: v-groove, name: Cord, angle: 60, ${form}, tool: cord, near: 2 }
`
const sheet = async (text: string) => {
  const text80 = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml')
  const data = await runIn({ files: { 'job.yaml': text } }, 'sheet', 'job.yaml', '--format', 'json')
  return { words: text80.out.replace(/\s+/g, ' '), data: JSON.parse(data.out) }
}

type Told = { readonly width: number; readonly bottom: number; readonly pin: number; readonly less: number }
/** What each MEASURE tells. */
const told = (words: string): Told[] =>
  words.split(' MEASURE ').flatMap((part): Told[] => {
    const found =
      /width (\S+) \(.*bottom diameter (\S+) \(over two (\d+)\/(\d+) in pins less (\S+)\)/.exec(part) ?? null
    if (found === null) return []
    const [, width, bottom, over, under, less] = found
    return [{ width: Number(width), bottom: Number(bottom), pin: Number(over) / Number(under), less: Number(less) }]
  })

/** Over the pins by the width at the surface: M = OD − W/tan α + p(1 + 1/sin α), the formula of three wires in a sharp V (plane geometry). */
const over = ({ width, pin }: Told): number =>
  1.5 - width / Math.tan(Math.PI / 6) + pin * (1 + 1 / Math.sin(Math.PI / 6))

describe('the bottom of a V that nothing else enters', () => {
  it.each([
    ['a keen one', 'depth: 0.1 ±.005, root: 0', 0],
    ['a flat that its nose cuts', 'depth: 0.1 ±.005, root: 0.020', 0.02],
    ['a flat that is wider than its nose, and narrower at the stop', 'depth: 0.1 ±.005, root: 0.040', 0.022],
  ])('is taken over two pins, less what they stand above it: %s', async (_, form, nose) => {
    const { words, data } = await sheet(job(form, nose))
    const stops = told(words)
    // Where it is the same at the end it is not told again.
    expect(stops).toHaveLength(form.includes('0.040') ? 2 : 1)
    for (const stop of stops) expect(over(stop) - stop.less).toBeCloseTo(stop.bottom, 3)
    // By the reading of the root, that of a nose beside which it is widened is not sure enough to correct by.
    expect(words.includes('FINISH BY bottom diameter')).toBe(!form.includes('0.040'))
    expect(data.features[0].inspection.find(({ id }: { id: string }) => id === 'bottomDiameter').instrument).toBe(
      'pins',
    )
  })

  it('is not where no pin seats in what is roughed by then', async () => {
    // .020 deep the V is .037 wide: a pin that seats in .0924 does not.
    const { words } = await sheet(job('depth: 0.08 ±.005, root: 0, leave: 0.060', 0))
    expect(told(words)).toEqual([])
    expect(words).toContain('not asked, nothing at hand takes it: depth, bottom diameter')
  })

  it('is taken by a needle where that is surer', async () => {
    const { words } = await sheet(job('depth: 0.1 ±.005, root: 0', 0, 'blade-micrometer, depth-micrometer'))
    expect(words).toMatch(/bottom diameter \S+ \(depth indicator\)/)
  })

  it('is less sure the less is known of the angle', async () => {
    const within = async (text: string): Promise<number> =>
      (await sheet(text)).data.features[0].inspection.find(({ id }: { id: string }) => id === 'bottomDiameter').within
    const text = job('depth: 0.1 ±.005, root: 0', 0)
    const by = [await within(text), await within(text.replace('nose: 0,', 'nose: 0, angle-within: 0.25,'))]
    // Pins of 5/64: p cos α / sin² α for half of the quarter degree that it is better known.
    const less = ((5 / 64) * Math.cos(Math.PI / 6) * 4 * (0.25 / 2) * Math.PI) / 180
    expect(by[0]! - by[1]!).toBeCloseTo(less, 4)
  })
})

it('a keen V has no flat to be asked for', async () => {
  const { words } = await sheet(job('depth: 0.1 ±.005, root: 0', 0))
  expect(words).not.toContain('flat at the root')
})

it('a flat too narrow for a feeler is not asked for', async () => {
  expect((await sheet(job('depth: 0.1 ±.005, root: 0.009', 0.009))).words).toMatch(
    /nothing at hand takes it: [^.]*flat at the root/,
  )
  expect((await sheet(job('depth: 0.1 ±.005, root: 0.010', 0.01))).words).toContain(
    'flat at the root .010 (gauge blocks)',
  )
})
