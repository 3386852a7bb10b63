import type { Lathe, Scale } from '../../lathe/lathe.ts'
import { readable } from '../../lathe/lathe.ts'
import type { Slide } from '../../moves/operation.ts'
import { turnsOf, wholeTurns } from '../../phrase/dial.ts'
import { identify } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { shortTurn } from '../../phrase/short.ts'
import { perUnit } from '../../units/length.ts'
import type { SheetStep } from '../sheet.ts'
import type { CellPart } from './types.ts'

/** Where each dial was read last, in readable steps from its zero. */
export type Read = Readonly<Partial<Record<Slide, number>>>

/** What a step turns its dial to, and what the dials read after it. Without a reading: the words of the step. */
export const partOf = (
  lathe: Lathe,
  step: SheetStep,
  before: Read,
  corrected: ReadonlySet<number>,
): { readonly part: CellPart; readonly after: Read } => {
  const { slide, reading, number, action, purpose } = step
  const scale = slide === null ? null : scaleIn(lathe, slide)
  const common = {
    step: number,
    slowly: action === 'feed-across' || purpose === 'square-shoulder',
    corrected: corrected.has(number),
  }
  if (slide === null || scale === null || reading === null)
    return { part: { ...common, slowly: false, passing: [], at: step.does, whole: null }, after: before }
  const count = Math.round((reading * perUnit(scale.units)) / readable(scale))
  const { passing, at } = shortTurn(scale, slide, before[slide] ?? 0, count)
  const turns = wholeTurns(scale, before[slide] ?? 0, count)
  const whole = turns === null ? null : named(number, 'whole', turnsOf(turns))
  // In from far out the turns are counted, as on the sheet.
  const counted: Phrase | null =
    turns !== null && action === 'return' && slide === 'cross-feed' && count === 0
      ? [...turnsOf(turns), ', onto']
      : null
  return {
    part: { ...common, passing: named(number, 'passing', counted ?? passing), at: named(number, 'at', at), whole },
    after: { ...before, [slide]: count },
  }
}

/** A slide that stays where it was read last; nothing if it was not read yet. */
export const standing = (lathe: Lathe, before: Read, slide: Slide, { number }: SheetStep): CellPart[] => {
  const scale = scaleIn(lathe, slide)
  const count = before[slide]
  if (scale === null || count === undefined) return []
  const { at } = shortTurn(scale, slide, count, count)
  return [{ step: number, slowly: false, passing: [], at: named(number, 'stays', at), whole: null, corrected: false }]
}

const named = (step: number, what: string, phrase: CellPart['at']): CellPart['at'] =>
  identify(`card.step.${step}.${what}`, phrase)

export const scaleIn = ({ crossFeed, compound, carriage }: Lathe, slide: Slide): Scale | null =>
  slide === 'cross-feed' ? crossFeed : slide === 'compound' ? compound.scale : carriage
