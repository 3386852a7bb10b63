import { describe, expect, it } from 'vitest'
import { kept } from '../../src/replay/form/kept.ts'
import { line } from './shop.ts'

describe('what is kept for two forms and some numbers', () => {
  const [part, drawn] = [[line(0, 0, 1, 0)], [line(0, 1, 1, 1)]]

  it('is made once', () => {
    let made = 0
    const keep = kept<number>()
    const ask = (...numbers: number[]) => keep(part, drawn, numbers, () => ++made)
    expect([ask(1, 2), ask(1, 2), ask(1, 2)]).toEqual([1, 1, 1])
  })

  it('is another for other numbers, another form, or the two the other way round', () => {
    let made = 0
    const keep = kept<number>()
    const other = [line(0, 0, 1, 0)]
    const all = [
      keep(part, drawn, [1, 2], () => ++made),
      keep(part, drawn, [12], () => ++made),
      keep(other, drawn, [1, 2], () => ++made),
      keep(part, other, [1, 2], () => ++made),
      keep(drawn, part, [1, 2], () => ++made),
    ]
    expect(all).toEqual([1, 2, 3, 4, 5])
    expect(keep(part, drawn, [12], () => ++made)).toBe(2)
  })
})
