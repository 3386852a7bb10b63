// What the brute-force replay reads of a sheet, written down from the documented sheet format alone.

export type Size = { planned: number; low?: number; high?: number; limits?: [number, number] | null; verdict?: string }

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

export type SheetFeature = {
  name: string
  kind: string
  status: 'planned' | 'refused'
  edge?: Edge | null
  compoundAngle?: number
  surface?: number
  zero?: { fromEnd: number; diameter: number } | null
  finished?: Record<string, Size | undefined>
  notes?: string[]
  refusal?: { code?: string; reason?: string; remedy?: string } | null
}

export type SheetStep = {
  number: number
  feature: number
  action: string
  slide?: 'cross-feed' | 'compound' | 'carriage' | null
  reading?: number | null
  turns?: number | null
  mark?: number | null
  /** Where the tool's reference point is brought by eye, in place of a reading. */
  placeFromEnd?: number
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
