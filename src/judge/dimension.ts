import type { Instrument, WantedDimension } from '../moves/operation.ts'
import type { Box } from '../replay/form/dilate.ts'
import type { Room } from './room.ts'

/**
 * `gone`: more is cut than the drawing allows. `left`: less is cut, and the rest can still be cut. `off`: neither, the
 * form is different.
 */
export type Verdict = 'holds' | 'gone' | 'left' | 'off'

type Outcome = { readonly verdict: Verdict; readonly by: number; readonly maybe: boolean }

/**
 * A size on both forms against its limits; if the drawing gives none, against the aim within what the dials can do. `least`: the size
 * of the form on which as much metal is left as may be, where that is less than the marks say. `follows`: what it may be because other sizes hold.
 */
export function verdictOf(
  dimension: WantedDimension,
  sizes: readonly [surely: number | null, possibly: number | null],
  mark: Box,
  room: Room,
  least: number | null = null,
  follows: readonly [number, number] | null = null,
): Outcome {
  const [lowest, high] = dimension.limits ?? widest(around(dimension, mark, room), follows)
  const low = Math.min(lowest, least ?? lowest)
  const slack = dimension.id === 'angle' ? 1e-9 : 1000
  const outs = sizes.map((size) => {
    if (size === null) return { verdict: 'left' as Verdict, by: 0 }
    if (size > high + slack)
      return { verdict: OVER[dimension.id], by: size - (dimension.limits === null ? dimension.aim : high) }
    if (size < low - slack)
      return { verdict: UNDER[dimension.id], by: (dimension.limits === null ? dimension.aim : low) - size }
    return { verdict: 'holds' as Verdict, by: 0 }
  })
  const worst = outs.reduce((a, b) =>
    graver(b.verdict, a.verdict) || (b.verdict === a.verdict && b.by > a.by) ? b : a,
  )
  return { ...worst, maybe: worst.verdict !== 'holds' && outs.some(({ verdict }) => verdict !== worst.verdict) }
}

const widest = ([low, high]: readonly [number, number], other: readonly [number, number] | null) =>
  other === null ? ([low, high] as const) : ([Math.min(low, other[0]), Math.max(high, other[1])] as const)

/**
 * What the radius of a hollow may be where its chord and its height hold: of a flat arc half a mark of either changes it by much more. r = c²/8h + h/2
 * (plane geometry); it grows with the chord and falls with the height as long as the hollow is less than half a circle.
 */
export function hollowRadius(
  dimensions: readonly WantedDimension[],
  mark: Box,
  room: Room,
): readonly [number, number] | null {
  const size = (id: Instrument): WantedDimension | undefined => dimensions.find((one) => one.id === id)
  const [width, depth] = [size('width'), size('depth')]
  if (width === undefined || depth === undefined || size('radius') === undefined) return null
  const [narrow, wide] = width.limits ?? around(width, mark, room)
  const [shallow, deep] = depth.limits ?? around(depth, mark, room)
  const radius = (chord: number, height: number): number =>
    height <= 0 ? Number.POSITIVE_INFINITY : chord ** 2 / (8 * height) + height / 2
  return [radius(narrow, deep), radius(wide, shallow)]
}

/** From what holds to what no cut can mend. */
const GRAVITY: readonly Verdict[] = ['holds', 'left', 'off', 'gone']
const graver = (one: Verdict, other: Verdict): boolean => GRAVITY.indexOf(one) > GRAVITY.indexOf(other)

/**
 * The range of a size without limits of its own: what the dials can do, or what the limits of the other sizes leave.
 * Degrees: a tenth.
 */
function around({ id, aim }: WantedDimension, mark: Box, { over, left, edge, runs }: Room): readonly [number, number] {
  if (PLACES.has(id)) return [aim - edge, aim + edge]
  if (id === 'angle') return [aim - 0.1, aim + 0.1]
  const by = ({ along, deep }: Box): number => {
    // Of an arc that meets the surface flatly half a mark of depth moves both edges by much more than that.
    if (id === 'width') return Math.max(along, 2 * (mark.along + runs * deep))
    if (id === 'legAlong') return Math.max(2 * mark.along, along)
    if (id === 'depth' || id === 'legDown') return deep
    return id === 'bottomDiameter' || id === 'flatness' ? 2 * deep : 2 * (deep + along)
  }
  if (OVER[id] === 'gone') return [aim - by(left), aim + by(over)]
  if (UNDER[id] === 'gone') return [aim - by(over), aim + by(left)]
  const most = Math.max(by(over), by(left))
  return [aim - most, aim + most]
}
const PLACES: ReadonlySet<Instrument> = new Set<Instrument>(['near', 'far', 'center'])

/** What it means to measure more than the highest limit, and less than the lowest. */
const OVER: Readonly<Record<Instrument, Verdict>> = {
  width: 'gone',
  depth: 'gone',
  bottomDiameter: 'left',
  near: 'left',
  far: 'gone',
  center: 'off',
  root: 'gone',
  angle: 'off',
  flatness: 'left',
  radius: 'off',
  cornerRadius: 'left',
  legAlong: 'gone',
  legDown: 'gone',
}
const UNDER: Readonly<Record<Instrument, Verdict>> = {
  width: 'left',
  depth: 'left',
  bottomDiameter: 'gone',
  near: 'gone',
  far: 'left',
  center: 'off',
  root: 'left',
  angle: 'off',
  flatness: 'left',
  radius: 'off',
  cornerRadius: 'gone',
  legAlong: 'left',
  legDown: 'left',
}
