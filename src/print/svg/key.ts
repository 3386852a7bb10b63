import { type Markup, tag } from '../markup.ts'
import { bandsOf } from './bands.ts'
import { openCorners, type View } from './form.ts'
import { roughed } from './passes.ts'
import { GRAY, letters, line, type Point, path, WEIGHT, widthOf } from './pen.ts'

/** What each sort of line and area stands for: only those that are in the picture. */
export const key = (view: View, id: string, [x, y]: Point): Markup[] => {
  const entries = entriesOf(view, id)
  let at = x
  return entries.flatMap(({ word, sample }) => {
    const here = at
    at += 10 + widthOf(word) + 3
    return [sample(here, y + 3), letters([here + 10, y + 4.2], word)]
  })
}

type Entry = { readonly word: string; readonly sample: (x: number, y: number) => Markup }

const entriesOf = (view: View, id: string, bands = bandsOf(view)): Entry[] => [
  { word: 'wanted', sample: (x, y) => line([x, y], [x + 8, y], { width: WEIGHT.heavy }) },
  { word: 'pass, by step', sample: (x, y) => line([x, y], [x + 8, y], { width: WEIGHT.thin }) },
  ...(bands.length === 0
    ? []
    : [
        {
          word: bands.some(({ widened }) => widened) ? 'limits, drawn wider' : 'limits',
          sample: (x: number, y: number) => box(x, y, GRAY.band),
        },
      ]),
  ...(roughed(view) === null
    ? []
    : [{ word: 'left after roughing', sample: (x: number, y: number) => box(x, y, `url(#${id}-hatch)`) }]),
  ...(openCorners(view) === null
    ? []
    : [
        {
          word: 'at the least',
          sample: (x: number, y: number) => path(`M${x} ${y}h8`, { dash: '1.5 1', width: WEIGHT.mark }),
        },
      ]),
]

const box = (x: number, y: number, fill: string): Markup =>
  tag('rect', { x, y: y - 2, width: 8, height: 4, fill, stroke: '#000', 'stroke-width': 0.15 })
