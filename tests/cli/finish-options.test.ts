import { describe, expect, it } from 'vitest'
import { LATHE, runIn } from './world.ts'

const job = (features: readonly string[], units = 'inch'): string => `title: Press beam pin
units: ${units}
part: { material: mild steel, diameter: 1.5 in, length: 5 in, overhang: 4 in }
lathe: bench.yaml
tools: { neck: { shape: square, width: 0.148 in, reach: 0.125 in } }
features:
${features.map((feature) => `  - { ${feature} }\n`).join('')}`
const GROOVE =
  'kind: groove, name: Cotter groove, near: 1.125 in, width: 0.156 in ±0.005 in, depth: 0.070 in +0.004 in -0 in, tool: neck'
const OTHER =
  'kind: groove, name: Oil groove, near: 2.5 in, width: 0.156 in ±0.005 in, depth: 0.040 in ±0.004 in, tool: neck'
const CORNER = 'kind: radius, shape: corner, name: End round, corner-of: end, radius: 0.125 in'

const finish = (features: readonly string[], args: readonly string[], units = 'inch') =>
  runIn({ files: { 'pin.yaml': job(features, units), 'bench.yaml': LATHE } }, 'finish', 'pin.yaml', ...args)

describe('a size measured at the stop', () => {
  // 1.5 less twice .053 is 1.394; 35.4076 mm is 1.394 in x 25.4, and 1 25/64 is 1.390625, worked by hand.
  it.each([
    ['--bottom-diameter', '1.394', ['1394 thou', '1.394 in', '1.394"', '35.4076 mm', ' 1.3940 ']],
    ['--bottom-diameter', '1.390625', ['1 25/64', '1-25/64', '89/64']],
  ])('%s %s is taken however it is written', async (option, plain, ways) => {
    const wanted = await finish([GROOVE], [option, plain])
    expect(wanted).toMatchObject({ status: 0, err: '' })
    for (const way of ways) expect(await finish([GROOVE], [option, way])).toEqual(wanted)
  })

  it('width and outside diameter are taken as it is', async () => {
    const wanted = await finish(
      [GROOVE],
      ['--bottom-diameter', '1.394', '--width', '0.148', '--outside-diameter', '1.5'],
    )
    expect(wanted).toMatchObject({ status: 0, err: '' })
    for (const [width, outside] of [
      ['148 thou', '1 1/2'],
      ['3.7592 mm', '38.1 mm'],
      ['.148"', '3/2 in'],
    ])
      expect(
        await finish([GROOVE], ['--bottom-diameter', '1.394', '--width', width!, '--outside-diameter', outside!]),
      ).toEqual(wanted)
  })

  it('a bare number is in the units of the job', async () => {
    const metric = await finish([GROOVE], ['--bottom-diameter', '35.4076'], 'mm')
    expect(metric).toMatchObject({ status: 0, err: '' })
    expect(await finish([GROOVE], ['--bottom-diameter', '1.394 in'], 'mm')).toEqual(metric)
  })

  it.each(['--bottom-diameter', '--width', '--outside-diameter'])(
    '%s says what is wrong in the words of a file',
    async (option) => {
      const others = option === '--bottom-diameter' ? [] : ['--bottom-diameter', '1.394']
      const said = async (text: string): Promise<string> => {
        const { status, out, err } = await finish([GROOVE], [...others, option, text])
        expect({ status, out }).toEqual({ status: 2, out: '' })
        return err
      }
      const file = async (text: string): Promise<string> => {
        const part = { 'pin.yaml': job([GROOVE]).replace('length: 5 in', `length: '${text}'`), 'bench.yaml': LATHE }
        const { err } = await runIn({ files: part }, 'check', 'pin.yaml')
        const [, message, hint] = /error: (.*)\n[\s\S]*remedy: (.*)\n/.exec(err)!
        return `groovewright: ${message!.replace('length', option)}; ${hint}\n`
      }
      for (const text of ['1.394 ±0.001', '1,394', 'abc', '1.394 foot', '1/0', '0', '', '3 4/3'])
        expect(await said(text)).toBe(await file(text))
      expect(await said('1.394 ±0.001')).toContain('has a tolerance, and none is taken here; give the plain size')
      expect(await said('-1')).toContain(`${option} is -1; it must be more than zero`)
    },
  )
})

describe('the feature to finish', () => {
  const measured = ['--bottom-diameter', '1.394'] as const

  it('need not be named where the job has one', async () => {
    expect(await finish([GROOVE], measured)).toEqual(
      await finish([GROOVE], [...measured, '--feature', 'Cotter groove']),
    )
  })

  it('need not be named where only one of them stops to measure', async () => {
    const found = await finish([CORNER, GROOVE], measured)
    expect(found).toEqual(await finish([CORNER, GROOVE], [...measured, '--feature', 'Cotter groove']))
    expect(found.status).toBe(0)
  })

  it('is asked for where there are more, with the names to choose from', async () => {
    const { status, out, err } = await finish([GROOVE, CORNER, OTHER], measured)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toBe(
      'groovewright: --feature is missing, and the job has more than one; give --feature with one of "Cotter groove", "Oil groove"\n',
    )
    expect((await finish([GROOVE, CORNER, OTHER], [...measured, '--feature', 'Cotter groove'])).status).toBe(0)
  })
})
