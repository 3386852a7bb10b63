import type { Dial } from '../../lathe/lathe.ts'
import { markFigure, marksPerTurn } from '../../phrase/dial.ts'
import { number } from '../../phrase/words.ts'
import { type Markup, short, tag } from '../markup.ts'
import { circle, closed, head, INK, letters, line, type Point, path, WEIGHT, widthOf } from './pen.ts'
import type { Shown } from './readings.ts'

const CENTER: Point = [28, 33]
const RIM = 19
/** Between the mark in figures and the figures of the face. */
const ARROW = 10.4

/** The face and all that is on it, without what one reading adds. */
export const FACE = { left: 3, top: 8, size: 50 } as const

/** What stays on a dial: 0 at the top, numbers rising as the hands of a clock go. */
export const plate = (dial: Dial): Markup[] => [
  circle(CENTER, RIM, { width: WEIGHT.edge }),
  ...marksOn(dial, marksPerTurn(dial)),
]

/** What one reading adds: the pointer, its mark in figures, and the way that the hand turns to get there. */
export const hand = ({ step, back }: Shown, dial: Dial): Markup[] => {
  const part = (step.mark ?? 0) / marksPerTurn(dial)
  const mark = number(markFigure(dial, step.mark ?? 0), dial.units)
  return [
    pointer(part),
    letters([CENTER[0], CENTER[1] + 3], mark, {
      size: Math.min(8.6, 17.5 / widthOf(mark, 1.1)),
      anchor: 'middle',
      bold: true,
      as: 'mark',
    }),
    ...turning(back, part),
  ]
}

/** Every mark where there is room for it, or each second or fifth; longer ones at each fifth and tenth, and a figure at every tenth part or so. */
const marksOn = (dial: Dial, perTurn: number): Markup[] => {
  const every = [1, 2, 5, 10].find((step) => perTurn % step === 0 && (2 * Math.PI * RIM * step) / perTurn >= 0.7) ?? 1
  const figures = [1, 2, 5, 10, 20, 25, 50, 100].find((step) => perTurn % step === 0 && perTurn / step <= 10) ?? perTurn
  const all = Array.from({ length: Math.ceil(perTurn / every) }, (_, i) => i * every)
  const strokes = (these: readonly number[], width: number): Markup =>
    path(these.map((mark) => stroke(mark / perTurn, lengthOf(mark, figures))).join(''), { width })
  const numbered = all.filter((mark) => mark % figures === 0)
  return [
    tag(
      'g',
      { class: 'marks' },
      strokes(numbered, WEIGHT.mark),
      strokes(
        all.filter((mark) => mark % figures !== 0),
        0.15,
      ),
    ),
    ...numbered.map((mark) => {
      const [x, y] = on(mark / perTurn, RIM - 5.4)
      return letters([x, y + 1.25], number(markFigure(dial, mark), dial.units), { anchor: 'middle' })
    }),
  ]
}

const lengthOf = (mark: number, figures: number): number => (mark % figures === 0 ? 3.2 : mark % 5 === 0 ? 2.4 : 1.5)

const stroke = (part: number, long: number): string =>
  [on(part, RIM), on(part, RIM - long)].map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('')

/** A place on the face, by parts of a turn from the top. */
const on = (part: number, r: number): Point => [
  CENTER[0] + r * Math.sin(part * 2 * Math.PI),
  CENTER[1] - r * Math.cos(part * 2 * Math.PI),
]

/** From outside, its tip on the rim and the mark in it drawn long: the figures stay to be read. */
const pointer = (part: number): Markup =>
  tag(
    'g',
    { class: 'pointer', transform: `rotate(${short(part * 360)} ${CENTER[0]} ${CENTER[1]})` },
    closed(
      [
        [CENTER[0], CENTER[1] - RIM],
        [CENTER[0] - 1.6, CENTER[1] - RIM - 4.4],
        [CENTER[0] + 1.6, CENTER[1] - RIM - 4.4],
      ],
      { width: 0, fill: INK },
    ),
    line([CENTER[0], CENTER[1] - RIM + 3.6], [CENTER[0], CENTER[1] - RIM], { width: WEIGHT.heavy }),
  )

/** An arrow round the mark in figures up to the pointer, the way that the hand turns. */
const turning = (back: boolean, pointer: number): Markup[] => {
  const way = back ? -1 : 1
  const tip = pointer * 360
  const on = (degrees: number): Point => {
    const at = (degrees * Math.PI) / 180
    return [CENTER[0] + ARROW * Math.sin(at), CENTER[1] - ARROW * Math.cos(at)]
  }
  const [from, to] = [tip - way * 110, tip - way * 14].map((at) => on(at).map(short).join(' '))
  return [
    path(`M${from}A${ARROW} ${ARROW} 0 0 ${back ? 0 : 1} ${to}`, {
      width: WEIGHT.edge,
      as: `turning ${back ? 'back' : 'forward'}`,
    }),
    head(on(tip), tip - way * 8 + (back ? 180 : 0), 3.4),
  ]
}
