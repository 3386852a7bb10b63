import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { plain } from '../../src/phrase/words.ts'

const planOf = (name: string, change: (text: string) => string = (text) => text) =>
  compile(`examples/jobs/${name}.yaml`, (path, from) => {
    const file = from === null ? path : join(dirname(from), path)
    const text = readFileSync(file, 'utf8')
    return { ok: true, file, bytes: new TextEncoder().encode(from === null ? change(text) : text) }
  }).plan!

const told = (plan: ReturnType<typeof planOf>) =>
  plan.warnings.filter(({ code }) => code === 'many-moves').map(({ say, feature }) => [feature, plain(say, 'inch')])

describe('a form that is stepped along by very many moves', () => {
  it('is compared with a tool that is ground to it, whose moves are what such a plan has', () => {
    const [[feature, says] = []] = told(planOf('20-filleted-groove'))
    const stepped = planOf('20-filleted-groove').features[feature as number]!
    const moves = (of: typeof stepped) => (of.status === 'planned' ? of.operation.moves.length : 0)
    // The second of two features with the same tool.
    const ground = planOf('20-filleted-groove', (text) => text.slice(0, text.lastIndexOf('    tool: blunt')))
    expect(says).toContain(`it takes ${moves(stepped)} moves`)
    expect(says).toContain(`a tool that is ground to the form takes ${moves(ground.features[feature as number]!)}`)
    expect(moves(ground.features[feature as number]!)).toBeLessThan(moves(stepped) / 2)
  })

  it('may be filed where it is outside, and not where it is in a groove', () => {
    const all = told(planOf('19-no-form-tool')).map(([, says]) => String(says).includes('file it round'))
    expect(all).toEqual([true, false])
  })

  it('is not warned of where it takes few', () => {
    for (const name of ['01-press-screw', '14-whole-screw', '11-tray-valve']) expect(told(planOf(name))).toEqual([])
  })
})
