import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'

const job = (near: string, held: string) => `title: Press beam pin
units: inch
part: { material: mild steel, held: ${held}, overhang: 4, diameter: 1.250, length: 5 }
lathe:
  name: Bench
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
tools:
  neck: { shape: square, width: 0.150, reach: 0.400, blank: 3/8 }
features:
  - { kind: groove, near: ${near}, width: 0.210, depth: 0.060, tool: neck }
`
const statusOf = (text: string) => {
  const [feature] = compile('-', () => ({ ok: true, file: '-', bytes: text })).plan!.features
  return feature!.status === 'refused' ? feature!.code : feature!.status
}

describe('a tool beside the tailstock center', () => {
  it('is refused where it would stand in the center', () => {
    expect(statusOf(job('0.020', 'chuck and center'))).toBe('near-center')
  })
  it('is planned further along, and at the same place without a center', () => {
    expect(statusOf(job('0.500', 'chuck and center'))).toBe('planned')
    expect(statusOf(job('0.020', 'chuck'))).toBe('planned')
  })
})
