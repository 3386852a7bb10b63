import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Edge, Form } from '../moves/form.ts'
import type { FormFacts, GrindFacts } from '../moves/grinding.ts'
import type { StatedEdge } from '../moves/stated.ts'
import type { Length } from '../units/length.ts'
import type { FormToCut } from './grind/facts.ts'
import type { Stance } from './raked.ts'
import type { StandsIn } from './standing.ts'
import type { ToolBase } from './tool.ts'

/** All that the program has to know of one shape of tool. Lengths pm; what is left out, the shape has not. */
export type ToolShape<T extends ToolBase, S extends z.ZodMiniType> = {
  readonly schema: S
  /** Null where a size is missing; the reason has then been reported. */
  readonly read: (given: Given<AsRead<z.output<S>>>, base: Omit<ToolBase, 'reach'>) => T | null
  /** What a message calls such a tool, before the word "tool": "a square". */
  readonly called: string
  /** Its sizes as they are measured on the face. */
  readonly sizes: (tool: T) => Partial<EdgeSizes>
  /** The cutting edge as depth over the offset from the reference point, on a face without rake. */
  readonly edge: (tool: T) => Form
  /** The same on a face that slopes; null for an edge that is straight whatever the rake. */
  readonly raked: (tool: T, stance: Stance) => Form | null
  /** What the replay is told of the edge besides. */
  readonly known?: (tool: T) => Pick<Edge, 'angleWithin'>
  /** Radius that is ground on the face, where the edge is that radius. */
  readonly groundRadius?: (tool: T) => Length
  /** How deep the tip of a sloping face is when the form is finished; left out: as deep as the form. */
  readonly tipDeep?: (tool: T, form: StandsIn) => Length
  /** The sizes that an edge on a sloping face shows in the work otherwise than on the face. */
  readonly inWork?: (tool: T, form: StandsIn, stance: Stance) => Partial<Pick<EdgeSizes, 'angle' | 'radius'>>
  /** A leg that was ground to a length of its own along the face. */
  readonly leg?: (tool: T) => Length | null
  readonly grinding: ShapeGrinding<T>
}

type EdgeSizes = Pick<StatedEdge, 'width' | 'nose' | 'angle' | 'radius'>

/** The face that a form is cut with: its length from the tip to the surface, and the radius of the work at the tip. */
export type FaceOfForm = { readonly face: Length; readonly floor: Length }

/** How a shape is ground. */
export type ShapeGrinding<T> = {
  readonly sizes: (
    tool: T,
    form: FormToCut,
  ) => Partial<Pick<GrindFacts, 'width' | 'severalPlaces' | 'nose' | 'cornerRadius'>>
  /** What is ground on the face for the form, where that is another thing than a straight edge. */
  readonly onFace: (tool: T, form: FormToCut, face: FaceOfForm) => Partial<Pick<FormFacts, 'vee' | 'round' | 'corner'>>
  /** Width of the bit that the ground end takes, with its flanks as far back as they are ground. */
  readonly carried: (tool: T, form: FormFacts) => Length
  /** Radius that a gauge is held to; 0 where there is none. */
  readonly gauged: (tool: T, form: FormFacts) => Length
  /** Its sides go straight back, so that they must pass a step that stands close by. */
  readonly sidesPassSteps: boolean
}
