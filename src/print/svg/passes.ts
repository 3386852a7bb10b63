import type { Form } from '../../moves/form.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import { type Markup, tag } from '../markup.ts'
import { between, depthAt, depthBeside, trace } from './curves.ts'
import { circle, INK, letters, line, type Point, path, WEIGHT, widthOf } from './pen.ts'
import type { View } from './view.ts'

export type Pass = Drawing['passes'][number]

/** Each pass as the line that it leaves. */
export const passLines = (view: View): Markup[] => {
  const cut = cutBy(view)
  return cut.map(({ pass, runs }, i) =>
    tag(
      'g',
      { class: 'pass', 'data-step': pass.step },
      ...runs.map((run) =>
        path(withWalls(view, run, view.drawing.passes.indexOf(pass)), {
          width: i === cut.length - 1 ? WEIGHT.mark : WEIGHT.thin,
        }),
      ),
    ),
  )
}

/** The number of its step below each of them, or of as many as find room. */
export const passNumbers = (view: View, numbers: number): Markup[] => {
  const cut = cutBy(view)
  const most = mostNumbers(
    view,
    cut.map(({ pass }) => String(pass.step)),
  )
  const marks = chosen(cut, most).map(({ pass, runs }) => ({
    text: String(pass.step),
    run: runs.reduce((most, run) => (span(run) > span(most) ? run : most)),
  }))
  return spread(marks, view).flatMap(({ text, run, x }) => {
    const point = under(view, run, x)
    return [
      line([x, numbers - 4], point, { width: 0.15 }),
      circle(point, 0.5, { width: 0, fill: INK }),
      letters([x, numbers], text, { anchor: 'middle' }),
    ]
  })
}

const cutBy = (view: View): { readonly pass: Pass; readonly runs: readonly Form[] }[] =>
  view.drawing.passes.map((pass, i) => ({ pass, runs: runsOf(view, pass, i) })).filter(({ runs }) => runs.length > 0)

/** What a step cut anew, as stretches that hang together. */
const runsOf = ({ drawing }: View, pass: Pass, i: number): Form[] => {
  const before = i === 0 ? drawing.before : drawing.passes[i - 1]!.form
  const mine = between(pass.form, drawing.region.from - 1e6, drawing.region.to + 1e6).filter(
    (piece) => piece.step === pass.move && isDeeper(piece, before),
  )
  const runs: Form[number][][] = []
  for (const piece of mine) {
    const last = runs.at(-1)?.at(-1)
    if (last !== undefined && Math.abs(last.to - piece.from) < 1000) runs.at(-1)!.push(piece)
    else runs.push([piece])
  }
  return runs
}

const isDeeper = (piece: Form[number], before: Form): boolean => {
  const middle = (piece.from + piece.to) / 2
  const was = depthBeside(before, middle, 1)
  return was !== null && depthAt(piece.curve, middle) > was + 1
}

const span = (run: Form): number => run.at(-1)!.to - run[0]!.from

/** The line with the walls at its ends, up to the work as it was. */
const withWalls = ({ drawing, frame }: View, run: Form, i: number): string => {
  const before = i === 0 ? drawing.before : drawing.passes[i - 1]!.form
  const [from, to] = [run[0]!.from, run.at(-1)!.to]
  const wall = (z: number, side: -1 | 1): string => {
    const depth = depthBeside(before, z, side)
    return depth === null ? '' : `${frame.x(z)} ${frame.y(depth)}`
  }
  const [start, end] = [wall(from, 1), wall(to, -1)]
  return `${start === '' ? '' : `M${start}`}${trace(run, frame, false, start === '' ? 'M' : 'L')}${end === '' ? '' : `L${end}`}`
}

/** What stands between the last pass of roughing and the form that is wanted. */
export const roughLeft = (view: View, id: string): Markup[] => {
  const rough = roughed(view)
  if (rough === null) return []
  const { drawing, frame } = view
  const { region } = drawing
  const left = between(rough.form, region.from, region.to)
  const [first, last] = [left[0], left.at(-1)]
  if (first === undefined || last === undefined) return []
  const area = `${trace(left, frame)}${trace(between(drawing.wanted, first.from, last.to), frame, true, 'L')}Z`
  const hatch = tag(
    'pattern',
    { id: `${id}-hatch`, width: 1.8, height: 1.8, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
    path('M0 0V1.8', { width: 0.3 }),
  )
  return [tag('defs', {}, hatch), path(area, { width: 0, fill: `url(#${id}-hatch)`, as: 'left' })]
}

/** The last pass before anything is finished; none where roughing leaves nothing. */
export const roughed = ({ sheet, drawing }: Pick<View, 'sheet' | 'drawing'>): Pass | null => {
  const groupOf = (pass: Pass): string | undefined => sheet.steps.find(({ number }) => number === pass.step)?.group
  const finish = drawing.passes.findIndex((pass) => groupOf(pass) === 'finish')
  return finish < 1 ? null : drawing.passes[finish - 1]!
}

const ROOM = 2

/** How many numbers stand in one line under the form. */
const mostNumbers = (view: View, texts: readonly string[]): number => {
  const widest = Math.max(1, ...texts.map((text) => widthOf(text)))
  return Math.max(2, Math.floor((right(view) - left(view)) / (widest + ROOM)))
}

/** All of them, or as many evenly, first and last among them. */
export const chosen = <T>(all: readonly T[], most: number): T[] => {
  if (all.length <= most) return [...all]
  const picked = Array.from({ length: most }, (_, i) => Math.round((i * (all.length - 1)) / (most - 1)))
  return all.filter((_, i) => picked.includes(i))
}

const left = ({ frame, to }: View): number => frame.x(to) - 10
const right = ({ frame, from }: View): number => frame.x(from) + 10

type Mark = { readonly text: string; readonly run: Form }

/** Numbers in one line, as far apart as they must be and as near to what they mark as that leaves them. */
const spread = (marks: readonly Mark[], view: View): (Mark & { readonly x: number })[] => {
  if (marks.length === 0) return []
  const middle = ({ run }: Mark): number => view.frame.x((run[0]!.from + run.at(-1)!.to) / 2)
  const sorted = [...marks].sort((a, b) => middle(a) - middle(b))
  const ends = marks.flatMap(({ run }) => [view.frame.x(run[0]!.from), view.frame.x(run.at(-1)!.to)])
  const [from, to] = [Math.min(...ends), Math.max(...ends)]
  const room = Math.max((to - from) / marks.length, ...marks.map(({ text }) => widthOf(text) + ROOM))
  const start = (from + to) / 2 - (room * (marks.length - 1)) / 2
  return sorted.map((mark, i) => ({ ...mark, x: start + i * room }))
}

/** The point of a line that is nearest above its number. */
const under = ({ frame }: View, run: Form, x: number): Point => {
  const [right, left] = [frame.x(run[0]!.from), frame.x(run.at(-1)!.to)]
  const inset = (right - left) / 10
  const part = (right - Math.min(right - inset, Math.max(left + inset, x))) / (right - left)
  const z = run[0]!.from + part * span(run)
  const piece = run.find(({ to }) => to >= z) ?? run.at(-1)!
  return [frame.x(z), frame.y(depthAt(piece.curve, z))]
}
