import type { Form } from '../../moves/form.ts'
import type { PartDrawing } from '../../sheet/drawing.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Length } from '../../units/length.ts'
import type { Markup } from '../markup.ts'
import { depthBeside, type Frame } from './curves.ts'
import { closed, GRAY, letters, type Point, WEIGHT } from './pen.ts'

const JAW = { long: 14, high: 11 } as const

/** Jaws, collet, dog and centers: what the tool must keep clear of. Not to scale, only their faces and points are. */
export const holding = (
  drawing: PartDrawing,
  held: Sheet['part']['held'],
  frame: Frame,
  open: Length,
  form: Form,
): Markup[] => {
  const axis = frame.y(0)
  const centers = [
    ...(drawing.tailstockCenter ? center([frame.x(0), axis], 1) : []),
    ...(held === 'between centers' ? center([frame.x(Math.max(...form.map(({ to }) => to))), axis], -1) : []),
  ]
  if (drawing.jaws === null) return centers
  const surface = depthBeside(form, open, -1) ?? 0
  const x = frame.x(drawing.jaws)
  const radius = axis - frame.y(surface)
  return [
    ...jaw(held, x, axis, radius, -1),
    ...jaw(held, x, axis, radius, 1),
    ...centers,
    ...label(held, x, axis + radius),
  ]
}

/** A stepped jaw above or below the work; a collet is thinner, and tapers. */
const jaw = (held: string, x: number, axis: number, radius: number, way: -1 | 1): Markup[] => {
  const at = (dx: number, dr: number): Point => [x - dx, axis + way * (radius + dr)]
  const shape: Record<string, readonly Point[]> = {
    collet: [at(0, 0), at(0, 3), at(JAW.long, 6), at(JAW.long, 0)],
    'between centers': [at(0, 0), at(0, 6), at(5, 6), at(5, 0)],
  }
  const stepped = [at(0, 0), at(0, 5), at(5, 5), at(5, JAW.high), at(JAW.long, JAW.high), at(JAW.long, 0)]
  return [closed(shape[held] ?? stepped, { width: WEIGHT.mark, fill: GRAY.jaws, as: 'jaw' })]
}

const label = (held: string, x: number, bottom: number): Markup[] => {
  const word = held === 'collet' ? 'collet' : held === 'between centers' ? 'dog' : 'jaws'
  return [letters([x - JAW.long - 1.5, bottom + 5], word, { anchor: 'end' })]
}

/** A point of 60 degrees in the end of the work. */
const center = ([x, y]: Point, way: -1 | 1): Markup[] => {
  const [inside, long, half] = [2.5, 8, 6]
  const tip = x - way * inside
  return [
    closed(
      [
        [tip, y],
        [tip + way * (long + inside), y - half],
        [tip + way * (long + inside + 5), y - half],
        [tip + way * (long + inside + 5), y + half],
        [tip + way * (long + inside), y + half],
      ],
      {
        width: WEIGHT.mark,
        fill: GRAY.jaws,
        as: 'center',
      },
    ),
  ]
}
