import type { Scale } from '../../lathe/lathe.ts'
import { markFigure, marksPerTurn, readingFigure } from '../../phrase/dial.ts'
import { figure } from '../../phrase/figure.ts'
import { number, words } from '../../phrase/words.ts'
import { perUnit, type Units } from '../../units/length.ts'
import { type Markup, tag } from '../markup.ts'
import { hand, plate } from './face.ts'
import { head, INK, inLines, LEADING, letters, line, paragraph, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'
import type { Shown } from './readings.ts'

const WIDTH = 56
const BELOW = 68

/** The face of a dial at one reading: 0 at the top, numbers rising as the hands of a clock go. */
export const dialPicture = (shown: Shown, units: Units): Picture => {
  const { step, scale } = shown
  const says = words(step.does, units)
  const told = inLines(says, WIDTH - 4)
  const turns = turnsBeside(shown)
  return {
    id: `reading-${step.number}`,
    kind: 'dial',
    feature: step.feature,
    step: step.number,
    title: `Step ${step.number}: ${step.thing.toLowerCase()}`,
    desc: `${step.thing.toLowerCase()} ${says}. ${faceWords(shown)}`,
    width: WIDTH,
    height: BELOW + told.length * LEADING,
    drawn: [
      letters([2, 5.5], `${step.number}  ${step.thing}`, { bold: true }),
      ...(scale.kind === 'dial' ? [...plate(scale), ...hand(shown, scale)] : window(shown)),
      letters([WIDTH / 2, 62], turns, { anchor: 'middle', bold: true, as: 'turns' }),
      ...paragraph([2, BELOW], told),
    ],
  }
}

/** What a face shows, for who does not see it. */
export const faceWords = (shown: Shown): string => {
  const turns = turnsBeside(shown)
  return `${inWords(shown)}${turns === '' ? '' : `, ${turns}`}; turned ${shown.back ? 'back' : 'the way that the numbers rise'}.`
}

/** A readout or an indicator has a number and no face. */
export const window = ({ scale, reading, back }: Shown): Markup[] => [
  tag('rect', { x: 6, y: 22, width: WIDTH - 12, height: 16, fill: 'none', stroke: INK, 'stroke-width': WEIGHT.edge }),
  letters([WIDTH / 2, 33], shownValue(scale, reading), { anchor: 'middle', size: 7, bold: true, as: 'mark' }),
  line([WIDTH / 2 - 9, 46], [WIDTH / 2 + 9, 46], { width: WEIGHT.mark }),
  head(back ? [WIDTH / 2 - 9, 46] : [WIDTH / 2 + 9, 46], back ? 180 : 0, 3.4),
]

const shownValue = (scale: Scale, reading: number): string =>
  number(readingFigure(scale, reading * perUnit(scale.units)), scale.units)

/** What no face shows: whole turns from 0, and that it is before 0. */
export const turnsBeside = ({ step, reading }: Shown): string => {
  const turns = step.turns
  const counted = (whole: number): string =>
    `${number(figure('turns', whole, 'turn'), 'inch')} ${whole === 1 ? 'turn' : 'turns'}`
  if (turns === null) return reading < 0 ? 'PAST ZERO' : ''
  if (reading >= 0) return turns === 0 ? 'less than 1 turn' : `${counted(turns)} from 0`
  const past = step.mark === 0 ? -turns : -turns - 1
  return past === 0 ? 'PAST ZERO' : `PAST ZERO, ${step.mark === 0 ? '' : 'over '}${counted(past)}`
}

const inWords = ({ scale, step, reading }: Shown): string =>
  scale.kind === 'dial'
    ? `The pointer is at mark ${number(markFigure(scale, step.mark ?? 0), scale.units)} of ${marksPerTurn(scale)}`
    : `The readout shows ${shownValue(scale, reading)}`
