import type { Cause } from './cause.ts'
import { correctionDoubled } from './correction-doubled.ts'
import { correctionSubtracted } from './correction-subtracted.ts'
import { depthAsDiameter } from './depth-as-diameter.ts'
import { diameterAsDepth } from './diameter-as-depth.ts'
import { inchForMm } from './inch-for-mm.ts'
import { includedForHalf } from './included-for-half.ts'
import { lostMotionForgotten } from './lost-motion-forgotten.ts'
import { nextNumeral } from './next-numeral.ts'
import { nextSpeed } from './next-speed.ts'
import { oneTurn } from './one-turn.ts'
import { radiusForDiameter } from './radius-for-diameter.ts'
import { roughCarriedOn } from './rough-carried-on.ts'
import { roundedEarly } from './rounded-early.ts'
import { toolWidthForgotten } from './tool-width-forgotten.ts'
import { undersizeAdded } from './undersize-added.ts'
import { undersizeForgotten } from './undersize-forgotten.ts'
import { wrongCorner } from './wrong-corner.ts'
import { wrongDirection } from './wrong-direction.ts'

/** Every cause that is looked for, in the order in which they are named. */
export const CAUSES: readonly Cause[] = [
  depthAsDiameter,
  diameterAsDepth,
  radiusForDiameter,
  roughCarriedOn,
  undersizeForgotten,
  undersizeAdded,
  toolWidthForgotten,
  wrongCorner,
  includedForHalf,
  correctionSubtracted,
  correctionDoubled,
  inchForMm,
  lostMotionForgotten,
  oneTurn,
  nextNumeral,
  nextSpeed,
  wrongDirection,
  roundedEarly,
]
