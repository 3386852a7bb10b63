import type { Action, Purpose, Slide } from '../moves/operation.ts'

/**
 * What a row of a list of moves may contain. The columns, the keys, the messages and the schema are all made from this
 * table.
 */
export const KEYS = {
  feature: 'name of a feature of the job, or its number on the sheet; left out: the feature of the row before',
  action: 'what the hand does',
  slide: 'which slide is turned',
  reading: 'where the dial is to stand, in its own units and sense, from its zero; before zero it is negative',
  turns: 'whole turns from zero, with `mark`; -1 is the turn before zero',
  mark: 'the mark that the dial stops at, counted forward from the 0 of that turn',
  'at-least': 'marks that a take-up goes forward, at the least',
  place:
    'where the reference point of the tool is seen to stand, from the free end, in the units of the job: for a carriage that is moved by eye, without a reading',
  why: 'what the move is for; words only, nothing is judged by it',
  note: 'anything; it is not read',
} as const
export type Key = keyof typeof KEYS
/** Those whose values are numbers, and those whose values are words from a list. A code is named after each. */
export type NumberKey = 'reading' | 'turns' | 'mark' | 'at-least' | 'place'
export type WordKey = 'action' | 'slide' | 'why'
export const KEY_NAMES = Object.keys(KEYS) as readonly Key[]

export const SLIDES = ['cross-feed', 'compound', 'carriage'] as const satisfies readonly Slide[]

/** `dial`: turned to a reading. `named`: a slide without a reading. `hand`: neither. */
export type Sort = 'dial' | 'named' | 'hand'
const ACTIONS: Readonly<Record<Action, Sort>> = {
  'take-up': 'dial',
  zero: 'named',
  'feed-in': 'dial',
  'back-out': 'dial',
  shift: 'dial',
  'go-past': 'dial',
  return: 'dial',
  'feed-across': 'dial',
  'move-carriage': 'dial',
  layout: 'hand',
  'fit-tool': 'hand',
  swing: 'hand',
  'set-speed': 'hand',
  start: 'hand',
  stop: 'hand',
  align: 'hand',
  'touch-off': 'named',
  lock: 'named',
  unlock: 'named',
  measure: 'hand',
  deburr: 'hand',
}
export const ACTION_NAMES = Object.keys(ACTIONS) as readonly Action[]
export const sortOf = (action: Action): Sort => ACTIONS[action]

const PURPOSES: Readonly<Record<Purpose, true>> = {
  approach: true,
  rough: true,
  finish: true,
  clear: true,
  'clear-to-measure': true,
  'come-back': true,
  'square-shoulder': true,
  'clear-chip': true,
  'to-place': true,
  'take-out-floor': true,
  alternate: true,
  chamfer: true,
  burr: true,
  'only-tip': true,
  'expect-rough': true,
  'expect-finish': true,
  'set-up': true,
  'tailstock-line': true,
  'headstock-line': true,
  'between-lines': true,
}
export const PURPOSE_NAMES = Object.keys(PURPOSES) as readonly Purpose[]

/** The slide that may be left out, because only one is possible. */
export const usualSlide = (action: Action): Slide | null => {
  if (action === 'lock' || action === 'unlock' || action === 'move-carriage') return 'carriage'
  return null
}
