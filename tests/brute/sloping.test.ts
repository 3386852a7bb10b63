import { describe, expect, it } from 'vitest'
import { program } from '../cases/program.ts'
import { bruteForce } from './brute-force.ts'
import { edgeCurve } from './edges.ts'
import type { Edge, Sheet } from './sheet-shape.ts'

const none = { width: null, nose: null, angle: null, radius: null, reach: 0.3 }

describe('an edge on a sloping face', () => {
  it('stands as its face does where the work is as large as a wall', () => {
    const rake = 30
    const cosine = Math.cos((rake * Math.PI) / 180)
    const vee: Edge = {
      ...none,
      shape: 'vee',
      nose: 0.05,
      rakeInUse: rake,
      face: { angle: 90, radius: null, floor: 1e6 },
    }
    expect(edgeCurve(vee).depth(-0.1)).toBeCloseTo(-0.1 * cosine, 6)
    expect(edgeCurve(vee).depth(0.15)).toBeCloseTo(-0.1 * cosine, 6)
    expect(edgeCurve(vee).depth(0.02)).toBeCloseTo(0, 12)
    const round: Edge = { ...none, shape: 'round', rakeInUse: rake, face: { angle: null, radius: 0.1, floor: 1e6 } }
    expect(edgeCurve(round).depth(0.08)).toBeCloseTo(-0.04 * cosine, 6)
  })

  it('stands where a right triangle puts it: rake 90° would climb the plumb line', () => {
    const vee: Edge = { ...none, shape: 'vee', nose: 0, rakeInUse: 90, face: { angle: 90, radius: null, floor: 3 } }
    expect(edgeCurve(vee).depth(4)).toBeCloseTo(-2, 9)
  })
})

describe('the example in a tilted holder', () => {
  const sheetOf = async (): Promise<Sheet> =>
    JSON.parse((await program('sheet', 'examples/jobs/21-tilted-holder.yaml', '--format', 'json')).stdout)

  it('is proved from the face as it was gauged', async () => {
    const sheet = await sheetOf()
    expect(sheet.features.map(({ edge }) => edge!.face !== undefined)).toEqual([true, true, false])
    const { problems, features } = bruteForce(sheet)
    expect(problems).toEqual([])
    for (const [i, id] of [
      [0, 'width'],
      [1, 'width'],
      [0, 'depth'],
      [1, 'depth'],
    ] as const)
      expect(Math.abs(features[i]!.runs[0]![id] - sheet.features[i]!.finished![id]!.planned)).toBeLessThan(0.0012)
  })

  it('would come out narrower if the face were level', async () => {
    const sheet = await sheetOf()
    const before = bruteForce(sheet).features[0]!.runs[0]!.width
    sheet.features[0]!.edge!.rakeInUse = 0
    expect(before - bruteForce(sheet).features[0]!.runs[0]!.width).toBeGreaterThan(0.003)
  })
})
