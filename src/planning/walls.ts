import { stepTravel } from '../dials/travel.ts'
import type { Draft } from '../features/draft.ts'
import type { Cutting } from '../features/feature.ts'
import { leftFor, peckFor } from '../features/shop.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Edge } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import { depthAt } from '../replay/form/curve.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'

/** Three tool widths are several, and limits of .008 in or .2 mm are close: the default that the key `walls` states. */
const SEVERAL = 3
const CLOSE: Readonly<Record<Units, Length>> = { inch: (8 * INCH) / 1000, mm: MM / 5 }

/**
 * Whether each wall is to have a plunge of its own: as the job says, or by the stated default. It is worked out from the job, the drawing and the edge,
 * never from the cuts that were drafted, so that the replay refuses cuts that forgot a wall.
 */
export const wallsAsked = (
  units: Units,
  lathe: Lathe,
  { feature, cuts, wanted, surface }: Draft,
  edge: Edge,
  { angle, sideFeed }: { readonly angle: number; readonly sideFeed: Cutting['sideFeed'] },
): Pick<Operation, 'walls'> => {
  if (!('walls' in feature) || cuts.style !== 'plunge' || sideFeed === 'lines') return {}
  const tool = edge.pieces.at(-1)!.to - edge.pieces[0]!.from
  const width = wanted.at(-1)!.to - wanted[0]!.from
  const { limits } = feature.width
  const close = limits !== null && limits[1] - limits[0] < CLOSE[units]
  const asked = feature.walls ?? (close || width >= SEVERAL * tool ? 'plunged' : 'swept')
  if (asked === 'swept') return {}
  // Roughing goes before it, and leaves a floor that one bite takes.
  const depth = surface / 2 + Math.max(...wanted.map(({ curve, from, to }) => depthAt(curve, (from + to) / 2)))
  const leave = leftFor(units, feature.cutting, depth)
  if (leave <= 0 || leave > Math.min(depth / 2, peckFor(feature.cutting.peck, tool, depth) ?? depth)) return {}
  // Only a groove two marks wider than its tool has room for a plunge at each wall with something left on the other.
  const byCarriage = sideFeed === 'carriage' && lathe.carriage !== null
  const along = byCarriage ? 1 : Math.cos((angle * Math.PI) / 180)
  const mark = stepTravel(byCarriage ? lathe.carriage! : lathe.compound.scale) * along
  return width - tool >= 2 * mark ? { walls: 'plunged' } : {}
}
