import { describe, expect, test } from 'vitest'
import type { Diagnostic, Span } from '../../src/diagnostics/diagnostic.ts'
import { type FramedSource, printDiagnostics } from '../../src/diagnostics/frame.ts'

const FILE = 'press.yaml'
const sourceOf = (text: string, span: Span = { line: 1, column: 1, length: 1 }): ReadonlyMap<string, FramedSource> =>
  new Map([[FILE, { file: FILE, text, locate: () => span }]])
const problem = (over: Partial<Diagnostic> = {}): Diagnostic => ({
  code: 'source-comma',
  severity: 'error',
  origin: { file: FILE, path: ['width'] },
  message: '"0,5" has a comma in it',
  hint: 'use a point: 0.5',
  ...over,
})
const at = (line: number, column: number, length: number): Partial<Diagnostic> => ({ span: { line, column, length } })
const linesOf = (text: string, over: Partial<Diagnostic>): string[] =>
  printDiagnostics([problem(over)], sourceOf(text)).split('\n')

describe('one diagnostic', () => {
  test('has file, line, column, the source line with a caret, and a remedy', () => {
    expect(
      printDiagnostics([problem()], sourceOf('units: inch\nwidth: 0,5\n', { line: 2, column: 8, length: 3 })),
    ).toBe(
      [
        'press.yaml:2:8: error: "0,5" has a comma in it',
        '    width: 0,5',
        '           ^^^',
        '  remedy: use a point: 0.5',
        '',
      ].join('\n'),
    )
  })

  test('is found by path and by whether the key or the value is meant', () => {
    const asked: unknown[] = []
    const source = {
      file: FILE,
      text: 'a: 1\n',
      locate: (...what: unknown[]) => {
        asked.push(what)
        return { line: 1, column: 1, length: 1 }
      },
    }
    printDiagnostics([problem({ at: 'key' }), problem()], new Map([[FILE, source]]))
    expect(asked).toEqual([
      [['width'], 'key'],
      [['width'], 'value'],
    ])
  })

  test('without a hint has no remedy, and a warning says so', () => {
    const { hint: _, ...bare } = problem({ severity: 'warning' })
    expect(printDiagnostics([bare], sourceOf('x\n'))).toBe(
      'press.yaml:1:1: warning: "0,5" has a comma in it\n    x\n    ^\n',
    )
  })

  test('of a file that could not be opened has its name alone', () => {
    expect(printDiagnostics([problem({ origin: { file: 'gone.yaml', path: [] } })], sourceOf(''))).toBe(
      'gone.yaml: error: "0,5" has a comma in it\n  remedy: use a point: 0.5\n',
    )
  })

  test('on an empty line has no caret', () => {
    expect(linesOf('\n\n', at(2, 1, 1))).toEqual([
      'press.yaml:2:1: error: "0,5" has a comma in it',
      '  remedy: use a point: 0.5',
      '',
    ])
  })
})

describe('the caret stands under what is meant', () => {
  test.each([
    ['behind a tab', '\tw: 0,5', 5, 3, '        w: 0,5', '           ^^^'],
    ['behind wide characters', '溝幅: 0,5', 5, 3, '    溝幅: 0,5', '          ^^^'],
    ['under wide characters', 'w: 溝幅', 4, 2, '    w: 溝幅', '       ^^^^'],
    ['behind a combining mark', 'e\u0301: 0,5', 5, 3, '    e\u0301: 0,5', '       ^^^'],
    ['behind a pair of surrogates', '🔧: 0,5', 5, 3, '    🔧: 0,5', '        ^^^'],
    ['at the end of a line', 'width:', 7, 1, '    width:', '          ^'],
    ['with CR LF', 'w: 0,5\r', 4, 3, '    w: 0,5', '       ^^^'],
    ['beyond the line', 'w: 0', 4, 50, '    w: 0', '       ^'],
  ])('%s', (_, text, column, length, shown, caret) => {
    expect(linesOf(`${text}\n`, at(1, column, length)).slice(1, 3)).toEqual([shown, caret])
  })

  test.each([['\u001b'], ['\u0000'], ['\u009b'], ['\u202e'], ['\ud800'], ['\u200b'], ['\u2028']])(
    'a character that cannot be shown is replaced (case %#)',
    (hidden) => {
      const printed = printDiagnostics(
        [
          problem({
            span: { line: 1, column: 6, length: 1 },
            message: `m${hidden}`,
            hint: `h${hidden}`,
            origin: { file: `f${hidden}`, path: [] },
          }),
        ],
        new Map([
          [
            `f${hidden}`,
            { file: `f${hidden}`, text: `w: x${hidden}y`, locate: () => ({ line: 1, column: 1, length: 1 }) },
          ],
        ]),
      )
      expect(printed.split('\n')).toEqual(['f�:1:6: error: m�', '    w: x�y', '         ^', '  remedy: h�', ''])
    },
  )

  test.each([[1], [40], [500], [995]])('a long line is cut to a window around column %i', (column) => {
    const text = Array.from({ length: 1000 }, (_, index) => (index === column - 1 ? 'X' : '-')).join('')
    const [, shown = '', caret = ''] = linesOf(text, at(1, column, 1))
    expect(shown.length).toBeLessThan(110)
    expect(shown[caret.indexOf('^')]).toBe('X')
    expect(shown.trimStart().startsWith('…')).toBe(column > 34)
    expect(shown.endsWith('…')).toBe(column < 900)
  })
})

describe('many diagnostics', () => {
  test('stand file by file and line by line, those of one place in the order found', () => {
    const sources = new Map(
      ['a.yaml', 'b.yaml'].map((file) => [
        file,
        { file, text: 'x\n'.repeat(9), locate: () => ({ line: 1, column: 1, length: 1 }) },
      ]),
    )
    const made = (file: string, line: number, message: string): Diagnostic =>
      problem({ origin: { file, path: [] }, message, ...at(line, 1, 1) })
    const printed = printDiagnostics(
      [made('b.yaml', 1, 'four'), made('a.yaml', 7, 'two'), made('a.yaml', 7, 'three'), made('a.yaml', 2, 'one')],
      sources,
    )
    expect(printed.match(/error: \w+/g)).toEqual(['error: one', 'error: two', 'error: three', 'error: four'])
  })

  test('are printed to the twentieth and then counted', () => {
    const many = Array.from({ length: 23 }, (_, index) => problem({ message: `number ${index + 1}` }))
    const printed = printDiagnostics(many, sourceOf('x\n'))
    expect(printed).toContain('number 20\n')
    expect(printed).not.toContain('number 21\n')
    expect(printed.endsWith('and 3 more\n')).toBe(true)
    expect(printDiagnostics(many.slice(0, 20), sourceOf('x\n'))).not.toContain('more')
  })

  test('none print nothing', () => {
    expect(printDiagnostics([], sourceOf('x\n'))).toBe('')
  })

  test('a hundred thousand are counted, the first twenty shown', { timeout: 60_000 }, () => {
    const text = 'a: 1\n'.repeat(50_000)
    const many = Array.from({ length: 100_000 }, (_, index) => problem(at((index % 50_000) + 1, 1, 1)))
    expect(printDiagnostics(many, sourceOf(text)).endsWith('and 99980 more\n')).toBe(true)
  })
})
