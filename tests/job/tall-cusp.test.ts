import { expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'

const job = (own: string, common = ''): string => `title: Press spindle
units: inch
part: { material: brass, held: chuck, diameter: 1.25, length: 2, overhang: 1.2 }
lathe:
  name: Village lathe
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.1, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.1, backlash: 0.006, travel: 2 }
  spindle-speeds: [45, 70, 110, 180]
tools: { small: { shape: round, radius: 0.06, reach: 0.1 } }
features:
  - { kind: radius, name: Hollow, shape: concave, radius: 0.2, width: 0.2, center: 0.6, tool: small${own} }
${common}`
const read = (text: string) => compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes: text }))

it.each([
  ['of the feature', job(', cusp: 1/3'), ['features', 0, 'cusp']],
  ['gathered in the feature', job(', cutting: { cusp: 0.02 }'), ['features', 0, 'cutting', 'cusp']],
  ['of the job', job('', 'cutting: { cusp: 0.5 mm }\n'), ['cutting', 'cusp']],
] as const)('a ridge of more than a 64th is refused, %s', (_, text, path) => {
  const { diagnostics, plan } = read(text)
  expect(plan).toBeNull()
  expect(diagnostics).toMatchObject([{ code: 'impossible', origin: { path } }])
})

it('a ridge of a 64th is not', () => {
  expect(read(job(', cusp: 1/64')).diagnostics).toEqual([])
})
