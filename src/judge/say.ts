import type { Instrument } from '../moves/operation.ts'
import { formatDifference, formatLength } from '../units/format.ts'
import type { Units } from '../units/length.ts'
import type { Beside } from './beside.ts'
import type { Heavy } from './heavy.ts'
import type { Judged, Judgment } from './judge.ts'

/** A size as printed: to a tenth of a thousandth, a micrometer, a hundredth of a degree. */
export const sizeText = (id: Instrument, value: number, units: Units): string => {
  if (id === 'angle') return `${value.toFixed(2)}°`
  const text = formatLength(value, units, { digits: units === 'inch' ? 4 : 3 })
  return text.endsWith('0') ? text.slice(0, -1) : text
}

/** The difference of two sizes: as a size, or with more digits if it would print as zero. */
export const differenceText = (id: Instrument, value: number, units: Units): string => {
  if (id !== 'angle') {
    const text = formatDifference(value, units, { digits: units === 'inch' ? 4 : 3 })
    return /[1-9].*0$/.test(text) ? text.slice(0, -1) : text
  }
  const digits = [2, 3, 4, 5, 6].find((each) => Number(value.toFixed(each)) !== 0) ?? 2
  return `${value.toFixed(digits)}°`
}

/** The words for a cut that takes more than one pass may. */
export const heavyText = ({ takes, most, of, across }: Heavy, units: Units): string => {
  const [much, allowed] = [takes, most].map((length) => sizeText('depth', length, units))
  if (across) return `feeds across through metal ${much} high, where ${allowed} is the most to feed into`
  if (of === 'sheet') return `heavier than any pass of the sheet, ${allowed}: takes ${much} at once`
  return `heavier than infeed ${allowed}: takes ${much} at once`
}

/** What the part would be, a line for each dimension that does not hold; empty if all hold. */
export function outcome(judgment: Judgment, units: Units): string[] {
  const { sizes, beside, gone, left, leftAlways } = judgment
  const lines = [
    ...sizes.filter(({ verdict }) => verdict !== 'holds').flatMap((one) => linesOf(one, units)),
    ...beside.map((one) => besideLine(one, units)),
  ]
  if (gone > 0 && beside.length === 0 && sizes.every(({ verdict }) => verdict !== 'gone'))
    lines.push(`metal is gone outside the finished form, ${differenceText('depth', gone, units)} deep, cannot be saved`)
  if (left > 0 && lines.length === 0)
    lines.push(
      `${leftAlways ? '' : 'with some backlash '}metal is left, ${differenceText('depth', left, units)} more than the limits allow, can be saved`,
    )
  return [...new Set(lines)]
}

function besideLine({ side, along, deep, maybe }: Beside, units: Units): string {
  const show = (length: number) => differenceText('depth', length, units)
  return `${maybe ? 'with some backlash ' : ''}metal is gone from the part beside it on the ${side} side, ${show(along)} along and ${show(deep)} deep, cannot be saved`
}

function linesOf(one: Judged, units: Units): string[] {
  if (one.surely === null && one.possibly === null) return ['nothing is cut there yet, can be saved']
  if (one.surely === null || one.possibly === null) return ['nothing is surely cut there, can be saved']
  // No size measures that place: what is left there is reported for the whole form.
  if (one.by === 0) return []
  const by = differenceText(one.id, one.by, units)
  const may = one.maybe ? 'with some backlash ' : ''
  if (one.verdict === 'gone') return [`${may}${by} ${GONE[one.id]}${side(one)}, cannot be saved`]
  if (one.verdict === 'off') return [`${may}${by} ${OFF[one.id] ?? 'off'}`]
  return [`${may}${LEFT[one.id]?.(by) ?? `${by} left`}${side(one)}, can be saved`]
}

const side = ({ side }: Judged): string => (side === null ? '' : ` on the ${side} side`)

const GONE: Readonly<Record<Instrument, string>> = {
  width: 'too wide',
  depth: 'too deep',
  bottomDiameter: 'too small at the bottom',
  near: 'too far toward the free end',
  far: 'too far toward the headstock',
  center: 'out of place',
  root: 'too wide at the bottom',
  angle: 'too open',
  flatness: 'out of flat',
  radius: 'off the radius',
  cornerRadius: 'too sharp in the corner of the floor',
  legAlong: 'too long along the work',
  legDown: 'too deep down the face',
}
const OFF: Partial<Record<Instrument, string>> = {
  center: 'out of place along the work',
  angle: 'off the angle',
  radius: 'off the radius',
}
const LEFT: Partial<Record<Instrument, (by: string) => string>> = {
  width: (by) => `${by} left in the width`,
  depth: (by) => `${by} left in the depth`,
  bottomDiameter: (by) => `${by} left on the bottom diameter`,
  near: (by) => `${by} left before the near edge`,
  far: (by) => `${by} left before the far edge`,
  root: (by) => `${by} left in the width of the bottom`,
  flatness: (by) => `a step of ${by} more than allowed is left on the floor`,
  cornerRadius: (by) => `${by} left in the radius of the corner`,
  legAlong: (by) => `${by} left along the work`,
  legDown: (by) => `${by} left down the face`,
}
