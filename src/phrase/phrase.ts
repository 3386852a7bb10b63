import type { Units } from '../units/length.ts'

/** `rule`: inches, printed as the fraction on a rule. */
export type FigureUnit = Units | 'rule' | 'deg' | 'rpm' | 'ft/min' | 'm/min' | 'mark' | 'turn' | 's' | 'count'

/**
 * What a figure is about, so that a printer (or a teacher) can treat all figures of one sort alike, or leave them out.
 */
export type Role =
  | 'mark'
  | 'turns'
  | 'reading'
  | 'take-up' // what the dial shows
  | 'depth'
  | 'diameter'
  | 'along'
  | 'clearance'
  | 'expected' // what it does to the work
  | 'drawing'
  | 'stock'
  | 'place'
  | 'angle' // from the drawing and the set-up
  | 'tool'
  | 'undersize'
  | 'speed'
  | 'pace' // how fast the hand turns, how long it rests
  | 'dial'
  | 'backlash'
  | 'planned'
  | 'low'
  | 'high'
  | 'rss'
  | 'limit'
  | 'spare' // results of the proof
  | 'count' // how many, or which step
  | 'instrument' // the measuring instrument

/** A number that is still a number: `value` in `unit`, to be shown with `digits` decimals. */
export type Figure = {
  readonly id: string
  readonly role: Role
  readonly value: number
  readonly unit: FigureUnit
  readonly digits: number
  /** If the digits do not show the whole value, it is rounded this way: the worst value is never shown as better. */
  readonly toward?: 'down' | 'up'
  /** The text in the job, if it is printed as written there. */
  readonly text?: string
  /** `given`: in the job or on the drawing. `answer`: worked out from them, so an exercise may ask for it. */
  readonly from: 'given' | 'answer'
}

/** Prose with its numbers left as data. */
export type Phrase = readonly (string | Figure)[]

/** A blank inside a reading: no-break space. */
export const HELD = '\u00a0'

/** A sentence; a plain string only if it holds no number. */
export type Prose = string | Phrase
