import type { Instrument } from '../../moves/operation.ts'
import { figure } from '../../phrase/figure.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import { labelOf } from '../../plan/labels.ts'
import type { Change } from '../sheet.ts'
import { type Data, dataIn, listIn, numberIn, sameData, textIn } from './data.ts'
import { lengthShown, unitsOf } from './facts.ts'

/** Finished sizes whose plan, worst case or verdict has changed. */
export const sizesIn = (before: Data, now: Data, kept: Data, today: Data): Change[] =>
  [...new Set([...Object.keys(before), ...Object.keys(now)])].flatMap((id) => {
    const same = sameData(dataIn(before[id]).limits, dataIn(now[id]).limits)
    const [old, fresh] = [sizeOf(id, before[id], kept, same), sizeOf(id, now[id], today, same)]
    return sameData(old, fresh) ? [] : [{ what: labelOf(id as Instrument) ?? id, before: old, now: fresh }]
  })

/** Planned, the worst case, and if there are limits the verdict; the limits themselves only if they have changed. */
const sizeOf = (id: string, size: unknown, sheet: Data, sameLimits: boolean): Phrase | null => {
  const data = dataIn(size)
  const shown = (value: unknown): Figure | string => {
    const number = numberIn(value)
    if (number === null) return '?'
    return id === 'angle'
      ? figure('planned', number, 'deg')
      : { ...lengthShown(number, unitsOf(sheet), 4), role: 'planned' }
  }
  if (numberIn(data.planned) === null) return null
  const [low, high] = listIn(data.limits)
  const limits: Phrase = sameLimits || numberIn(low) === null ? [] : [' of limits ', shown(low), ' to ', shown(high)]
  const verdict = numberIn(low) === null ? [] : [`, ${textIn(data.verdict)}`]
  return [shown(data.planned), ' (', shown(data.low), ' to ', shown(data.high), ' at worst)', ...limits, ...verdict]
}
