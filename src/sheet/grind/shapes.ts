import type { Shape } from '../../moves/shapes.ts'
import { corner } from './corner.ts'
import { round } from './round.ts'
import type { ShapeWords } from './shape-words.ts'
import { square } from './square.ts'
import { vee } from './vee.ts'

/** The words for each shape of tool, in the order in which they are listed. */
export const SHAPE_WORDS: Readonly<Record<Shape, ShapeWords>> = { square, vee, round, corner }
