import type { Errors } from '../brute/budget.ts'
import type { Trait } from './traits.ts'

/** What the drawing of a random job asks for, kept beside its text: absolute places, middle sizes, job units. */
export type Drawn = DrawnGroove | DrawnConcave | DrawnCorner | DrawnVee

type Common = {
  name: string
  nominal: number
  measured: number
  cusp: number | null
  side: 'compound' | 'carriage'
  traits?: readonly Trait[]
}

export type DrawnGroove = Common & {
  kind: 'groove'
  near: number
  width: number
  widest: number
  depth: number
  /** The fillets as drawn; null = the drawing says nothing of them. */
  corner: { aim: number; low: number } | null
}
/** A tool whose own radius lies between the limits leaves that: `chord` is the width that is held then, or null where the depth is. */
export type DrawnConcave = Common & {
  kind: 'concave'
  center: number
  radius: number
  depth: number
  low: number
  high: number
  chord: number | null
}
type DrawnCorner = Common & { kind: 'corner'; start: number; radius: number }
/** `within`: by how many degrees the included angle may be off; a tool inside that leaves its own angle. */
export type DrawnVee = Common & {
  within?: number
  /** Width and root are given: then the depth is what the angle makes of it. */
  byRoot?: boolean
  kind: 'vee'
  near: number
  slope: number
  width: number
  depth: number
  root: number
  holds: 'width' | 'depth' | 'both'
}

/** `text` has everything inline; `files` hold the same job as it is read, its lathe and its tools in files of their own now and then. */
export type RandomJob = {
  text: string
  units: 'inch' | 'mm'
  features: Drawn[]
  traits: readonly Trait[]
  errors: Errors
  files: Readonly<Record<string, string>>
}
