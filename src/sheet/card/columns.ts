import type { Slide } from '../../moves/operation.ts'
import type { SheetStep } from '../sheet.ts'

/** A column of the table of cuts: one slide, turned one way. */
export type Column = {
  readonly id: string
  readonly slide: Slide
  readonly thing: string
  /** "in", "across", "OUT", or nothing: to the place. */
  readonly way: string
  /** It brings the tool to its place: a cell that is left empty means that it stays there. */
  readonly places: boolean
  /** The tool is out afterward: the row ends. */
  readonly ends: boolean
}

type Way = 'to' | 'in' | 'across' | 'out'

/** From left to right as the hand goes. */
const ORDER: readonly Way[] = ['to', 'in', 'across', 'out']
const WORDS: Readonly<Record<Way, string>> = { to: '', in: 'in', across: 'across', out: 'OUT' }

/** What is no turn of a dial between the first cut and the last, takes up backlash, or stands at a stop, has a box. */
export const columnOf = (step: SheetStep): Column | null => {
  const { action, slide, group, purpose } = step
  if (group === 'set up' || group === 'end') return null
  if (action === 'lock' || action === 'unlock') return column('to', 'carriage')
  if (slide === null || purpose === 'clear-to-measure' || (purpose === 'come-back' && action === 'return')) return null
  const way = wayOf(step, slide)
  return way === null ? null : column(way, slide)
}

const column = (way: Way, slide: Slide): Column => ({
  id: `${way} ${slide}`,
  slide,
  thing: slide.toUpperCase(),
  way: WORDS[way],
  places: way === 'to',
  ends: way === 'out',
})

const wayOf = ({ action }: SheetStep, slide: Slide): Way | null => {
  switch (action) {
    case 'shift':
    case 'move-carriage':
      return 'to'
    case 'return':
      return slide === 'cross-feed' ? 'in' : null
    case 'feed-in':
      return slide === 'cross-feed' ? 'in' : 'across'
    case 'feed-across':
      return 'across'
    case 'back-out':
      return 'out'
    default:
      return null
  }
}

/** Each once, from left to right. */
export const columnsOf = (columns: readonly Column[]): Column[] => {
  const each = [...new Map(columns.map((column) => [column.id, column])).values()]
  const place = ({ way }: Column): number => ORDER.findIndex((one) => WORDS[one] === way)
  return each.sort((a, b) => place(a) - place(b))
}
