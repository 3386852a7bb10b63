import type { Sheet } from '../../sheet/sheet.ts'
import { type Markup, tag } from '../markup.ts'
import { faceWords, turnsBeside, window } from '../svg/dial.ts'
import { FACE, hand, plate } from '../svg/face.ts'
import { INK, letters, widthOf } from '../svg/pen.ts'
import type { Shown } from '../svg/readings.ts'

/** The faces of the lathe, once in the page, for all the readings on them. */
export const plates = ({ lathe }: Sheet): Markup =>
  tag(
    'svg',
    { class: 'plates', 'aria-hidden': 'true', 'font-family': FONTS, fill: INK },
    ...[...Object.entries({ 'cross-feed': lathe.crossFeed, compound: lathe.compound.scale, carriage: lathe.carriage })]
      .flatMap(([slide, scale]) => (scale?.kind === 'dial' ? [[slide, scale] as const] : []))
      .map(([slide, dial]) => tag('symbol', { id: `plate-${slide}`, overflow: 'visible' }, ...plate(dial))),
  )

/**
 * One reading on its face, to stand beside its step. `matters`: also in the list of all steps, and on paper. `named`: says
 * which slide it is of, where one line of the list turns several.
 */
export const dialOf = (shown: Shown, matters: boolean, named: boolean): Markup => {
  const { scale, step } = shown
  const turns = turnsBeside(shown)
  return tag(
    'svg',
    {
      class: matters ? 'dial matters' : 'dial',
      viewBox: `${FACE.left} ${FACE.top} ${FACE.size} ${FACE.size + (named ? 2 * BELOW : BELOW)}`,
      role: 'img',
      'aria-label': `step ${step.number}, ${step.thing.toLowerCase()}: ${faceWords(shown)}`,
      'font-family': FONTS,
      fill: INK,
    },
    scale.kind === 'dial' ? [tag('use', { href: `#plate-${step.slide}` }), ...hand(shown, scale)] : window(shown),
    named ? letters([FACE.left + FACE.size / 2, FACE.top + FACE.size + 10], step.thing, { ...UNDER, as: 'slide' }) : [],
    letters([FACE.left + FACE.size / 2, FACE.top + FACE.size + 4], turns, {
      anchor: 'middle',
      size: Math.min(4.6, (FACE.size - 4) / widthOf(turns, 1.15)),
      bold: true,
      as: 'turns',
    }),
  )
}

const BELOW = 6
const UNDER = { anchor: 'middle', size: 4.6, bold: true } as const
const FONTS = 'Arial, Helvetica, sans-serif'
