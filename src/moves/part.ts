import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Dimension } from '../units/dimension.ts'
import type { Length } from '../units/length.ts'

export type Part = {
  readonly material: Material
  readonly held: 'chuck' | 'collet' | 'between centers' | 'chuck and center' | 'mandrel'
  /** Length out of the chuck, pm; the part's whole length if neither it nor the grip is given. */
  readonly overhang: Length
  readonly overhangGiven: boolean
  /** Between centers: length of the headstock end that the dog takes, pm; null if not given, and in a chuck. */
  readonly dog: Length | null
  /** From the free end toward the headstock. */
  readonly steps: readonly Step[]
  readonly origin: Origin
}

/** `diameter` as drawn, `measured` as measured (the same if not given). Length along the work. */
export type Step = {
  readonly name: string
  readonly diameter: Dimension
  readonly measured: Length
  readonly measuredGiven: boolean
  readonly length: Length
  readonly origin: Origin
}

/**
 * Cutting speed in ft/min when the job is in inches, m/min when in mm; `source` is the table's name or "given in the
 * job".
 */
export type Material = {
  readonly name: string
  readonly cuttingSpeed: number
  readonly speedUnits: 'ft/min' | 'm/min'
  readonly source: string
}
