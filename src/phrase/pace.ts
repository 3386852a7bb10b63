import type { Scale } from '../lathe/lathe.ts'
import { inUnits, type Length, type Units } from '../units/length.ts'
import { figure } from './figure.ts'
import type { Phrase } from './phrase.ts'

/**
 * What a hand does for so much travel of the slide in a second (pm): marks that it can count, or else the time of a
 * whole turn.
 */
export const paceOn = (scale: Scale, travel: Length, units: Units): Phrase => {
  const reading = scale.reads === 'diameter' ? 2 * travel : travel
  if (scale.kind === 'readout')
    return [
      figure('pace', Number(inUnits(reading, units).toPrecision(1)), units, units === 'inch' ? 4 : 2),
      ' a second',
    ]
  const marks = reading / scale.graduation
  if (marks > COUNTED) return ['a turn of the dial in\u00a0', seconds(scale.perTurn / reading)]
  if (marks >= 1.5) return [figure('pace', Math.round(marks), 'count'), '\u00a0marks a second']
  return marks >= 0.75 ? [figure('pace', 1, 'count'), '\u00a0mark a second'] : ['a mark in\u00a0', seconds(1 / marks)]
}

/** More marks in a second than that are only seen to go by. Common practice, no source. */
const COUNTED = 6

/** "3 s", on one line. */
export const seconds = (time: number): Phrase[number] => figure('pace', Math.max(1, Math.round(time)), 's')
