import type { OpenFeature, Worksheet } from '../../exercise/worksheet.ts'
import { words } from '../../phrase/words.ts'
import { joined, type Markup, tag } from '../markup.ts'
import { inLines, LEADING, letters, line, paragraph, path, WEIGHT } from './pen.ts'
import { framed, type Picture } from './picture.ts'

const WIDTH = 150
const TOP = 14
const AXIS = 46

/** The work with one form, not to scale: its sizes are in words, and nothing in the lines tells one. */
export const sketchOf = (feature: OpenFeature, { units }: Pick<Worksheet, 'units'>): Picture => {
  const sizes = feature.drawn.flatMap((phrase) => inLines(`- ${words(phrase, units)}`, WIDTH - 8))
  return {
    id: `sketch-${feature.index + 1}`,
    kind: 'form',
    feature: feature.index,
    step: null,
    title: `${feature.name}: drawing, not to scale`,
    desc: `The form in the work, with the sizes of the drawing: ${feature.drawn.map((each) => words(each, units)).join('; ')}.`,
    width: WIDTH,
    height: AXIS + 10 + sizes.length * LEADING,
    drawn: [
      letters([2, 5.5], `${feature.name}, not to scale`, { bold: true }),
      path(`M4 ${TOP}H60${NOTCHES[feature.outline]}${feature.outline === 'corner' ? '' : 'H136'}V${AXIS}`, {
        width: WEIGHT.heavy,
      }),
      line([2, AXIS], [146, AXIS], { dash: '6 1.5 1 1.5' }),
      letters([134, TOP - 2], 'free end', { size: 3, anchor: 'end' }),
      letters([4, TOP - 2], 'headstock', { size: 3 }),
      ...paragraph([4, AXIS + 8], sizes),
    ],
  }
}

/** From the headstock side to the free end. */
const NOTCHES: Readonly<Record<OpenFeature['outline'], string>> = {
  square: `V32H84V${TOP}`,
  round: `A13 15 0 0 0 84 ${TOP}`,
  sloping: `L68 32H76L84 ${TOP}`,
  corner: 'H118A18 18 0 0 1 136 32',
}

export const worksheetSvg = (sheet: Worksheet): string => {
  const pictures = sheet.features.map((feature) => sketchOf(feature, sheet))
  const placed: Markup[] = []
  let y = 4
  for (const picture of pictures) {
    placed.push(framed(picture, { x: 4, y }))
    y += picture.height + 4
  }
  const name = `${sheet.title}, sheet ${sheet.sheet}`
  const drawn = tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${WIDTH + 8}mm`,
      height: `${y}mm`,
      viewBox: `0 0 ${WIDTH + 8} ${y}`,
      'font-family': 'Arial, Helvetica, sans-serif',
    },
    tag('title', {}, name),
    tag('rect', { width: WIDTH + 8, height: y, fill: '#fff' }),
    ...placed,
  )
  return `<?xml version="1.0" encoding="UTF-8"?>\n${joined(drawn)}\n`
}
