import { describe, expect, it } from 'vitest'
import type { Bench } from '../../src/features/draft.ts'
import type { ConcaveFeature, CornerFeature } from '../../src/features/feature.ts'
import { concaveSteps } from '../../src/features/radius/step-concave.ts'
import { cornerSteps, stepperOf } from '../../src/features/radius/step-corner.ts'
import { steppedResult } from '../../src/features/radius/stepped-notes.ts'
import type { StepCuts } from '../../src/moves/cuts.ts'
import type { Form, Piece } from '../../src/moves/form.ts'
import { arcPiece, linePiece } from '../../src/moves/pieces.ts'
import { cutInto } from '../../src/replay/form/insert.ts'
import { swept } from '../../src/replay/form/sweep.ts'
import { roundEdge } from '../../src/tools/round/edge.ts'
import { squareEdge } from '../../src/tools/square/edge.ts'
import type { Tool } from '../../src/tools/tool.ts'
import { INCH } from '../../src/units/length.ts'
import { told } from '../prose.ts'

const bench = { units: 'inch' } as Bench
const feature = { cutting: { cusp: null, leave: null, infeed: null } } as unknown as ConcaveFeature & CornerFeature

/** The form that the tool leaves when it stands at exact, unrounded places on the arc. */
const leftBy = (cuts: StepCuts, edge: Form, stock: Form, places: readonly number[]): Form => {
  const part: Piece[] = [...stock]
  for (const z of places) {
    const at = { z, d: cuts.depthAt(z) }
    cutInto(part, swept(edge, [[at, at]], 0))
  }
  return part
}

describe('the cusp of a concave radius with a smaller round tool', () => {
  const cases = [
    [0.25, 0.125, 0.1],
    [0.25, 0.2, 0.3],
    [0.5, 0.0625, 0.02],
    [0.125, 0.03125, 0.08],
  ] as const
  it.each(cases)('agrees with the replay, R %f, r %f, places %f rad apart', (R, r, delta) => {
    const [Rpm, rpm, width] = [R * INCH, r * INCH, 1.6 * R * INCH]
    const depth = Rpm - Math.sqrt(Rpm ** 2 - width ** 2 / 4)
    const cuts = concaveSteps(bench, feature, { R: Rpm, r: rpm, edge: 2 * rpm, width, depth })
    const angles = [-1.5, -0.5, 0.5, 1.5].map((n) => n * delta)
    const places = angles.map((angle) => (Rpm - rpm) * Math.sin(angle))
    const cut = leftBy(cuts, roundEdge(rpm, null), [linePiece(-INCH, 0, INCH, 0)], places)
    const inner = Rpm * Math.sin(delta)
    const found = steppedResult([arcPiece(-inner, inner, 0, depth - Rpm, Rpm, 1)], cut)
    const formula =
      Rpm - (Rpm - rpm) * Math.cos(delta / 2) - Math.sqrt(rpm ** 2 - (Rpm - rpm) ** 2 * Math.sin(delta / 2) ** 2)
    expect(found.left / formula).toBeGreaterThan(0.98)
    expect(found.left / formula).toBeLessThan(1.02)
    expect(cuts.outside(cuts.between(places[0]!, places[1]!)) / formula).toBeCloseTo(1, 6)
    expect(found.over).toBeLessThan(10)
    expect((Rpm * (Rpm - rpm) * delta ** 2) / (8 * rpm) / formula).toBeCloseTo(1, 2)
  })
})

describe('the cusp of a convex corner', () => {
  const around = (R: number, tool: Tool, phis: readonly number[]) => {
    const stepper = stepperOf(bench, tool as never)
    if (!('beyond' in stepper)) throw new Error(told(stepper.reason))
    const cuts = cornerSteps(bench, feature, R, stepper)
    const path = R + stepper.r
    // Places count from where the tool meets the face.
    const places = phis.map((phi) => path * (1 - Math.sin(phi)))
    const edge = tool.shape === 'round' ? roundEdge(tool.radius, null) : squareEdge(stepper.beyond, 0)
    const cut = leftBy(cuts, edge, [linePiece(stepper.beyond, 0, stepper.beyond + 2 * R, 0)], places)
    const [high, low] = [R - R * Math.sin(phis[0]!), R - R * Math.sin(phis.at(-1)!)]
    const wanted = arcPiece(stepper.beyond + low, stepper.beyond + high, stepper.beyond + R, R, R, -1)
    return { cuts, places, found: steppedResult([wanted], cut) }
  }
  it.each([
    [0.125, 0.125, 0.08],
    [0.25, 0.0625, 0.05],
    [0.1, 0.25, 0.2],
  ])('agrees with the replay for a round tool, R %f, r %f, %f rad apart', (R, r, delta) => {
    const [Rpm, rpm] = [R * INCH, r * INCH]
    const tool = { shape: 'round', radius: rpm, edgeWidth: null, name: 'small' } as Tool
    const { cuts, places, found } = around(Rpm, tool, [0.6, 0.6 + delta, 0.6 + 2 * delta])
    const formula =
      (Rpm + rpm) * Math.cos(delta / 2) - Math.sqrt(rpm ** 2 - (Rpm + rpm) ** 2 * Math.sin(delta / 2) ** 2) - Rpm
    expect(found.left / formula).toBeGreaterThan(0.98)
    expect(found.left / formula).toBeLessThan(1.02)
    expect(cuts.outside(cuts.between(places[1]!, places[0]!)) / formula).toBeCloseTo(1, 6)
    expect(found.over).toBeLessThan(10)
  })
  it('is that of a stair for a square tool, about half of R δ sin 2φ', () => {
    const R = 0.125 * INCH
    const [phi, delta] = [Math.PI / 4 - 0.02, 0.04]
    const tool = { shape: 'square', width: { aim: 0.1 * INCH }, cornerRadius: 0, name: 'neck' } as Tool
    const { cuts, places, found } = around(R, tool, [phi, phi + delta])
    const exact = cuts.outside(cuts.between(places[1]!, places[0]!))
    expect(found.left / exact).toBeGreaterThan(0.98)
    expect(found.left / exact).toBeLessThan(1.02)
    expect(exact / (0.5 * R * delta * Math.sin(2 * (phi + delta / 2)))).toBeCloseTo(1, 1)
    expect(found.over).toBeLessThan(10)
  })
})
