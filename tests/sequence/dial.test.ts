import { describe, expect, it } from 'vitest'
import type { Dial, Scale } from '../../src/lathe/lathe.ts'
import { awayToMeasure } from '../../src/sequence/away.ts'
import {
  countFor,
  countsPerTurn,
  findableBehindZero,
  lostCounts,
  pastCount,
  roundCounts,
  takeUpCounts,
} from '../../src/sequence/dial.ts'
import {
  handMove as hand,
  measureStop,
  newProgram,
  takeUp,
  toPlace,
  dialMove as turn,
  zero,
} from '../../src/sequence/program.ts'
import { inch } from '../replay/shop.ts'

const dial = (more: Partial<Dial> = {}): Dial => ({
  kind: 'dial',
  units: 'inch',
  graduation: inch(0.001),
  perTurn: inch(0.1),
  reads: 'depth',
  backlash: inch(0.008),
  readTo: 1,
  ...more,
})
const half = dial({ readTo: 1 / 2 })
const diameter = dial({ reads: 'diameter', perTurn: inch(0.2) })
const readout: Scale = { kind: 'readout', units: 'inch', resolution: inch(0.0005), reads: 'depth' }

describe('the reading nearest to a travel', () => {
  it('is rounded once, and a tie leaves metal on the side that is asked for', () => {
    const at = (travel: number) => [countFor(dial(), inch(travel), 'lower'), countFor(dial(), inch(travel), 'higher')]
    expect(at(0.0524)).toEqual([52, 52])
    expect(at(0.0526)).toEqual([53, 53])
    expect(at(0.0525)).toEqual([52, 53])
    expect(at(-0.0525)).toEqual([-53, -52])
    expect(at(0.0004)).toEqual([0, 0])
    expect(at(-0.0004)).toEqual([0, 0])
    expect(Object.is(at(-0.0004)[0], 0)).toBe(true)
  })
  it('counts half marks where they are read, and both sides of a diameter', () => {
    expect(countFor(half, inch(0.0525), 'lower')).toBe(105)
    expect(countFor(diameter, inch(0.052), 'lower')).toBe(104)
    expect(countFor(readout, inch(0.052), 'lower')).toBe(104)
  })
  it('keeps a tie a tie where a division has left a hair', () => {
    expect(countFor(dial(), inch(0.0525) + 10, 'lower')).toBe(52)
    expect(countFor(dial(), inch(0.0525) - 10, 'higher')).toBe(53)
  })
})

describe('counts of a dial', () => {
  it('per turn, of its lost motion, and of a take-up', () => {
    expect([dial(), half, diameter, readout].map(countsPerTurn)).toEqual([100, 200, 200, null])
    expect(
      [dial(), half, dial({ backlash: inch(0.0081) }), dial({ backlash: 0 }), readout].map(
        (scale) => lostCounts(scale) + 0,
      ),
    ).toEqual([8, 16, 9, 0, 0])
    // The lost motion and five marks: ten half marks.
    expect([dial(), half, readout].map(takeUpCounts)).toEqual([13, 26, 0])
  })
  it('between marks that are easy to find: tens, else fives, else each', () => {
    expect(roundCounts(dial())).toBe(10)
    expect(roundCounts(half)).toBe(20)
    expect(roundCounts(dial({ perTurn: inch(0.125) }))).toBe(5)
    expect(roundCounts(dial({ perTurn: inch(0.127) }))).toBe(1)
    expect(roundCounts(dial({ perTurn: inch(0.127), readTo: 1 / 2 }))).toBe(2)
    expect(roundCounts(readout)).toBe(50)
  })
})

describe('a reading behind zero that is easy to find again', () => {
  it('is half a turn, where that is no more than four times what is needed', () => {
    expect(findableBehindZero(dial(), inch(0.03))).toBe(-50)
    expect(findableBehindZero(dial(), inch(0.05))).toBe(-50)
    expect(findableBehindZero(dial(), inch(0.0125))).toBe(-50)
  })
  it('else a whole turn, where that is no more than three times', () => {
    expect(findableBehindZero(dial(), inch(0.051))).toBe(-100)
    // A turn of 75 marks has no half; a third of it is still told as a whole turn, and less is not.
    expect(findableBehindZero(dial({ perTurn: inch(0.075) }), inch(0.025))).toBe(-75)
    expect(findableBehindZero(dial({ perTurn: inch(0.075) }), inch(0.024))).toBeGreaterThan(-75)
    expect(findableBehindZero(dial({ perTurn: inch(0.075) }), inch(0.075))).toBe(-75)
    expect(findableBehindZero(dial(), inch(0.1))).toBe(-100)
    expect(findableBehindZero(dial({ perTurn: inch(0.125) }), inch(0.06))).toBe(-125)
  })
  it('else the next round mark that is far enough', () => {
    expect(findableBehindZero(dial(), inch(0.012))).toBe(-20)
    expect(findableBehindZero(dial(), inch(0.101))).toBe(-110)
    expect(findableBehindZero(dial({ perTurn: inch(0.125) }), inch(0.04))).toBe(-40)
    expect(findableBehindZero(readout, inch(0.03))).toBe(-100)
  })
})

describe('a round mark before a reading', () => {
  it('is further back than the lost motion, by a mark at least', () => {
    expect(pastCount(dial(), 0)).toBe(-10)
    expect(pastCount(dial({ backlash: inch(0.009) }), 0)).toBe(-10)
    expect(pastCount(dial({ backlash: inch(0.01) }), 0)).toBe(-20)
    expect(pastCount(dial(), 19)).toBe(10)
    expect(pastCount(dial(), 18)).toBe(0)
    expect(pastCount(half, 0)).toBe(-20)
    expect(pastCount(half, 38)).toBe(20)
    expect(pastCount(half, 37)).toBe(0)
  })
})

describe('the moves of a program', () => {
  const origin = { file: 'job.yaml', path: [] }
  const movesOf = (make: (program: ReturnType<typeof newProgram>) => void) => {
    const program = newProgram(origin)
    make(program)
    return program.moves.map(({ action, slide, count, takeUp: up, purpose }) =>
      [action, slide, count, up, purpose].filter((one) => one !== undefined && one !== null).join(' '),
    )
  }
  it('go forward straight onto a place, and back only past it', () => {
    expect(movesOf((program) => toPlace(program, dial(), 17))).toEqual(['shift compound 17 to-place'])
    const back = movesOf((program) => {
      turn(program, 'shift', 'compound', 17, 'to-place')
      toPlace(program, dial(), 17)
      toPlace(program, dial(), 5)
    })
    expect(back.slice(1)).toEqual(['go-past compound -10 to-place', 'return compound 5 to-place'])
    const read = movesOf((program) => {
      turn(program, 'shift', 'compound', 17, 'to-place')
      toPlace(program, readout, 5)
    })
    expect(read.slice(1)).toEqual(['shift compound 5 to-place'])
  })
  it('take up what has lost motion, and set zeros', () => {
    expect(movesOf((program) => takeUp(program, 'compound', dial()))).toEqual(['take-up compound 13 set-up'])
    expect(movesOf((program) => takeUp(program, 'compound', readout))).toEqual([])
    expect(movesOf((program) => zero(program, 'compound'))).toEqual(['zero compound 0 set-up'])
    expect(movesOf((program) => hand(program, 'lock', { slide: 'carriage' }))).toEqual(['lock carriage'])
  })
  it('back out by whole turns to measure, and come back to the same mark', () => {
    const away = awayToMeasure(dial())
    expect(away).toBe(500)
    const stop = (last: boolean, scale: Scale = dial()) =>
      movesOf((program) => measureStop(program, scale, -50, awayToMeasure(scale), 'expect-rough', last))
    expect(stop(false)).toEqual([
      'stop',
      'back-out cross-feed -550 clear-to-measure',
      'measure expect-rough',
      'return cross-feed -50 come-back',
      'start',
    ])
    expect(stop(true)).toHaveLength(3)
    // Half an inch is 2 1/2 turns of .200, read as diameter: three whole turns of .200 on the diameter is .300 in travel, so five.
    expect(stop(true, diameter)[1]).toBe('back-out cross-feed -1050 clear-to-measure')
    expect(stop(true, readout)[1]).toBe('back-out cross-feed -1050 clear-to-measure')
  })
})
