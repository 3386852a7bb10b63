import { describe, expect, it } from 'vitest'
import { layersOf } from '../../src/sequence/pecks.ts'

describe('the layers of a slot that is widened on the way', () => {
  it('each begin where the one above ends, however many readings that has', () => {
    expect(layersOf([10, 20, 30, 40], 0, 20)).toEqual([
      [10, 20],
      [30, 40],
    ])
    expect(layersOf([10, 20, 30, 40, 50, 60], 0, 30)).toEqual([
      [10, 20, 30],
      [40, 50, 60],
    ])
  })

  it('begin at the surface', () => {
    expect(layersOf([10, 20], 5, 10)).toEqual([[10], [20]])
    expect(layersOf([10, 20], 0, 20)).toEqual([[10, 20]])
  })

  it('hold one reading each where that alone is deeper than a layer', () => {
    expect(layersOf([30, 60], 0, 20)).toEqual([[30], [60]])
  })

  it('are one without a limit', () => {
    expect(layersOf([10, 90], 0, null)).toEqual([[10, 90]])
  })
})
