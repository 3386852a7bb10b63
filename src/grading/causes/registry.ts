import type { Cause } from './cause.ts'
import { depthAsDiameter } from './depth-as-diameter.ts'
import { diameterAsDepth } from './diameter-as-depth.ts'
import { nextNumeral } from './next-numeral.ts'
import { oneTurn } from './one-turn.ts'
import { toolWidthForgotten } from './tool-width-forgotten.ts'
import { undersizeAdded } from './undersize-added.ts'
import { undersizeForgotten } from './undersize-forgotten.ts'

/** Every cause that is looked for, in the order in which they are named. */
export const CAUSES: readonly Cause[] = [
  depthAsDiameter,
  diameterAsDepth,
  undersizeForgotten,
  undersizeAdded,
  toolWidthForgotten,
  oneTurn,
  nextNumeral,
]
