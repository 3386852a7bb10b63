import { type Markup, tag } from '../markup.ts'
import { depthsOf, frameAt, trace } from './curves.ts'
import { circle, line, type Point, path, WEIGHT } from './pen.ts'
import type { View } from './view.ts'

/** The edge where it stands with its dials at 0, lifted off the work so that it hides nothing; its reference point marked. */
export const toolAbove = (view: View, id: string, top: number): Markup[] => {
  const { drawing, feature, toolEnd } = view
  const { edge } = drawing
  const { scale } = view.frame
  const [, lowest] = depthsOf(edge.pieces)
  const [first, last] = [edge.pieces[0], edge.pieces.at(-1)]
  if (first === undefined || last === undefined) return []
  const reference: Point = [view.frame.x(feature.zero.fromEnd), toolEnd - (lowest / 1e9) * scale]
  const frame = frameAt(scale, reference)
  const clip = `${id}-tool`
  const outline = `M${frame.x(first.from)} ${top}${trace(edge.pieces, frame, false, 'L')}L${frame.x(last.to)} ${top}`
  return [
    tag(
      'defs',
      {},
      tag('clipPath', { id: clip }, tag('rect', { x: 0, y: top, width: 400, height: toolEnd - top + 1 })),
    ),
    tag('g', { class: 'tool', 'clip-path': `url(#${clip})` }, path(outline, { width: WEIGHT.edge, fill: '#fff' })),
    ...marked(reference),
    line([reference[0], reference[1]], [reference[0], view.frame.y(view.surface)], { dash: '1 1', width: WEIGHT.thin }),
  ]
}

/** A cross in a ring. */
export const marked = ([x, y]: Point): Markup[] => [
  circle([x, y], 1.2, { width: WEIGHT.mark, as: 'reference' }),
  line([x - 2.2, y], [x + 2.2, y]),
  line([x, y - 2.2], [x, y + 2.2]),
]
