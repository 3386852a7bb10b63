import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { AngleDimension, Degrees, Dimension } from '../units/dimension.ts'
import type { Length, Units } from '../units/length.ts'

/** A job as read, every length in pm, every default that belongs to the file filled in. Geometry and shop rules come later. */
export type Job = {
  readonly title: string
  readonly drawingNumber: string | null
  readonly units: Units
  readonly work: 'one-off' | 'repeat'
  readonly part: Part
  readonly lathe: Lathe
  readonly tools: Readonly<Record<string, Tool>>
  readonly features: readonly Feature[]
  readonly origin: Origin
}

export type Part = {
  readonly material: Material
  readonly held: 'chuck' | 'collet' | 'between centers' | 'chuck and center'
  /** Out of the chuck, pm; the part's whole length where not given. */
  readonly overhang: Length
  readonly overhangGiven: boolean
  /** From the free end toward the headstock. */
  readonly steps: readonly Step[]
  readonly origin: Origin
}

/** `diameter` as drawn, `measured` as measured (the same where not given). Length along the work. */
export type Step = {
  readonly name: string
  readonly diameter: Dimension
  readonly measured: Length
  readonly measuredGiven: boolean
  readonly length: Length
  readonly origin: Origin
}

/** Cutting speed in ft/min when the job is in inches, m/min when in mm; `source` is the table's name or "given in the job". */
export type Material = { readonly name: string; readonly cuttingSpeed: number; readonly speedUnits: 'ft/min' | 'm/min'; readonly source: string }

type ToolBase = {
  readonly name: string
  readonly reach: Length
  readonly blank: Length | null
  /** From the blank's tailstock-side face to the reference-side end of the edge; null = edge in the middle of the blank. */
  readonly edgeOffset: Length | null
  readonly bit: 'hss' | 'carbide'
  readonly holderAngle: Degrees
  /** Degrees in use = ground + holder's tilt. */
  readonly rakeInUse: Degrees
  /** false for a tool that is still to be ground. */
  readonly measured: boolean
  readonly origin: Origin
}
export type SquareTool = ToolBase & { readonly shape: 'square'; readonly width: Dimension; readonly cornerRadius: Length }
export type VeeTool = ToolBase & { readonly shape: 'vee'; readonly angle: Degrees; readonly nose: Length }
export type RoundTool = ToolBase & { readonly shape: 'round'; readonly radius: Length; readonly edgeWidth: Length | null }
export type CornerTool = ToolBase & { readonly shape: 'corner'; readonly radius: Length }
export type Tool = SquareTool | VeeTool | RoundTool | CornerTool

/** The `cutting:` keys, the feature's own over the job's; null = not given. Lengths are slide travel in pm. */
export type Cutting = {
  readonly leave: Length | null
  readonly leaveSides: Length | null
  readonly infeed: Length | null
  readonly clear: Length | null
  readonly overlap: Length | null
  readonly speedFactor: number | null
  readonly cusp: Length | null
  readonly sideFeed: 'compound' | 'carriage'
  readonly compoundAngle: Degrees | null
  readonly order: number | null
}

/** Where a feature stands: from the free end or the tailstock-side end of a step (`from`), to its near edge, far edge or center. */
export type Place = { readonly by: 'near' | 'far' | 'center'; readonly distance: Dimension; readonly from: string }

type FeatureBase = {
  readonly index: number
  readonly name: string
  readonly why: string | null
  /** Name of a tool in the toolbox; null = plan with the tool to grind. */
  readonly tool: string | null
  readonly cutting: Cutting
  readonly origin: Origin
}
export type GrooveFeature = FeatureBase & {
  readonly kind: 'groove'; readonly place: Place; readonly width: Dimension
  /** Exactly one of the two is given. */
  readonly depth: Dimension | null; readonly bottomDiameter: Dimension | null
  readonly cornerRadiusMax: Length | null
}
export type ConcaveFeature = FeatureBase & {
  readonly kind: 'radius'; readonly shape: 'concave'; readonly place: Place; readonly radius: Dimension
  /** At least one of the two is given. */
  readonly width: Dimension | null; readonly depth: Dimension | null
}
export type CornerFeature = FeatureBase & {
  readonly kind: 'radius'; readonly shape: 'corner'
  /** "end" or the name of a step: its tailstock-side corner. */
  readonly cornerOf: string; readonly radius: Dimension
}
export type VGrooveFeature = FeatureBase & {
  readonly kind: 'v-groove'; readonly place: Place; readonly angle: AngleDimension
  readonly width: Dimension | null
  /** Diameter at which `width` is given; null = at the nominal surface. */
  readonly widthAt: Length | null
  readonly depth: Dimension | null; readonly bottomDiameter: Dimension | null; readonly root: Dimension | null
}
export type Feature = GrooveFeature | ConcaveFeature | CornerFeature | VGrooveFeature
