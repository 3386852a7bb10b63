import { type Compiled, compile } from '../../src/compile.ts'
import type { FeaturePlan } from '../../src/plan/plan.ts'

export type Planned = Extract<FeaturePlan, { status: 'planned' }>
export type Given = {
  units?: 'inch' | 'mm'
  part?: string
  cross?: string
  compound?: string
  tool: string
  feature: string
}

const DEFAULTS = {
  inch: {
    part: '{ material: mild steel, held: chuck, overhang: 4, diameter: 1.5, length: 6 }',
    cross: '{ graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }',
    compound: '{ graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }',
  },
  mm: {
    part: '{ material: mild steel, held: chuck, overhang: 100, diameter: 40, length: 150 }',
    cross: '{ graduation: 0.02, per-turn: 2, reads: depth, backlash: 0.2 }',
    compound: '{ graduation: 0.02, per-turn: 2, backlash: 0.15, travel: 60 }',
  },
}

/** One job with one tool and one feature, as a person would write it. */
const jobText = ({ units = 'inch', tool, feature, ...given }: Given): string => {
  const { part, cross, compound } = { ...DEFAULTS[units], ...given }
  return `title: Rope roller of the cider press
units: ${units}
part: ${part}
lathe:
  name: Bench lathe
  units: ${units}
  cross-feed: ${cross}
  compound: ${compound}
  spindle-speeds: [60, 95, 150, 240]
tools:
  small: ${tool}
features:
  - { kind: radius, name: Stepped form, tool: small, ${feature} }
`
}

export const compiled = (given: Given): Compiled => {
  const bytes = new TextEncoder().encode(jobText(given))
  const done = compile('job.yaml', () => ({ ok: true, file: 'job.yaml', bytes }))
  if (done.plan === null) throw new Error(JSON.stringify(done.diagnostics, null, 1))
  return done
}

export const planOf = (given: Given): FeaturePlan => compiled(given).plan!.features[0]!

export const planned = (given: Given): Planned => {
  const feature = planOf(given)
  if (feature.status !== 'planned') throw new Error(`${feature.code}: ${feature.reason}`)
  return feature
}
