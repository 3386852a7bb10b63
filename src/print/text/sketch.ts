import { length } from '../../phrase/figure.ts'
import { number } from '../../phrase/words.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import type { Units } from '../../units/length.ts'
import { depthBeside, depthsOf } from '../svg/curves.ts'

/** Rows of metal and of air; with the sizes and the key the sketch has at most twelve lines. */
const ROWS = 8
const WIDEST = 60
/** More passes than letters that the eye can tell apart: then roughing and finish only. */
const MANY = 8

/**
 * The form of a feature in plain characters, as the lathe is looked at: headstock left, the axis below. "#" is metal, a
 * letter what one pass takes. Not to scale: as wide and as deep as the sheet has room.
 */
export const sketchLines = (drawing: Drawing, units: Units, width: number): string[] => {
  const { before, finished, region, passes } = drawing
  const beside = (region.to - region.from) / 6
  const [from, to] = [region.from - beside, region.to + beside]
  const columns = Math.min(WIDEST, width - 6)
  const at = (column: number): number => to - ((column + 0.5) * (to - from)) / columns
  const inView = finished.filter((piece) => piece.from < to && piece.to > from)
  const stock = before.filter((piece) => piece.from < to && piece.to > from)
  if (inView.length === 0 || stock.length === 0) return []
  const [top] = depthsOf(stock)
  const [, bottom] = depthsOf(inView)
  const rowDeep = (bottom - top) / (ROWS - 2)
  if (!(rowDeep > 0)) return []
  const marks = lettersOf(passes.length)
  const cell = (row: number, column: number): string => {
    const [z, d] = [at(column), top + (row + 0.5) * rowDeep]
    const [was, is] = [depthBeside(before, z, 1), depthBeside(finished, z, 1)]
    if (was === null || is === null || d < was) return ' '
    if (d >= is) return '#'
    const pass = passes.findIndex(({ form }) => (depthBeside(form, z, 1) ?? was) > d)
    return pass < 0 ? '#' : marks(pass)
  }
  const rows = Array.from({ length: ROWS }, (_, row) =>
    Array.from({ length: columns }, (_, column) => cell(row, column)).join(''),
  )
  return [
    ...rows.map((row) => `  |${row}|`),
    `   ${edges(drawing, units, columns)}`,
    ...key(drawing, marks).map((line) => `   ${line}`),
  ]
}

const lettersOf = (count: number): ((pass: number) => string) =>
  count > MANY ? (pass) => (pass === count - 1 ? 'b' : 'a') : (pass) => String.fromCharCode(97 + pass)

/** The two edges from the free end, under where they are. */
const edges = ({ region }: Drawing, units: Units, columns: number): string => {
  const show = (z: number): string => number(length('place', z, units), units)
  const [far, near] = [show(region.to), show(region.from)]
  // A sixth of the form on either side: an eighth of the whole.
  const inner = columns - 2 * Math.round(columns / 8)
  const gap = Math.max(1, inner - far.length - near.length)
  return `${' '.repeat(Math.round(columns / 8))}${far}${' '.repeat(gap)}${near}  from the free end`
}

const key = ({ passes }: Drawing, marks: (pass: number) => string): string[] => {
  if (passes.length === 0) return []
  if (passes.length > MANY) {
    const [first, next, last] = [passes[0]!.step, passes.at(-2)!.step, passes.at(-1)!.step]
    return [`headstock left; a: cut in steps ${first} to ${next}, b: in step ${last}`]
  }
  return [`headstock left; cut in step ${passes.map(({ step }, i) => `${step} ${marks(i)}`).join(', ')}`]
}
