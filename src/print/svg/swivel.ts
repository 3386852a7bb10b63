import { angleFigure } from '../../phrase/dimensions.ts'
import { number, words } from '../../phrase/words.ts'
import type { Sheet, SheetStep } from '../../sheet/sheet.ts'
import { type Markup, tag } from '../markup.ts'
import type { PlannedFeature } from './part.ts'
import { circle, closed, GRAY, head, inLines, LEADING, letters, line, type Point, paragraph, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'

const WIDTH = 92
const CENTER: Point = [46, 50]
const RING = 24
const LONG = 33
const BELOW = 95

/** Whether the same mark on the other side of 0 would be another setting. */
export const hasWrongSide = (sheet: Sheet, feature: PlannedFeature): boolean =>
  wrongSide(feature.compoundAngle, zeroOf(sheet)) !== null

const zeroOf = ({ lathe }: Sheet): number => (lathe.compound.scaleZero === 'square' ? 90 : 0)

/**
 * The compound from above, as it stands at its setting; the wrong side of its 0 crossed out. `alone`: with the words of
 * its step below it, which it needs where the step does not stand beside it.
 */
export const swivelPicture = (sheet: Sheet, feature: PlannedFeature, step: SheetStep, alone = true): Picture => {
  const angle = feature.compoundAngle
  const zero = zeroOf(sheet)
  const wrong = wrongSide(angle, zero)
  const says = [step.does, ...step.more].map((each) => words(each, sheet.units))
  const told = alone ? says.flatMap((each) => inLines(each, WIDTH - 4)) : []
  return {
    id: `swivel-${step.number}`,
    kind: 'swivel',
    feature: feature.index,
    step: step.number,
    title: `Step ${step.number}: the compound on its swivel scale`,
    desc: `From above, headstock to the left, the work away from you. ${says.join('. ')}.${wrong === null ? '' : ' The wrong side of 0 is crossed out.'}`,
    width: WIDTH,
    height: BELOW - (alone ? 0 : 4) + told.length * LEADING,
    drawn: [
      letters([2, 5.5], `${step.number}  ${step.thing}`, { bold: true }),
      letters([CENTER[0], 12], 'work', { anchor: 'middle' }),
      letters([2, CENTER[1] + 38], 'headstock'),
      letters([WIDTH - 2, CENTER[1] + 38], 'tailstock', { anchor: 'end' }),
      letters([CENTER[0], CENTER[1] + 38], 'you', { anchor: 'middle' }),
      ...(wrong === null ? [] : crossed(wrong)),
      ...scale(zero, angle),
      ...slide(angle, zero),
      ...paragraph([2, BELOW], told),
    ],
  }
}

/** A scale is marked alike on both sides of its 0. */
const wrongSide = (angle: number, zero: number): number | null => {
  const other = 2 * zero - angle
  return Math.abs(other - angle) < 1e-9 ? null : other
}

/** 0° goes toward the headstock, 90° straight into the work. */
const on = (angle: number, r: number): Point => [
  CENTER[0] - r * Math.cos((angle * Math.PI) / 180),
  CENTER[1] - r * Math.sin((angle * Math.PI) / 180),
]

/** Ten degrees a mark and thirty a figure, to both sides of 0, as far as the setting needs. */
const scale = (zero: number, angle: number): Markup[] => {
  const most = Math.max(90, Math.ceil(Math.abs(angle - zero) / 10) * 10)
  const all = Array.from({ length: (2 * most) / 10 + 1 }, (_, i) => zero - most + i * 10)
  return [
    circle(CENTER, RING, { width: WEIGHT.mark }),
    ...all.map((at) =>
      line(on(at, RING), on(at, RING - (at % 30 === 0 ? 3 : 1.8)), { width: at === zero ? WEIGHT.heavy : WEIGHT.thin }),
    ),
    ...all
      .filter((at) => at % 30 === 0 && Math.abs(at - angle) > 9)
      .map((at) => {
        const [x, y] = on(at, RING - 7)
        return letters([x, y + 1.25], number(angleFigure('angle', Math.abs(at - zero)), 'inch'), { anchor: 'middle' })
      }),
  ]
}

/** The slide as a bar across the ring, with the way that it goes when it is fed forward. */
const slide = (angle: number, zero: number): Markup[] => {
  const tip = on(angle, LONG)
  const [x, y] = on(angle + 12, LONG)
  const toward = (Math.atan2(tip[1] - CENTER[1], tip[0] - CENTER[0]) * 180) / Math.PI
  return [
    tag(
      'g',
      { class: 'setting', 'data-angle': angle },
      line(CENTER, on(angle, LONG - 3), { width: WEIGHT.heavy }),
      head(tip, toward, 5),
    ),
    letters([x, y + 1.25], number(angleFigure('angle', Math.abs(angle - zero)), 'inch'), {
      anchor: 'middle',
      bold: true,
      rim: true,
      as: 'set-to',
    }),
    circle(CENTER, 1.4, { width: WEIGHT.mark, fill: '#fff' }),
  ]
}

/** Dashed, a cross through it, and said. */
const crossed = (angle: number): Markup[] => {
  const [x, y] = on(angle, RING + 5)
  const arm = 3.2
  // Away from the ring, above it or below the cross.
  const word: Point = [x + 5 * Math.sign(x - CENTER[0]), y < CENTER[1] - RING / 3 ? y - 5 : y + 8]
  return [
    tag(
      'g',
      { class: 'wrong', 'data-angle': angle },
      line(CENTER, on(angle, RING + 5), { dash: '2 1.2', width: WEIGHT.mark, ink: GRAY.faint }),
      closed(
        [
          [x - arm, y - arm],
          [x + arm, y + arm],
        ],
        { width: WEIGHT.heavy },
      ),
      closed(
        [
          [x - arm, y + arm],
          [x + arm, y - arm],
        ],
        { width: WEIGHT.heavy },
      ),
      letters(word, 'WRONG', { anchor: 'middle', bold: true, rim: true }),
    ),
  ]
}
