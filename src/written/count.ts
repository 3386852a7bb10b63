import { readable, type Scale } from '../lathe/lathe.ts'
import type { Move, Slide } from '../moves/operation.ts'
import { perUnit } from '../units/length.ts'
import { parseNumber, scaled, tidy } from '../units/number-text.ts'
import type { NumberKey } from './keys.ts'
import type { Row } from './row.ts'

/** A reading in readable steps from zero. A reading between two marks is kept: the replay reports it. */
export function countOf(row: Row, scale: Scale, slide: Slide): number | null {
  const turned = row.written('turns') !== undefined || row.written('mark') !== undefined
  if (row.written('reading') !== undefined) {
    if (turned)
      return row.wrong(
        row.written('turns') === undefined ? 'mark' : 'turns',
        'moves-reading',
        'the row has a reading and turns too',
        'keep one of the two',
      )
    const reading = numberIn(row, 'reading', perUnit(scale.units))
    return reading === null ? null : whole(reading / readable(scale))
  }
  if (!turned)
    return row.wrong(
      'action',
      'moves-reading',
      `where the ${slide} is turned to is missing`,
      'give a reading, or turns and a mark',
    )
  return onDial(row, scale, slide)
}

/** Turns are floor turns: the mark always counts forward from the 0 of its turn. */
function onDial(row: Row, scale: Scale, slide: Slide): number | null {
  if (scale.kind === 'readout')
    return row.wrong(
      row.written('turns') === undefined ? 'mark' : 'turns',
      'moves-reading',
      `the ${slide} has a readout, no turns and marks`,
      'give the reading',
    )
  if (row.written('turns') === undefined)
    return row.wrong(
      'mark',
      'moves-turns',
      `mark ${row.written('mark')} is on every turn`,
      'give turns too: 0 is the turn after zero, -1 the one before',
    )
  if (row.written('mark') === undefined)
    return row.wrong('turns', 'moves-mark', 'turns without a mark', 'give the mark too, or mark 0')
  const turns = numberIn(row, 'turns', MILLION)
  const mark = numberIn(row, 'mark', MILLION)
  if (turns === null || mark === null) return null
  if (!Number.isInteger(turns / MILLION))
    return row.wrong(
      'turns',
      'moves-turns',
      `${row.written('turns')} is no whole number of turns`,
      'count whole turns; the mark says the rest',
    )
  const perTurn = Math.round(scale.perTurn / scale.graduation)
  if (mark < 0 || mark / MILLION >= perTurn)
    return row.wrong(
      'mark',
      'moves-mark',
      `the dial of the ${slide} has marks from 0 to ${perTurn - 1}, not ${row.written('mark')}`,
      'count the rest in turns; before zero turns are negative',
    )
  return whole(((turns / MILLION) * perTurn + mark / MILLION) / scale.readTo)
}

/** Marks may have parts of a mark, so they are read in millionths. */
const MILLION = 1_000_000

export function takeUpOf(row: Row, scale: Scale, slide: Slide): Pick<Move, 'count' | 'takeUp'> | null {
  const key = row.written('at-least') === undefined ? 'mark' : 'at-least'
  if (row.written('at-least') === undefined)
    return row.wrong(
      'action',
      'moves-take-up',
      `how far the backlash of the ${slide} is taken up is missing`,
      'give at-least: marks forward, more than the backlash',
    )
  if (scale.kind === 'readout')
    return row.wrong(
      key,
      'moves-take-up',
      `the ${slide} has a readout: there is no lost motion to take up`,
      'take the row out',
    )
  if (row.written('mark') !== undefined)
    return row.wrong(
      'mark',
      'moves-take-up',
      'a take-up has no mark to stop at',
      'give only at-least, or turns with the mark',
    )
  const marks = numberIn(row, 'at-least', MILLION)
  if (marks === null) return null
  if (marks < 0)
    return row.wrong('at-least', 'moves-take-up', 'a take-up goes forward', 'give the marks as a positive number')
  return { count: null, takeUp: whole(marks / MILLION / scale.readTo) }
}

export function numberIn(row: Row, key: NumberKey, per: number): number | null {
  const written = row.written(key)!
  const read = parseNumber(tidy(written))
  if (!read.ok) return row.wrong(key, `moves-${key}`, read.message, read.hint)
  const value = scaled(read.value, per)
  return value !== null && Math.abs(value) <= FARTHEST * per
    ? value
    : row.wrong(key, `moves-${key}`, `${written} is further than any slide goes`, 'look for a missing point')
}

/** No slide of a bench lathe goes so far, in inches, millimeters, turns or marks. */
const FARTHEST = 100_000

/** Removes rounding error of the division from a whole number of steps; nobody can turn a millionth of a step. */
const whole = (count: number): number => {
  const near = Math.round(count)
  if (Math.abs(count - near) > 1e-6) return count
  return near === 0 ? 0 : near
}
