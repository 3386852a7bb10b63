import type { Origin } from '../diagnostics/diagnostic.ts'
import type { Feature } from '../features/feature.ts'
import type { Lathe } from '../lathe/lathe.ts'
import type { Decision } from '../moves/inspection.ts'
import type { Part } from '../moves/part.ts'
import type { Tool } from '../tools/tool.ts'
import type { Units } from '../units/length.ts'
import type { JobWarning } from './checks/warnings.ts'

export type { Feature } from '../features/feature.ts'

/** A job as read, every length in pm, every default of the file filled in. Geometry and shop rules come later. */
export type Job = {
  readonly title: string
  readonly drawingNumber: string | null
  readonly units: Units
  readonly work: 'one-off' | 'repeat'
  readonly decision: Decision
  readonly part: Part
  readonly lathe: Lathe
  readonly tools: Readonly<Record<string, Tool>>
  readonly features: readonly Feature[]
  /** What is probably a typing mistake, though it can be cut as written. */
  readonly doubts: readonly JobWarning[]
  readonly origin: Origin
}
