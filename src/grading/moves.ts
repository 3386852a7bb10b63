import { BACKWARD, HAND_WORDS } from '../exercise/asks/moves.ts'
import type { MovesFacts, ReadingFacts } from '../exercise/blank.ts'
import { type Lathe, readable, type Scale } from '../lathe/lathe.ts'
import type { Move, Slide } from '../moves/operation.ts'
import { type Parsed, parsed, refused } from '../units/parsed.ts'
import { valuesOf } from './value.ts'

const WORDS = Object.keys(HAND_WORDS) as readonly (keyof typeof HAND_WORDS)[]
/** More than anybody writes by hand. */
const MOST = 400

/**
 * The moves that a learner wrote, as "in 30; out past 0 to 80; over 12": a word and, of a dial, a reading from its zero
 * in any notation of an answer. What cannot be read is told by its place in the list.
 */
export const movesFrom = (text: string, { slide: along }: MovesFacts, lathe: Lathe): Parsed<readonly Move[]> => {
  const lines = text
    .toLowerCase()
    .split(/[;\n]/)
    .map((line) => line.replace(/^[\s\d.)]*(?=[a-z])/, '').trim())
    .filter((line) => line !== '')
  if (lines.length > MOST) return refused(`${lines.length} moves are no answer`, `write at most ${MOST}`)
  const moves: Move[] = []
  for (const [i, line] of lines.entries()) {
    const [word = '', ...rest] = line.split(/\s+/)
    const known = WORDS.find((one) => one === word)
    if (known === undefined) return unread(i, line, `begin with one of ${WORDS.join(', ')}`)
    const [action, of] = HAND_WORDS[known]
    const origin = { file: 'the answer', path: [i] }
    if (of === null) {
      moves.push({ action, origin })
      continue
    }
    const slide: Slide = of === 'along' ? along : of
    const scale =
      slide === 'cross-feed' ? lathe.crossFeed : slide === 'compound' ? lathe.compound.scale : lathe.carriage
    const count = scale === null ? null : countIn(rest.join(' '), scale, BACKWARD.has(known))
    if (count === null) return unread(i, line, `write where the ${slide} is turned to, as "${word} 30"`)
    moves.push({ action, slide, count, origin })
  }
  return moves.length === 0 ? refused('there are no moves', 'write them with semicolons between') : parsed(moves)
}

const unread = (i: number, line: string, hint: string): Parsed<never> =>
  refused(`move ${i + 1}, ${JSON.stringify(line.slice(0, 40))}, cannot be read`, hint)

/** In readable steps; "past 0 to 50" is the mark 50 of the turn before 0 on the way back, and simply 50 on the way in. */
const countIn = (text: string, scale: Scale, backward: boolean): number | null => {
  const before = /^(?:(?:back )?past )?0,? (?:to|stop at) (.+)$/.exec(text)
  const plain = (before?.[1] ?? text).replace(/^(?:to|on|onto) /, '')
  const facts = { sort: 'reading', scale } as unknown as ReadingFacts
  const read = valuesOf(plain, { facts, right: 0 })
  const value = read.ok ? read.value[0] : undefined
  if (value === undefined) return null
  const from = backward && before !== null && scale.kind === 'dial' ? value - scale.perTurn : value
  const count = from / readable(scale)
  return Math.abs(count - Math.round(count)) < 1e-6 ? Math.round(count) : count
}
