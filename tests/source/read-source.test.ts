import { describe, expect, test } from 'vitest'
import type { Path } from '../../src/diagnostics/diagnostic.ts'
import { readSource } from '../../src/source/read-source.ts'

const read = (content: string | Uint8Array) => readSource(content, 'job.yaml')
const problems = (content: string | Uint8Array) =>
  read(content).diagnostics.map(
    ({ span, code, message }) => `${span?.line}:${span?.column}+${span?.length} ${code}: ${message}`,
  )

const JOB = `title: Cider press screw # of a village workshop
units: inch
part:
  steps:
    - { name: pilot, diameter: 0.8750000000000000001, length: 2 }
    - name: body
      diameter: 1.500
features:
- kind: groove
  width: 5/32 ±0.005
  depth: "0.070 +0.004 -0"
  why:
  notes: |
    first line
    second line
`

describe('data', () => {
  test('is plain', () => {
    expect(read(JOB)).toMatchObject({
      file: 'job.yaml',
      text: JOB,
      diagnostics: [],
      data: {
        title: 'Cider press screw',
        units: 'inch',
        part: {
          steps: [
            { name: 'pilot', diameter: 0.875, length: 2 },
            { name: 'body', diameter: 1.5 },
          ],
        },
        features: [
          {
            kind: 'groove',
            width: '5/32 ±0.005',
            depth: '0.070 +0.004 -0',
            why: null,
            notes: 'first line\nsecond line\n',
          },
        ],
      },
    })
  })

  test('YAML 1.2, core: words of older versions are words, octal looks are decimal, << is a key', () => {
    expect(read('a: yes\nb: 012\nc: 1:30\nd: true\ne: ~\nf: 2026-11-25\n<<: {g: 1}\n').data).toEqual({
      a: 'yes',
      b: 12,
      c: '1:30',
      d: true,
      e: null,
      f: '2026-11-25',
      '<<': { g: 1 },
    })
  })

  test('names of keys are what is written', () => {
    expect(read('1/4: a\n007: b\ntrue: c\n1.50: d\n').data).toEqual({ '1/4': 'a', '007': 'b', true: 'c', '1.50': 'd' })
  })
})

describe('scalarSource', () => {
  const source = read(JOB)
  test.each([
    [['part', 'steps', 0, 'diameter'], '0.8750000000000000001'],
    [['part', 'steps', 1, 'diameter'], '1.500'],
    [['features', 0, 'width'], '5/32 ±0.005'],
    [['features', 0, 'depth'], '0.070 +0.004 -0'],
    [['title'], 'Cider press screw'],
    [['features', 0, 'why'], undefined],
    [['features', 0], undefined],
    [['features', 7, 'width'], undefined],
    [['nothing'], undefined],
    [[], undefined],
  ] as [Path, string | undefined][])('%j', (path, text) => {
    expect(source.scalarSource(path)).toBe(text)
  })
})

describe('locate', () => {
  const source = read(JOB)
  test.each([
    ['a value', ['units'], 'value', 2, 8, 4],
    ['a key', ['units'], 'key', 2, 1, 5],
    ['a value without the comment behind it', ['title'], 'value', 1, 8, 17],
    ['a value in a list', ['part', 'steps', 0, 'diameter'], 'value', 5, 32, 21],
    ['a key in a list', ['part', 'steps', 1, 'diameter'], 'key', 7, 7, 8],
    ['an item of a list has no key', ['part', 'steps', 0], 'key', 5, 7, 59],
    ['an item that is a mapping: its first key', ['part', 'steps', 1], 'value', 6, 7, 4],
    ['an index as text', ['part', 'steps', '1', 'name'], 'value', 6, 13, 4],
    ['a value in quotes', ['features', 0, 'depth'], 'value', 11, 10, 17],
    ['nothing after a key: the key', ['features', 0, 'why'], 'value', 12, 3, 3],
    ['several lines: the first', ['features', 0, 'notes'], 'value', 13, 10, 1],
    ['a missing key: the key above', ['part', 'held'], 'key', 3, 1, 4],
    ['a missing value: the key above', ['part', 'held'], 'value', 3, 1, 4],
    ['a missing key of an item: its first key', ['features', 0, 'near'], 'value', 9, 3, 4],
    ['far below what is missing: the nearest there is', ['part', 'held', 'deep', 3], 'value', 3, 1, 4],
    ['a missing item: the key of the list', ['features', 5], 'value', 8, 1, 8],
    ['a missing key at the top: the beginning', ['lathe'], 'key', 1, 1, 5],
    ['the whole file', [], 'value', 1, 1, 5],
  ] as [string, Path, 'key' | 'value', number, number, number][])('%s', (_, path, at, line, column, length) => {
    expect(source.locate(path, at)).toEqual({ line, column, length })
  })

  test('counts columns from behind a byte-order mark, and lines with CR LF', () => {
    const crlf = read('\ufeffa: 1\r\nb: 22\r\n')
    expect(crlf.diagnostics).toEqual([])
    expect(crlf.locate(['a'], 'key')).toEqual({ line: 1, column: 1, length: 1 })
    expect(crlf.locate(['b'], 'value')).toEqual({ line: 2, column: 4, length: 2 })
  })

  test('counts empty lines behind the end of a document', () => {
    expect(problems('a: 1\n...\n\n\nb\n')[0]).toMatch(/^5:1\+1 /)
  })

  test('gives a place even in a broken file', () => {
    expect(read('a: [').locate(['a', 0], 'value')).toEqual({ line: 1, column: 1, length: 1 })
  })
})

describe('refused', () => {
  test.each([
    ['a key twice', 'a: 1\nb: 2\n"a": 3\n', ['3:1+3 source-duplicate: "a" is here twice: the first is on line 1']],
    [
      'a key twice in flow',
      'x: { a: 1, a: 2 }\n',
      ['1:12+1 source-duplicate: "a" is here twice: the first is on line 1'],
    ],
    ['aliases', 'a: &x 1\nb: *x\nc: [*x]\n', ['2:4+2 source-alias: an alias: *x', '3:5+2 source-alias: an alias: *x']],
    ['an alias of itself', 'a: &x [*x]\n', ['1:8+2 source-alias: an alias: *x']],
    [
      'tags',
      'a: !!binary aGk=\nb: ! x\nc: !mine {}\nd: !!str 1\n',
      [
        '1:4+8 source-tag: a tag: !!binary',
        '2:4+1 source-tag: a tag: !',
        '3:4+5 source-tag: a tag: !mine',
        '4:4+5 source-tag: a tag: !!str',
      ],
    ],
    ['a tag behind an anchor', 'a: !!str &x 1\n', ['1:4+5 source-tag: a tag: !!str']],
    ['a tag on a key', '!!str a: 1\n', ['1:1+5 source-tag: a tag: !!str']],
    ['a version', '# job\n%YAML 1.1\n---\na: yes\n', ['2:1+9 source-directive: a directive: %YAML 1.1']],
    [
      'a tag directive',
      '%TAG ! tag:x,2026:\n---\na: 1\n',
      ['1:1+18 source-directive: a directive: %TAG ! tag:x,2026:'],
    ],
    ['__proto__', 'a: { __proto__: { b: 1 } }\n', ['1:6+9 source-key: "__proto__" cannot be a key']],
    ['__proto__ by an escape', '"__pr\\u006fto__": 1\n', ['1:1+16 source-key: "__proto__" cannot be a key']],
    ['a key that is a list', '? [a, b]\n: 1\n', ['1:3+6 source-key: a key that is not a single word or name']],
    ['a key that is nothing', ': 1\n', ['1:1+1 source-key: a key is missing before the colon']],
    ['infinity', 'a: .inf\n', ['1:4+4 source-number: ".inf" is not a number that can be used']],
    ['no number', 'a: .nan\n', ['1:4+4 source-number: ".nan" is not a number that can be used']],
    ['a number beyond all', 'a: 1e999\n', ['1:4+5 source-number: "1e999" is not a number that can be used']],
    ['NUL', 'a: x\u0000y\n', ['1:5+1 source-character: a character that cannot be seen: U+0000']],
    ['ESC', 'a: \u001b[31mred\n', ['1:4+1 source-character: a character that cannot be seen: U+001B']],
    ['C1', 'a: x\u009b\n', ['1:5+1 source-character: a character that cannot be seen: U+009B']],
    [
      'a turn of direction, in a comment too',
      'a: 1 # \u202e\n',
      ['1:8+1 source-character: a character that cannot be seen: U+202E'],
    ],
    ['half a surrogate pair', 'a: x\ud800y\n', ['1:5+1 source-character: a character that cannot be seen: U+D800']],
    [
      'a second byte-order mark',
      '\ufeff\ufeffa: 1\n',
      ['1:1+1 source-character: a character that cannot be seen: U+FEFF'],
    ],
    ['ESC by an escape', 'a: "\\e[31m"\n', ['1:4+8 source-character: a character that cannot be seen: U+001B']],
    ['NUL by an escape', 'a: "\\0"\n', ['1:4+4 source-character: a character that cannot be seen: U+0000']],
    [
      'a turn of direction by an escape in a key',
      '"\\u202E": 1\n',
      ['1:1+8 source-character: a character that cannot be seen: U+202E'],
    ],
    ['half a pair by an escape', 'a: "\\uD800"\n', ['1:4+8 source-character: a character that cannot be seen: U+D800']],
    ['a lone carriage return', 'a: 1\rb: 2\n', ['1:5+1 source-carriage-return: a carriage return without a line feed']],
    ['several documents', 'a: 1\n---\nb: 2\n---\nc: 3\n', ['2:1+3 source-documents: a second document begins here']],
    ['tabs as indentation', 'a:\n\tb: 1\n', ['2:1+1 source-yaml: tabs are not allowed as indentation']],
    ['nothing', '', ['1:1+1 source-empty: the file is empty']],
    ['nothing but a comment', '# later\n', ['1:1+1 source-empty: the file is empty']],
    ['nothing but a null', 'null\n', ['1:1+1 source-empty: the file is empty']],
  ])('%s', (_, text, said) => {
    expect(problems(text)).toEqual(said)
  })

  test.each([
    ['UTF-16, little end first', new Uint8Array([0xff, 0xfe, 0x61, 0, 0x3a, 0]), 'the file is in UTF-16'],
    ['UTF-16, big end first', new Uint8Array([0xfe, 0xff, 0, 0x61]), 'the file is in UTF-16'],
    [
      'UTF-16 without a mark',
      new Uint8Array(Array.from('title: x').flatMap((letter) => [letter.charCodeAt(0), 0])),
      'the file is in UTF-16',
    ],
    ['bytes that are no UTF-8', new Uint8Array([...new TextEncoder().encode('a: �\nbé: '), 0xe9, 0x0a]), '2:5'],
    ['a surrogate in bytes', new Uint8Array([0x61, 0x3a, 0x20, 0xed, 0xa0, 0x80]), '1:4'],
    ['a character cut off', new Uint8Array([0x61, 0x3a, 0x20, 0xc3]), '1:4'],
    ['too much', new Uint8Array(256 * 1024 + 1).fill(0x61), 'the file is larger than the 256 KB that are read of one'],
  ])('%s', (_, bytes, said) => {
    expect(problems(bytes)).toHaveLength(1)
    expect(problems(bytes)[0]).toContain(said)
    expect(read(bytes).data).toBe(undefined)
  })

  test('256 KiB are read', () => {
    expect(read(`a: ${'x'.repeat(256 * 1024 - 4)}\n`).diagnostics).toEqual([])
  })

  test('every problem has a remedy, and all stand in one run in the order of their places', () => {
    const { diagnostics } = read('%YAML 1.1\n---\na: &x 1\nb: *x\na: !t 2\nc: "\\e"\nd: \u0007\n__proto__: .inf\n')
    expect(diagnostics.map(({ span }) => span?.line)).toEqual([1, 4, 5, 6, 7, 8])
    for (const { hint } of diagnostics) expect(hint).toMatch(/^[a-z].*[^.]$/)
  })

  test('what was refused is there without a value; the rest can be checked', () => {
    const { data } = read('a: &x 1\nb: *x\nc: 3\na: 4\n')
    expect(data).toEqual({ a: 1, b: undefined, c: 3 })
    expect(Object.keys(data as object)).toEqual(['a', 'b', 'c'])
  })

  test('all errors of broken YAML, no data', () => {
    const source = read('a: "x\nb: [1\n')
    expect(source.diagnostics.length).toBeGreaterThan(0)
    expect(source.data).toBe(undefined)
  })
})

describe('prototypes', () => {
  test.each([['constructor'], ['toString'], ['hasOwnProperty']])(
    '%s is an ordinary key, and missing where it is not written',
    (name) => {
      expect(Object.entries(read(`${name}: 1\n`).data as object)).toEqual([[name, 1]])
      expect(read('a: 1\n').scalarSource([name])).toBe(undefined)
      expect(read(`a: 1\n`).locate([name], 'value')).toEqual({ line: 1, column: 1, length: 1 })
    },
  )
})

describe('hostile sizes', () => {
  const most = 60_000
  test.each([
    ['brackets', '['.repeat(most), 'source-depth'],
    ['braces', '{'.repeat(most), 'source-depth'],
    ['dashes', `${'- '.repeat(most / 2)}a`, 'source-depth'],
    ['question marks', `${'? '.repeat(most / 2)}a`, 'source-depth'],
    ['colons', ': '.repeat(most / 2), 'source-depth'],
    ['keys in a row', 'a: '.repeat(most / 3), 'source-depth'],
    ['indentation', Array.from({ length: 690 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n'), 'source-depth'],
    ['closing brackets', ']'.repeat(most), 'source-yaml'],
    ['documents', '---\n'.repeat(most / 4), 'source-documents'],
    ['anchors', `${'&a '.repeat(most / 3)}x`, 'source-yaml'],
    ['aliases', `a: &x 1\nb: [${'*x,'.repeat(most / 4)}]`, 'source-alias'],
    ['one key over and over', 'a: 1\n'.repeat(most / 5), 'source-duplicate'],
    ['controls', '\u0001 '.repeat(most / 2), 'source-character'],
  ])('%s end in a diagnostic', { timeout: 60_000 }, (_, text, code) => {
    expect(read(text).diagnostics.map((diagnostic) => diagnostic.code)).toContain(code)
  })

  test('64 levels are read, 65 are not', () => {
    expect(read('['.repeat(64) + ']'.repeat(64)).diagnostics).toEqual([])
    expect(problems('['.repeat(66) + ']'.repeat(66))).toEqual(['1:66+1 source-depth: nested more than 64 levels deep'])
  })

  test('15,000 different keys', { timeout: 60_000 }, () => {
    expect(read(Array.from({ length: 15_000 }, (_, index) => `k${index}: 1`).join('\n')).diagnostics).toEqual([])
  })
})
