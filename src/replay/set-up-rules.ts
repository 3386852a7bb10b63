import type { Move, Slide } from '../moves/operation.ts'
import { type Bench, see } from './bench.ts'
import { isKnown } from './slide.ts'

/** The zeros belong to the place where the tool was brought. What must never happen between that and the last cut. */

/** When the tool is brought to a line again or set again, or the compound is swung, what was found before is lost. */
export const checkBrought = (bench: Bench, move: Move, index: number): void => {
  const { slides, found, cut } = bench
  const along = isKnown(slides.compound) || isKnown(slides.carriage)
  const lost = move.action === 'align' ? along || cut : along || cut || found || slides['cross-feed'].zeroed
  if (lost) see(bench, 'open-zero', index, null, LOST[move.action] ?? LOST.align!)
}

const LOST: Partial<Record<Move['action'], string>> = {
  align: 'The tool is brought to its place again after its zero was set: the dials no longer say where it is.',
  swing: 'The compound is swung after the tool was brought to its place: every zero is lost.',
  'fit-tool': 'The tool is set anew after it was brought to its place: every zero is lost.',
}

export const checkTouchAgain = (bench: Bench, slide: Slide, index: number): void => {
  if (!isKnown(bench.slides[slide])) return
  see(
    bench,
    'open-zero',
    index,
    null,
    `The ${slide} is touched off again after its zero: its reading then is not known.`,
  )
}

/** Backlash is taken up before the tool is brought to its place. A slide that is pushed after that is no longer where it was brought. */
export const checkTakeUp = (bench: Bench, move: Move, slide: Slide, index: number): void => {
  const { slides, found } = bench
  if (typeof move.count === 'number' || move.takeUp === 0) return
  const fault = (say: string): void => see(bench, 'open-zero', index, null, say)
  if (isKnown(slides[slide])) {
    fault(`The backlash of the ${slide} is taken up after its zero was set: go to a reading instead.`)
    return
  }
  const { brought, step } = slides[slide]
  if (slide === 'cross-feed') {
    if (brought === null) return
    const deep = (move.takeUp ?? 0) * step
    see(bench, 'open-zero', index, deep, 'The cross-feed is fed in after it touched: the tool digs into the work.')
    return
  }
  const touches = slides['cross-feed'].brought !== null && !slides['cross-feed'].zeroed
  if (touches) {
    see(bench, 'moved-in-contact', index, null, 'The tool is moved along the work while it touches.')
  } else if (found && !(slide === 'carriage' && ontoLine(bench, move))) {
    fault(`The ${slide} is moved on after the tool was brought to its place, and its zero is set off that place.`)
  }
}

/** Before it is locked, and with no touch along the work, the carriage is taken up toward the line that it is brought to. */
export const ontoLine = ({ locked, slides }: Bench, { action }: Move): boolean =>
  action === 'take-up' && !locked && !isKnown(slides.carriage) && !isKnown(slides.compound)
