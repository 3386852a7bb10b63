import { describe, expect, it } from 'vitest'
import { drawnSheetFor } from '../../src/compile.ts'
import type { Form } from '../../src/moves/form.ts'
import { hidden } from '../../src/sheet/hidden.ts'
import type { SheetFeature } from '../../src/sheet/sheet.ts'
import { examplePlans } from '../print/examples.ts'

const plans = examplePlans().filter(([, plan]) => plan.features.some(({ status }) => status === 'planned'))
type Planned = Extract<SheetFeature, { status: 'planned' }>
const plannedOf = (features: readonly SheetFeature[]) =>
  features.filter((one): one is Planned => one.status === 'planned')

/** Depth at z, straight from the curves. */
const depthOf = (form: Form, z: number): number | null => {
  const piece = form.find(({ from, to }) => from <= z && z < to)
  if (piece === undefined) return null
  const { curve } = piece
  if (curve.kind === 'arc') return curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))
  return curve.d0 + ((curve.d1 - curve.d0) * (z - curve.z0)) / (curve.z1 - curve.z0)
}

describe('what pictures are drawn from', () => {
  it.each(plans)('is the part after each step that cuts, from before to finished: %s', (_, plan) => {
    const sheet = drawnSheetFor(plan)
    expect(sheet.drawing).toBe(plan.setup)
    for (const feature of plannedOf(sheet.features)) {
      const { before, finished, passes, region, wanted } = feature.drawing!
      expect(passes.length).toBeGreaterThan(0)
      expect(wanted.length).toBeGreaterThan(0)
      const zs = Array.from({ length: 40 }, (_, i) => region.from + ((i + 0.37) / 40) * (region.to - region.from))
      const [last] = passes.slice(-1)
      for (const z of zs) {
        // Every pass leaves the part as it was or deeper, and the last leaves it finished.
        const depths = [before, ...passes.map(({ form }) => form)].map((form) => depthOf(form, z)!)
        for (const [i, deep] of depths.slice(1).entries()) expect(deep).toBeGreaterThanOrEqual(depths[i]! - 1)
        expect(Math.abs(depthOf(last!.form, z)! - depthOf(finished, z)!)).toBeLessThanOrEqual(1000)
      }
      for (const { step } of passes) {
        const { feature: of, action } = sheet.steps.find(({ number }) => number === step)!
        expect(of).toBe(feature.index)
        expect(['feed-in', 'feed-across', 'zero', 'back-out', 'move-carriage']).toContain(action)
      }
    }
  })

  it('is not there where answers are left open', () => {
    const sheet = hidden(drawnSheetFor(plans[0]![1]), new Set(['mark']))
    expect(sheet.drawing).toBeUndefined()
    for (const feature of plannedOf(sheet.features)) expect(feature).not.toHaveProperty('drawing')
  })
})
