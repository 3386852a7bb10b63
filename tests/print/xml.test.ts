import { describe, expect, it } from 'vitest'
import { escaped, joined, tag } from '../../src/print/markup.ts'
import { everyIn, parse, pointsOf, textIn } from './xml.ts'

describe('the reader of marked-up text that the tests go by', () => {
  it('reads elements, attributes and text', () => {
    const read = parse('<a b="1" c-d="&#60;"><e/>x&#38;y<f>z</f></a>')
    expect(read.attributes).toEqual({ b: '1', 'c-d': '<' })
    expect(everyIn(read).map(({ name }) => name)).toEqual(['a', 'e', 'f'])
    expect(textIn(read)).toBe('x&yz')
  })

  it.each([
    ['<a><b></a></b>', 'ends <b>'],
    ['<a>', 'is not ended'],
    ['<a b=1></a>', 'no tag'],
    ['<a b="<"></a>', 'no tag'],
    ['<a b="1" b="2"></a>', 'given twice'],
    ['<a>x & y</a>', '& that begins nothing'],
    ['<a>]]></a>', ']]> in text'],
    ['<a>< b</a>', 'no tag'],
    ['<a></a><b></b>', 'more than one'],
    ['<a></a>x', 'more than one'],
    ['<a>\u0001</a>', 'a sign that may not stand'],
  ])('stops at %s', (text, why) => {
    expect(() => parse(text)).toThrow(why)
  })

  it('reads where the strokes of a path end', () => {
    expect(pointsOf('M1 2L3 4V9H0')).toEqual([
      [1, 2],
      [3, 4],
      [3, 9],
      [0, 9],
    ])
  })

  it('reads all along an arc: clockwise from right to left it goes through the bottom', () => {
    const quarter = Math.SQRT1_2 * 10
    const deepest = (sweep: number): number =>
      Math.max(...pointsOf(`M${quarter} ${quarter}A10 10 0 0 ${sweep} ${-quarter} ${quarter}`).map(([, y]) => y))
    expect(deepest(1)).toBeCloseTo(10, 6)
    expect(deepest(0)).toBeCloseTo(quarter, 6)
  })
})

describe('markup', () => {
  it('is never made of text, wherever that stands', () => {
    const text = `<b a="1">&'\`]]>`
    const made = joined(tag('p', { title: text }, text, [text]))
    const read = parse(made)
    expect(everyIn(read)).toHaveLength(1)
    expect(read.attributes.title).toBe(text)
    expect(textIn(read)).toBe(text + text)
  })

  it('shows signs that turn text round, and has none that a file may not have', () => {
    expect(escaped('a\u202eb')).toBe('a[U+202E]b')
    expect(escaped('a\u0000\ud800\ufffe\u0085b')).toBe('a\ufffd\ufffd\ufffd\ufffdb')
    expect(escaped('a\nb\tc\u2028d')).toBe('a b c d')
    expect(escaped('Préß ½ 😀 ☃')).toBe('Préß ½ 😀 ☃')
  })
})
