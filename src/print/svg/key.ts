import { type Markup, tag } from '../markup.ts'
import { bandsOf } from './bands.ts'
import { openCorners } from './form.ts'
import { roughed } from './passes.ts'
import { GRAY, letters, line, type Point, path, WEIGHT, widthOf } from './pen.ts'
import { marked } from './tool.ts'
import type { View } from './view.ts'

/** What each sort of line and area stands for: only those that are in the picture, in as many lines as they need. */
export const key = (view: View, id: string, [x, y]: Point): { readonly drawn: Markup[]; readonly height: number } => {
  let [atX, atY] = [x, y]
  const drawn = entriesOf(view, id).flatMap(({ word, sample }) => {
    const wide = 10 + widthOf(word)
    if (atX > x && atX + wide > view.width - 2) [atX, atY] = [x, atY + ROW]
    const here: Point = [atX, atY]
    atX += wide + 4
    return [...sample(here[0], here[1] + 3), letters([here[0] + 10, here[1] + 4.2], word)]
  })
  return { drawn, height: atY - y + ROW + 3 }
}

const ROW = 6

type Entry = { readonly word: string; readonly sample: (x: number, y: number) => Markup[] }

const entriesOf = (view: View, id: string, bands = bandsOf(view)): Entry[] => [
  // Steps have no form of the drawing: only one to stay inside.
  {
    word: view.feature.kind === 'roughing' ? 'as far as the steps may go' : 'wanted',
    sample: (x, y) => [line([x, y], [x + 8, y], { width: WEIGHT.heavy })],
  },
  { word: 'pass, by step', sample: (x, y) => [line([x, y], [x + 8, y], { width: WEIGHT.thin })] },
  ...(bands.length === 0
    ? []
    : [
        {
          word: bands.some(({ widened }) => widened) ? 'limits, drawn wider' : 'limits',
          sample: (x: number, y: number) => [box(x, y, GRAY.band)],
        },
      ]),
  ...(roughed(view) === null
    ? []
    : [{ word: 'left after roughing', sample: (x: number, y: number) => [box(x, y, `url(#${id}-hatch)`)] }]),
  ...(openCorners(view) === null
    ? []
    : [
        {
          word: 'at the least',
          sample: (x: number, y: number) => [path(`M${x} ${y}h8`, { dash: '1.5 1', width: WEIGHT.mark })],
        },
      ]),
  { word: 'reference point, tool lifted with its dials at 0', sample: (x, y) => marked([x + 4, y]) },
]

const box = (x: number, y: number, fill: string): Markup =>
  tag('rect', { x, y: y - 2, width: 8, height: 4, fill, stroke: '#000', 'stroke-width': 0.15 })
