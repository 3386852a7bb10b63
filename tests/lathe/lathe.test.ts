import { describe, expect, it } from 'vitest'
import { readable } from '../../src/lathe/lathe.ts'
import { MM } from '../../src/units/length.ts'
import { LATHE, read, readGood, SHOP, said } from '../job/reading.ts'

const DIAL = '{ graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }'
const withCrossFeed = (scale: string) => ({ ...SHOP, 'lathe.yaml': LATHE.replace(DIAL, scale) })
const crossFeed = (scale: string) => readGood(withCrossFeed(scale)).lathe.crossFeed

describe('what can be read on a scale', () => {
  it.each([
    ['1', 25_400_000],
    ['1/2', 12_700_000],
    ['0.5', 12_700_000],
    ['1/4', 6_350_000],
    ['1/5', 5_080_000],
    ['1/10', 2_540_000],
  ])('is %s of a graduation in whole picometers', (part, expected) => {
    expect(readable(crossFeed(DIAL.replace(' }', `, read-to: ${part} }`)))).toBe(expected)
  })

  it('is the resolution of a readout, which has no lost motion', () => {
    const scale = crossFeed('{ readout: 0.01 mm, reads: diameter }')
    expect(scale).toEqual({ kind: 'readout', units: 'inch', resolution: MM / 100, reads: 'diameter' })
    expect(readable(scale)).toBe(MM / 100)
  })

  it('is exact for a metric dial of 3.175 mm a turn', () => {
    const scale = crossFeed('{ graduation: 0.025 mm, per-turn: 3.175 mm, backlash: 0 }')
    expect(scale).toMatchObject({ graduation: 25_000_000, perTurn: 3_175_000_000, backlash: 0 })
  })
})

describe('a scale that cannot be', () => {
  it('is reported once for each key of a dial beside a readout', () => {
    expect(
      said(read(withCrossFeed(DIAL.replace(' }', ', read-to: 1/2, readout: 0.001 }')))).map(
        (line) => line.split(' | ')[0],
      ),
    ).toEqual([
      'lathe.yaml:3:15 a readout has no graduation',
      'lathe.yaml:3:34 a readout has no per-turn',
      'lathe.yaml:3:65 a readout has no backlash',
      'lathe.yaml:3:82 a readout has no read-to',
    ])
  })

  it('is reported with all that it lacks', () => {
    expect(said(read(withCrossFeed('{ reads: depth }'))).map((line) => line.split(' | ')[0])).toEqual([
      'lathe.yaml:3:1 the dial has no graduation',
      'lathe.yaml:3:1 the dial has no per-turn',
      'lathe.yaml:3:1 the dial has no backlash',
    ])
  })
})
