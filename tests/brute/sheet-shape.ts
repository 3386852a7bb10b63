// What the brute-force replay reads of a sheet, written down from the documented sheet format alone.

type Size = { planned: number; low?: number; high?: number; limits?: [number, number] | null; verdict?: string }

export type Dial = {
  units: 'inch' | 'mm'
  graduation: number
  perTurn: number | null
  reads?: 'depth' | 'diameter'
  backlash: number
  readTo: number
  readout: boolean
  travel?: number | null
  /** How far an indicator follows. */
  range?: number
}

export type Edge = {
  shape: 'square' | 'vee' | 'round' | 'corner'
  width: number | null
  nose: number | null
  angle: number | null
  radius: number | null
  reach: number | null
  rakeInUse?: number
  /** Only where the face slopes and that makes a difference: as gauged on the face, and the work's radius at its tip. */
  face?: { angle: number | null; radius: number | null; leg?: number; floor: number }
}

export type EdgePoint =
  | 'tailstock-corner'
  | 'headstock-corner'
  | 'nose-tailstock-corner'
  | 'nose-headstock-corner'
  | 'tip'

/** What the hand brings to what along the work; places are from the free end. */
export type Placing = {
  point: EdgePoint
  against: { line: number } | { between: [number, number] } | { face: number } | { beside: number; gap: number }
}

/** What the cross-feed is touched off on, and where, if that is another place than the one aligned to. */
type TouchedOff = {
  diameter: number
  at: { point: EdgePoint; against: { past: number; by: number } | { over: [number, number] } } | null
}

export type SheetFeature = {
  name: string
  kind: string
  status: 'planned' | 'refused'
  edge?: Edge | null
  compoundAngle?: number
  surface?: number
  /** Told by the sheet, and only compared: the zeros that are replayed from are worked out in set-up.ts. */
  zero?: { fromEnd: number; diameter: number } | null
  placing?: Placing
  touch?: TouchedOff
  lines?: number[]
  /** Never on a sheet: by how much a touch is off on purpose, deeper. */
  off?: number
  finished?: Record<string, Size | undefined>
  notes?: string[]
  inspection?: { id: string; using: string }[]
  refusal?: { code?: string; reason?: string; remedy?: string } | null
}

export type Finish = { step: number; reading: number; turns: number | null; mark: number | null }

/** What to finish at, by what is measured at a stop. */
export type Table<Promise> = {
  measure: 'bottomDiameter' | 'outsideLessBottom' | 'width'
  expected: number
  rows: (Promise & { measured: number; finishes: Finish[]; within: boolean | null })[]
}

export type MetalLeft = {
  again: [number, number]
  sizes: {
    measure: 'bottomDiameter' | 'outsideLessBottom' | 'width'
    when: 'under' | 'over'
    limit: number
    pastSaving: number | null
    steps: number[]
    reading: number
    perReading: number
  }[]
}

export type SheetStep = {
  readonly purpose?: string
  number: number
  feature: number
  action: string
  slide?: 'cross-feed' | 'compound' | 'carriage' | null
  reading?: number | null
  turns?: number | null
  mark?: number | null
  /** How far a take-up turns, on the dial of its slide. */
  atLeast?: number
  /** Where the tool's reference point is brought by eye, in place of a reading. */
  placeFromEnd?: number
  corrections?: Table<{ bottomDiameter: number }>
  widthCorrections?: Table<{ width: number }>
  metalLeft?: MetalLeft | null
  say?: string
}

export type PartStep = {
  name: string | null
  diameter: number
  measured?: number | null
  measuredDiameter?: number | null
  from: number
  to: number
}

export type Sheet = {
  format: string
  units: 'inch' | 'mm'
  lathe: { crossFeed: Dial; compound: Dial; carriage: Dial | null }
  part: { held: string; overhang: number; steps: PartStep[] }
  features: SheetFeature[]
  steps: SheetStep[]
}

/** The diameter at which the width of a feature is given, where that is not its surface: told among what is to be measured. */
export function widthAt(feature: SheetFeature): number | null {
  const using = feature.inspection?.find(({ id }) => id === 'width')?.using ?? ''
  const found = /at the diameter of ([\d.]+)/.exec(using)
  return found === null ? null : Number(found[1])
}
