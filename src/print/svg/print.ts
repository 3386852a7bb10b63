import type { Sheet } from '../../sheet/sheet.ts'
import { joined, type Markup, short, tag } from '../markup.ts'
import { inLines, letters } from './pen.ts'
import { framed, type Picture } from './picture.ts'
import { picturesOf } from './pictures.ts'

const WIDTH = 186
const EDGE = 3
const GAP = 6
const TITLE = 7

/** All pictures of a sheet on one drawing, one after the other; small ones side by side. */
export const printSvg = (sheet: Sheet): string => {
  const pictures = picturesOf(sheet)
  const name = [sheet.title, sheet.drawingNumber, sheet.identity === null ? null : `sheet ${sheet.identity}`]
    .filter((each) => each !== null)
    .join(', ')
  const titles = inLines(name, WIDTH - 2 * EDGE - 4, 5)
  const { placed, height } = inRows(pictures, 5 + titles.length * TITLE)
  const document = tag(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${WIDTH}mm`,
      height: `${short(height)}mm`,
      viewBox: `0 0 ${WIDTH} ${short(height)}`,
      'font-family': 'Arial, Helvetica, sans-serif',
    },
    tag('title', {}, name),
    tag('desc', {}, `Drawings for ${name}: ${pictures.map(({ title }) => title).join('; ')}.`),
    tag('rect', { width: WIDTH, height, fill: '#fff' }),
    ...titles.map((text, i) => letters([EDGE + 2, 8 + i * TITLE], text, { bold: true, size: 5 })),
    ...placed,
  )
  return `<?xml version="1.0" encoding="UTF-8"?>\n${joined(document)}\n`
}

const inRows = (pictures: readonly Picture[], top: number): { placed: Markup[]; height: number } => {
  const placed: Markup[] = []
  let [x, y, high] = [EDGE, top, 0]
  let feature: number | null = null
  for (const picture of pictures) {
    if (x > EDGE && (x + picture.width > WIDTH - EDGE || picture.feature !== feature))
      [x, y, high] = [EDGE, y + high + GAP, 0]
    feature = picture.feature
    placed.push(framed(picture, { x, y }))
    x += picture.width + 5
    high = Math.max(high, picture.height)
  }
  return { placed, height: y + high + GAP }
}
