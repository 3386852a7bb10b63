import type { Degrees } from '../../units/dimension.ts'
import type { Length } from '../../units/length.ts'

export type VForm = { readonly width: Length; readonly depth: Length; readonly root: Length }

/**
 * W = root + 2·D·tan(angle/2): any two give the third, the width alone a sharp V. pm, half-angle in degrees. Plane
 * geometry.
 */
export function solveV(given: { halfAngle: Degrees; width?: Length; depth?: Length; root?: Length }): VForm {
  const t = Math.tan(given.halfAngle * (Math.PI / 180))
  const { width, depth, root } = given
  if (width !== undefined && depth !== undefined) return { width, depth, root: width - 2 * depth * t }
  if (width !== undefined) return { width, depth: (width - (root ?? 0)) / (2 * t), root: root ?? 0 }
  if (depth !== undefined) return { width: (root ?? 0) + 2 * depth * t, depth, root: root ?? 0 }
  throw new Error('a V needs its width or its depth')
}
