import { describe, expect, it } from 'vitest'
import { findMaterial, materialNames } from '../../src/handbook/materials.ts'

describe('the cutting-speed table', () => {
  it.each([
    ['Mild Steel', 'mild steel'],
    ['mild-steel', 'mild steel'],
    ['low carbon steel', 'mild steel'],
    ['ALUMINIUM', 'aluminum'],
    ['aluminium alloy', 'aluminum'],
    ['Grey cast iron', 'cast iron'],
    ['cast iron, hard', 'hard cast iron'],
    ['12l14', 'free-machining steel'],
    ['free machining steel', 'free-machining steel'],
    ['  brass ', 'brass'],
  ])('finds %s as %s', (asked, found) => {
    expect(findMaterial(asked)?.name).toBe(found)
  })

  it.each(['', 'steel-ish', 'wood', 'mildsteel', '__proto__'])('does not find "%s"', (asked) => {
    expect(findMaterial(asked)).toBeUndefined()
  })

  it('finds every row by its own name and by each alias, so no name stands twice', () => {
    for (const name of materialNames()) {
      const row = findMaterial(name)!
      expect(row.name).toBe(name)
      for (const alias of row.aliases) expect(findMaterial(alias)?.name, alias).toBe(name)
    }
  })

  it('has a source and a sound speed in every row', () => {
    for (const name of materialNames()) {
      const row = findMaterial(name)!
      expect(row.source.length).toBeGreaterThan(10)
      expect(['A', 'B']).toContain(row.grade)
      expect(row.hssMPerMin).toBeLessThanOrEqual(row.hssFtPerMin * 0.3048)
      expect(row.hssMPerMin).toBeGreaterThan(row.hssFtPerMin * 0.3048 - 1)
      expect(row.carbideFactor).toBe(2)
    }
  })
})
