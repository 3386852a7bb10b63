/** What the drawing of a random job asks for, kept beside its text: absolute places, middle sizes, job units. */
export type Drawn = DrawnGroove | DrawnConcave | DrawnCorner | DrawnVee

type Common = { name: string; nominal: number; measured: number; cusp: number | null; side: 'compound' | 'carriage' }

export type DrawnGroove = Common & {
  kind: 'groove'
  near: number
  width: number
  widest: number
  depth: number
  /** The fillets as drawn; null = the drawing says nothing of them. */
  corner: { aim: number; low: number } | null
}
export type DrawnConcave = Common & { kind: 'concave'; center: number; radius: number; depth: number }
export type DrawnCorner = Common & { kind: 'corner'; start: number; radius: number }
export type DrawnVee = Common & {
  kind: 'vee'
  near: number
  slope: number
  width: number
  depth: number
  root: number
  holds: 'width' | 'depth' | 'both'
}

export type RandomJob = { text: string; units: 'inch' | 'mm'; features: Drawn[] }
