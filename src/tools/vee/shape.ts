import { faceLength } from '../grind/form.ts'
import type { ToolShape } from '../shape.ts'
import { rakedVee, veeEdge } from './edge.ts'
import { veeGrinding } from './grinding.ts'
import { readVee, veeToolSchema } from './schema.ts'
import { veeInWork } from './standing.ts'
import type { VeeTool } from './tool.ts'

export const vee: ToolShape<VeeTool, typeof veeToolSchema> = {
  schema: veeToolSchema,
  read: readVee,
  called: 'a V (vee)',
  sizes: ({ nose, angle }) => ({ nose, angle }),
  edge: ({ nose, angle, reach }) => veeEdge(nose, angle, reach),
  // Reach is measured in depth, the same as without rake: the face goes back a little further.
  raked: ({ nose, angle, reach }, stance) =>
    rakedVee(nose, angle / 2, faceLength(reach, stance.floor, stance.rake), stance),
  known: ({ angleWithin }) => ({ angleWithin }),
  inWork: ({ angle }, { depth }, stance) => ({ angle: toSeconds(veeInWork(angle, depth, stance)) }),
  grinding: veeGrinding,
}

/** Finer than any protractor shows. */
const toSeconds = (angle: number): number => Math.round(angle * 3600) / 3600
