import { readable, type Scale } from '../../lathe/lathe.ts'
import type { Action, Move, Operation, Slide } from '../../moves/operation.ts'
import { formatExact } from '../../units/format.ts'
import { type Ask, cutsOf } from './ask.ts'

/** As a hand says it on paper and in a form; `grading/moves.ts` reads it. */
export const HAND_WORDS = {
  in: ['feed-in', 'cross-feed'],
  out: ['back-out', 'cross-feed'],
  over: ['shift', 'along'],
  past: ['go-past', 'along'],
  onto: ['return', 'along'],
  along: ['feed-across', 'along'],
  start: ['start', null],
  stop: ['stop', null],
  measure: ['measure', null],
} as const satisfies Record<string, readonly [Action, 'cross-feed' | 'along' | null]>

/** What turns a dial back: only there "past 0 to 50" is the mark 50 of the turn before 0. On the way in it is the mark 50 behind 0, as a sheet has it. */
export const BACKWARD: ReadonlySet<string> = new Set<keyof typeof HAND_WORDS>(['out', 'past'])

/** As many lines for every answer: how many there are would tell how many moves are right. */
const ROOM = 24

/** Every move of the cutting, written by the learner: whatever list proves is right. */
export const moves: Ask = {
  says: 'every move from the first start to the last stop, written by the learner; any list that proves is right',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index }) => {
      const { operation } = feature
      const range = cuttingOf(operation)
      const slide = slideAlong(operation)
      const list = range === null ? null : operation.moves.slice(range[0], range[1] + 1)
      if (range === null || slide === null || list === null) return []
      const lines = list.flatMap((move) => lineOf(move, scene.plan.lathe, slide) ?? [])
      if (lines.length !== list.length) return []
      return [
        {
          id: `${index + 1}.moves`,
          outOf: 6,
          asks: `the moves of ${feature.name}, with semicolons between: start; in 30; out past 0 to 80; over 12; and so on`,
          facts: {
            sort: 'moves' as const,
            feature: index,
            first: range[0],
            last: range[1],
            slide,
            units: scene.plan.units,
          },
          right: lines.join('; '),
          tolerance: 0,
          key: lines.join('; '),
          within: 'or any list that proves',
          working: 'as the sheet has it',
          follows: [],
          move: null,
          place: {
            question: `Write every move of "${feature.name}" from the first start of the spindle to its last stop, one a line: start, stop, measure; in, out: the cross-feed; over, past, onto, along: the ${slide}; each dial with its reading from 0, as "in 30", "out past 0 to 80":`,
          },
          choices: Array.from({ length: ROOM }, () => '______________  ______________________'),
        },
      ]
    }),
}

/** From the first start of the spindle to its last stop. */
const cuttingOf = ({ moves: all }: Operation): readonly [number, number] | null => {
  const first = all.findIndex(({ action }) => action === 'start')
  const last = all.findLastIndex(({ action }) => action === 'stop')
  return first < 0 || last <= first ? null : [first, last]
}

/** The one slide beside the cross-feed that is turned to readings; null where hands do something else as well. */
const slideAlong = ({ moves: all, angle }: Operation): Slide | null => {
  if (angle !== 0) return null
  const others = new Set(all.flatMap(({ slide, count }) => (typeof count === 'number' && slide ? [slide] : [])))
  others.delete('cross-feed')
  return others.size > 1 ? null : ([...others][0] ?? 'compound')
}

const lineOf = (move: Move, lathe: Parameters<Ask['make']>[0]['plan']['lathe'], slide: Slide): string | null => {
  // After measuring, the cross-feed comes in to where it was: a hand says "in".
  const action = move.action === 'return' && move.slide === 'cross-feed' ? 'feed-in' : move.action
  const found = Object.entries(HAND_WORDS).find(([, [one]]) => one === action)
  if (found === undefined) return null
  const [word, [, of]] = found
  if (of === null) return word
  const own = move.slide ?? (of === 'along' ? slide : of)
  if (own !== (of === 'along' ? slide : of) || typeof move.count !== 'number') return null
  const scale = own === 'cross-feed' ? lathe.crossFeed : own === 'compound' ? lathe.compound.scale : lathe.carriage
  return scale === null
    ? null
    : `${word} ${onScale(scale, move.count, BACKWARD.has(word))}`.replace('past past', 'past')
}

/** "54", "1 turn 25"; before 0 "past 0 to 50" on the way back and "-50" on the way in; of a readout what it shows. */
const onScale = (scale: Scale, count: number, backward: boolean): string => {
  const reading = count * readable(scale)
  if (scale.kind === 'readout') return formatExact(reading, scale.units)
  // Between two marks a number with a point is what the dial shows.
  const marks = (of: number): string => {
    const whole = Math.round(of / scale.graduation)
    return Math.abs(of - whole * scale.graduation) < 1 ? String(whole) : formatExact(of, scale.units)
  }
  if (backward && reading < 0 && reading > -scale.perTurn) return `past 0 to ${marks(reading + scale.perTurn)}`
  if (reading < scale.perTurn) return marks(reading)
  const turns = Math.floor(reading / scale.perTurn + 1e-9)
  return `${turns} turn${turns === 1 ? '' : 's'} ${marks(reading - turns * scale.perTurn)}`
}
