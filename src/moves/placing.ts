import type { Length } from '../units/length.ts'

/**
 * A point of the edge that the machinist can see or feel. The corners are the ends of the whole ground edge, its sides;
 * those of the nose are the ends of the stretch on which it is deepest, and the tip is the middle of that stretch.
 */
export type EdgePoint =
  | 'tailstock-corner'
  | 'headstock-corner'
  | 'nose-tailstock-corner'
  | 'nose-headstock-corner'
  | 'tip'

/**
 * What a point is brought to along the work, pm from the free end. A tool that is brought beside a face is `gap` short
 * of it: this sets no zero, the tool is only near.
 */
type Against =
  | { readonly line: Length }
  | { readonly between: readonly [Length, Length] }
  | { readonly face: Length }
  | { readonly beside: Length; readonly gap: Length }

/** How the machinist brings the tool to its place along the work. */
export type Placing = { readonly point: EdgePoint; readonly against: Against }

/**
 * Where the tool touches, if that is another place than the placing: a point `past` a face so that only that much of
 * the edge is over the work, or anywhere over a stretch of the surface. pm from the free end.
 */
export type TouchPlace = {
  readonly point: EdgePoint
  readonly against: { readonly past: Length; readonly by: Length } | { readonly over: readonly [Length, Length] }
}

/** What the edge is fed in to touch: metal of this diameter (pm), at the placing or at a place of its own. */
export type Touch = { readonly diameter: Length; readonly at: TouchPlace | null }

/** True if the place along the work is found by a scribed line; otherwise it is found by touching a face. */
export const isOnLine = ({ against }: Placing): boolean => 'line' in against || 'between' in against
