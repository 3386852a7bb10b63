import type { Instrument, WantedDimension } from '../moves/operation.ts'
import type { Box } from '../replay/form/dilate.ts'

/** `gone`: more is cut than the drawing allows. `left`: less, and what is left can be cut. `off`: neither, the form is another one. */
export type Verdict = 'holds' | 'gone' | 'left' | 'off'

type Outcome = { readonly verdict: Verdict; readonly by: number; readonly maybe: boolean }

/** A size on both forms against its limits; where the drawing gives none, against the aim by what the dials can do. */
export function verdictOf(
  dimension: WantedDimension,
  sizes: readonly [surely: number | null, possibly: number | null],
  mark: Box,
  angle: number,
): Outcome {
  const [low, high] = dimension.limits ?? around(dimension, mark, angle)
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
    GRAVITY[b.verdict] > GRAVITY[a.verdict] || (b.verdict === a.verdict && b.by > a.by) ? b : a,
  )
  return { ...worst, maybe: worst.verdict !== 'holds' && outs.some(({ verdict }) => verdict !== worst.verdict) }
}

const GRAVITY: Readonly<Record<Verdict, number>> = { holds: 0, left: 1, off: 2, gone: 3 }

/** Half a mark of each dial that takes part; a width has two walls. Degrees: a tenth. */
function around({ id, aim }: WantedDimension, { along, deep }: Box, angle: number): readonly [number, number] {
  const by =
    id === 'angle'
      ? 0.1
      : WIDE.has(id)
        ? 2 * along + (angle === 0 ? 0 : deep)
        : 2 * deep + (id === 'radius' || id === 'root' ? 2 * along : 0)
  return [aim - by, aim + by]
}
const WIDE: ReadonlySet<Instrument> = new Set<Instrument>(['width', 'near', 'far', 'center', 'legAlong'])

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
  legAlong: 'left',
  legDown: 'left',
}
