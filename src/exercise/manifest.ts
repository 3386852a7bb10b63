import type { Lathe } from '../lathe/lathe.ts'
import type { Operation, Setup } from '../moves/operation.ts'
import type { Plan } from '../plan/plan.ts'
import type { Units } from '../units/length.ts'
import type { Blank } from './blank.ts'

/**
 * A set as it was handed out, whole: what each learner got, what is right there, and all that a replay needs, so that a
 * later version grades it as this one would.
 */
export type Manifest = {
  readonly manifest: 1
  readonly title: string
  readonly teaches: string
  readonly learners: readonly Handed[]
}

export type Handed = {
  readonly sheet: string
  /** As on the answer form; a set of an earlier version has none. */
  readonly set?: string
  readonly learner: string | null
  /** The answer form, below the folder of the manifest. */
  readonly form: string
  readonly units: Units
  readonly values: Readonly<Record<string, string>>
  /** The whole job, with its lathe and its tools. */
  readonly job: string
  readonly blanks: readonly Blank[]
  /** What a replay needs. */
  readonly shop: Shop
}

export type Shop = { readonly lathe: Lathe; readonly setup: Setup; readonly operations: readonly (Operation | null)[] }

/** Null for a feature that cannot be cut. */
export const shopOf = ({ lathe, setup, features }: Plan): Shop => ({
  lathe,
  setup,
  operations: features.map((feature) => (feature.status === 'planned' ? feature.operation : null)),
})

/** The manifest as a file; `learners`: each as JSON already. A line a learner. */
export const manifestText = (title: string, teaches: string, learners: readonly string[]): string => {
  const head = JSON.stringify({ manifest: 1, title, teaches } satisfies Omit<Manifest, 'learners'>)
  return `${head.slice(0, -1)},"learners":[\n${learners.join(',\n')}\n]}\n`
}
