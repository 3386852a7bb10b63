import type { Units } from '../units/length.ts'

/** `rule`: inches, said as the fraction that a rule has. */
export type FigureUnit = Units | 'rule' | 'deg' | 'rpm' | 'ft/min' | 'm/min' | 'mark' | 'turn' | 'count'

/** What a figure is about, so that a printer (or a teacher) can treat all of one sort alike, or leave them out. */
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
  | 'angle' // what the drawing and the set-up say
  | 'tool'
  | 'undersize'
  | 'speed'
  | 'dial'
  | 'backlash'
  | 'planned'
  | 'low'
  | 'high'
  | 'rss'
  | 'limit'
  | 'spare' // what was proved
  | 'count' // how many, which step
  | 'instrument' // what it is measured with

/** A number that is still a number: `value` in `unit`, to be shown with `digits` decimals. */
export type Figure = {
  readonly id: string
  readonly role: Role
  readonly value: number
  readonly unit: FigureUnit
  readonly digits: number
  /** Where the digits do not show all of it, it is shown this way off: what is worst is never shown as better. */
  readonly toward?: 'down' | 'up'
  /** As it is written in the job: shown so. */
  readonly text?: string
  /** In the job or on the drawing, or worked out from them: what an exercise may ask for. */
  readonly from: 'given' | 'answer'
}

/** Prose with its numbers left as data. */
export type Phrase = readonly (string | Figure)[]

/** A blank inside of a reading: no-break space. */
export const HELD = '\u00a0'

/** A sentence; a plain string only where it holds no number. */
export type Prose = string | Phrase
