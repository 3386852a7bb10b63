import type { Curve } from '../moves/form.ts'
import type { Length } from '../units/length.ts'

export const onCurve = (curve: Curve, z: Length): Length => {
  if (curve.kind === 'arc') return curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))
  return curve.z1 === curve.z0
    ? Math.max(curve.d0, curve.d1)
    : curve.d0 + ((curve.d1 - curve.d0) * (z - curve.z0)) / (curve.z1 - curve.z0)
}
