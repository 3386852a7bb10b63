import { describe, expect, it } from 'vitest'
import { good, LATHE, runIn } from './world.ts'

const check = (text: string, name = 'shop/pin.yaml') =>
  runIn({ files: { 'shop/good.yaml': good(), 'shop/bench.yaml': LATHE, [name]: text } }, 'check', 'shop')

describe('a folder that is checked', () => {
  it.each(['feature', 'featurs', 'Features', 'feautres', 'features_'])(
    'has a job with %s: for features: named as a mistake, and not skipped in silence',
    async (key) => {
      const { status, out, err } = await check(good().replace('features:', `${key}:`))
      expect(status).toBe(2)
      expect(out).toContain('shop/pin.yaml: unreadable\n')
      expect(err).toContain(`shop/pin.yaml:7:1: error: job has no key "${key}"`)
      expect(err).toContain('remedy: did you mean "features"?')
      expect(err).not.toContain('skipped, not a job: shop/pin.yaml')
    },
  )

  it('has a job whose features are missing, or under another name, named', async () => {
    for (const text of [good().replace(/features:[\s\S]*/, ''), good().replace('features:', 'grooves:')]) {
      const { status, err } = await check(text)
      expect(status).toBe(2)
      expect(err).toContain('the job has no "features"')
    }
  })

  it('has a job that misspells more than its features named', async () => {
    const { status, err } = await check(good().replace('features:', 'grooves:').replace('part:', 'parts:'))
    expect(status).toBe(2)
    expect(err).toContain('did you mean "part"?')
  })

  it.each([
    ['a lathe', LATHE],
    ['a toolbox', 'neck: { shape: square, width: 0.148, reach: 0.125 }\n'],
    ['a toolbox with a tool called feature', 'feature: { shape: square, width: 0.148, reach: 0.125 }\n'],
    ['a list of moves', 'moves:\n  - { feature: 1, action: start }\n'],
    ['the notes of the workshop', 'title: Cider press, winter work\ntools: on loan until May\n'],
    ['a plain list', '- oil\n- rags\n'],
  ])('has what is no job skipped: %s', async (_, text) => {
    const { status, out, err } = await check(text)
    expect({ status, out }).toEqual({ status: 0, out: 'shop/good.yaml: good, 1 feature\n1 job: 1 good, 2 skipped\n' })
    expect(err).toContain('skipped, not a job: shop/pin.yaml\n')
  })
})
