import type * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Edge, Form } from '../moves/form.ts'
import type { FormFacts, GrindFacts } from '../moves/grinding.ts'
import type { StatedEdge } from '../moves/stated.ts'
import type { Length } from '../units/length.ts'
import type { FormToCut } from './grind/facts.ts'
import type { Stance } from './raked.ts'
import type { EdgeForm } from './standing.ts'
import type { ToolBase } from './tool.ts'

/** All that the program needs to know about one shape of tool. Lengths pm; what the shape does not have is left out. */
export type ToolShape<T extends ToolBase, S extends z.ZodMiniType> = {
  readonly schema: S
  /** Null if a size is missing; the reason has then been reported. */
  readonly read: (given: Given<AsRead<z.output<S>>>, base: Omit<ToolBase, 'reach'>) => T | null
  /** What messages call such a tool, before the word "tool": "a square". */
  readonly called: string
  /** Its sizes as they are measured on the face. */
  readonly sizes: (tool: T) => Partial<EdgeSizes>
  /** The cutting edge as depth over the offset from the reference point, on a face without rake. */
  readonly edge: (tool: T) => Form
  /** The same on a face that slopes; null for an edge that is straight whatever the rake. */
  readonly raked: (tool: T, stance: Stance) => Form | null
  /** What else the replay is given about the edge. */
  readonly known?: (tool: T) => Pick<Edge, 'angleWithin'>
  /** Radius that is ground on the face, if the edge is that radius. */
  readonly groundRadius?: (tool: T) => Length
  /** Depth of the tip of a sloping face when the form is finished; left out: as deep as the form. */
  readonly tipDeep?: (tool: T, form: EdgeForm) => Length
  /** The sizes of an edge on a sloping face that differ in the work from those on the face. */
  readonly inWork?: (tool: T, form: EdgeForm, stance: Stance) => Partial<Pick<EdgeSizes, 'angle' | 'radius'>>
  /** A leg that was ground to its own length along the face. */
  readonly leg?: (tool: T) => Length | null
  readonly grinding: ShapeGrinding<T>
}

type EdgeSizes = Pick<StatedEdge, 'width' | 'nose' | 'angle' | 'radius'>

/** The face that a form is cut with: its length from the tip to the surface, and the radius of the work at the tip. */
type FaceOfForm = { readonly face: Length; readonly floor: Length }

/** How a shape is ground. */
export type ShapeGrinding<T> = {
  readonly sizes: (
    tool: T,
    form: FormToCut,
  ) => Partial<Pick<GrindFacts, 'width' | 'severalPlaces' | 'nose' | 'cornerRadius'>>
  /** What is ground on the face for the form, if it is something else than a straight edge. */
  readonly onFace: (tool: T, form: FormToCut, face: FaceOfForm) => Partial<Pick<FormFacts, 'vee' | 'round' | 'corner'>>
  /** Width of the bit that the ground end needs, with its flanks as far back as they are ground. */
  readonly carried: (tool: T, form: FormFacts) => Length
  /** Radius that is compared with a gauge; 0 if there is none. */
  readonly gauged: (tool: T, form: FormFacts) => Length
  /** Its sides go straight back, so that they must pass a nearby step. */
  readonly sidesPassSteps: boolean
}
