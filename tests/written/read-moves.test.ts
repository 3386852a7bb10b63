import { describe, expect, test } from 'vitest'
import { printDiagnostics } from '../../src/diagnostics/frame.ts'
import type { Lathe } from '../../src/lathe/lathe.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { readMoves } from '../../src/written/written.ts'

const LATHE: Lathe = {
  name: 'Bench lathe',
  units: 'inch',
  crossFeed: {
    kind: 'dial',
    units: 'inch',
    graduation: INCH / 1000,
    perTurn: INCH / 10,
    reads: 'depth',
    backlash: 0,
    readTo: 0.5,
  },
  compound: {
    scale: { kind: 'readout', units: 'mm', resolution: MM / 200, reads: 'depth' },
    angle: 0,
    travel: null,
    scaleZero: 'parallel',
  },
  carriage: null,
  spindleSpeeds: [60],
  jawClearance: 0,
  accuracy: { reading: null, touchOff: 0, layout: 0, tool: 0, stock: 0, runout: 0, swivel: 0, trued: 0, toolAngle: 0 },
}
const read = (text: string, file = 'moves.csv', features = ['Relief', 'Oil groove']) =>
  readMoves(text, file, { lathe: LATHE, features })
const counts = (text: string, file?: string) => read(text, file).operations?.[0]?.moves.map(({ count }) => count)
/** Everything that is said of a list, as it is printed. */
const said = (text: string, file = 'moves.csv') => {
  const { diagnostics, source, operations } = read(text, file)
  expect(operations === null).toBe(diagnostics.length > 0)
  return printDiagnostics(diagnostics, new Map([[file, source]]))
}

const HEAD = 'feature,action,slide,reading,turns,mark,at-least\n'

test('a reading is a signed place from zero, in the units of its own dial', () => {
  const text = `${HEAD}Relief,feed-in,cross-feed,.0525\n,back-out,cross-feed,-0.05\n,feed-in,cross-feed,1/16\n,shift,compound,0.125\n`
  expect(counts(text)).toEqual([105, -100, 125, 25])
})

test('turns are counted from the zero downward, the mark always forward', () => {
  const text = `${HEAD}Relief,feed-in,cross-feed,,0,52\n,back-out,cross-feed,,-1,50\n,feed-in,cross-feed,,2,5.5\n`
  expect(counts(text)).toEqual([104, -100, 411])
})

test('what lies between two marks stays there, for the replay to object to', () => {
  expect(counts(`${HEAD}1,feed-in,cross-feed,0.05225\n`)).toEqual([104.5])
})

test('YAML and CSV say the same', () => {
  const yaml = `moves:
  - { feature: relief, action: take-up, slide: cross-feed, at-least: 11, why: set-up }
  - { action: zero, slide: cross-feed }
  - { action: lock, note: look at the line again }
  - { feature: 2, action: feed-in, slide: cross-feed, turns: 0, mark: 52 }
`
  const csv =
    'feature,action,slide,turns,mark,at-least,why,note\n# by the window\nrelief,take-up,cross-feed,,,11,set-up,\n,zero,cross-feed,,,,,\n\n,lock,,,,,,"look, ""again"""\n2,feed-in,cross-feed,0,52,,,\n'
  const plain = (file: string, text: string) =>
    read(text, file).operations?.map(({ feature, moves }) => ({
      feature,
      moves: moves.map(({ origin: _, ...move }) => move),
    }))
  expect(plain('moves.yaml', yaml)).toEqual(plain('moves.csv', csv))
  expect(plain('moves.yaml', yaml)).toEqual([
    {
      feature: 0,
      moves: [
        { action: 'take-up', slide: 'cross-feed', count: null, takeUp: 22, purpose: 'set-up' },
        { action: 'zero', slide: 'cross-feed', count: 0 },
        { action: 'lock', slide: 'carriage' },
      ],
    },
    { feature: 1, moves: [{ action: 'feed-in', slide: 'cross-feed', count: 104 }] },
  ])
  expect(plain('<standard input>', csv)).toEqual(plain('<standard input>', yaml))
})

test('every move knows its line, behind comments, empty lines and quoted line ends', () => {
  const text = `# mine\r\n${HEAD.trim()},note\r\n\r\nRelief,start,,,,,,"two\r\nlines"\r\n,stop\r\n`
  const { operations, source } = read(text)
  expect(operations![0]!.moves.map(({ origin }) => source.locate(origin.path, 'value').line)).toEqual([4, 6])
})

describe('what is wrong is said with its place and a remedy', () => {
  test.each([
    ['Relief,feed-inn,cross-feed,0.05', 'moves.csv:2:8: error: "feed-inn" is no action', 'did you mean feed-in'],
    ['Relif,feed-in,cross-feed,0.05', 'moves.csv:2:1: error: the job has no feature "Relif"', 'did you mean Relief'],
    ['3,start', 'moves.csv:2:1: error: the job has no feature "3"', '1 Relief, 2 Oil groove'],
    [',start', 'moves.csv:2:1: error: the first row does not say', 'Relief, Oil groove'],
    ['Relief,,cross-feed,0.05', 'moves.csv:2:1: error: the row does not say what is done', 'give an action'],
    ['Relief,feed-in,,0.05', 'moves.csv:2:8: error: feed-in does not say which slide', 'cross-feed'],
    ['Relief,feed-in,crossfeed,0.05', 'moves.csv:2:16: error: "crossfeed" is no slide', 'did you mean cross-feed'],
    ['Relief,feed-in,cross-feed,', 'moves.csv:2:8: error: where the cross-feed is turned to', 'turns and a mark'],
    ['Relief,feed-in,cross-feed,"0,05"', 'moves.csv:2:27: error: "0,05" has a comma in it', 'use a point: 0.05'],
    ['Relief,feed-in,cross-feed,0.05,1,5', 'moves.csv:2:32: error: the row has a reading and turns', 'keep one'],
    ['Relief,feed-in,cross-feed,,,5', 'moves.csv:2:29: error: mark 5 is on every turn', 'give turns too'],
    ['Relief,feed-in,cross-feed,,0,100', 'moves.csv:2:30: error: the dial of the cross-feed has marks', 'in turns'],
    ['Relief,feed-in,cross-feed,,0.5,1', 'moves.csv:2:28: error: 0.5 is no whole number of turns', 'whole turns'],
    ['Relief,shift,compound,,1,5', 'moves.csv:2:24: error: the compound has a readout', 'give the reading'],
    ['Relief,take-up,compound,,,,5', 'moves.csv:2:28: error: the compound has a readout', 'take the row out'],
    ['Relief,take-up,cross-feed', 'moves.csv:2:8: error: how far the backlash', 'at-least'],
    ['Relief,feed-in,cross-feed,,,,5', 'moves.csv:2:30: error: only a take-up goes forward by marks', 'from the zero'],
    ['Relief,zero,cross-feed,0.01', 'moves.csv:2:24: error: a zero is 0, not 0.01', 'a row of its own'],
    ['Relief,start,,0.01', 'moves.csv:2:15: error: start has no reading', 'leave it out'],
    ['Relief,start,compound', 'moves.csv:2:14: error: start turns no slide', 'leave the slide out'],
    ['Relief,lock,compound', 'moves.csv:2:13: error: lock is for the carriage', 'write carriage'],
    ['Relief,move-carriage,,0.1', 'moves.csv:2:1: error: this lathe has no dial on its carriage', 'lathe file'],
    ['Relief,feed-in,cross-feed,1e3', 'moves.csv:2:27: error: "1e3" is not a number', 'like 0.125'],
    ['Relief,feed-in,cross-feed,9999999', 'moves.csv:2:27: error: 9999999 is further than', 'missing point'],
    ['Relief,start,,,,,,,7', 'moves.csv:2:20: error: the row has 9 values', 'one value a column'],
    ['Relief,"start', 'moves.csv:2:8: error: a quote is never closed', 'close it'],
    [
      'Relief,start\nOil groove,start\nRelief,stop',
      'moves.csv:4:1: error: the moves of "Relief" are in two places',
      'together',
    ],
  ])('%s', (row, message, remedy) => {
    const text = said(`${HEAD}${row}\n`)
    expect(text).toContain(message)
    expect(text).toMatch(new RegExp(`remedy: .*${remedy.replaceAll(/[.*+?()[\]]/g, '\\$&')}`))
    expect(text.match(/: error: /g)).toHaveLength(1)
  })

  test('of the heading', () => {
    expect(said('feature;action\nRelief;start\n')).toContain(
      'moves.csv:1:1: error: the columns are not separated by commas',
    )
    expect(said('feature,action,action\nRelief,start,\n')).toContain('moves.csv:1:16: error: "action" is here twice')
    expect(said('feature,acton\nRelief,start\n')).toContain('did you mean action')
    expect(said('')).toContain('the list has no moves')
  })

  test('of YAML', () => {
    const yaml = (text: string) => said(text, 'moves.yaml')
    expect(yaml('moves:\n  - { feature: 1, action: start, speed: 5 }\n')).toContain(
      'moves.yaml:2:34: error: "speed" is nothing that a move has',
    )
    expect(yaml('moves:\n  - start\n')).toContain('moves.yaml:2:5: error: a move is missing here')
    expect(yaml('moves: []\n')).toContain('the list has no moves')
    expect(yaml('move:\n  - { feature: 1, action: start }\n')).toContain('did you mean moves?')
    expect(yaml('moves:\n  - { feature: 1, action: [start] }\n')).toContain('action is not a single value')
    expect(yaml('moves: [')).toContain('moves.yaml:1:')
    expect(yaml('7')).toContain('there is no list of moves')
  })
})
