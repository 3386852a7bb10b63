import { describe, expect, it } from 'vitest'
import { compile } from '../../src/compile.ts'
import { told } from '../prose.ts'

const LATHE = `lathe:
  name: Bench
  units: inch
  cross-feed: { graduation: 0.001, per-turn: 0.100, reads: depth, backlash: 0.008 }
  compound: { graduation: 0.001, per-turn: 0.100, backlash: 0.006, travel: 2.5 }
  spindle-speeds: [60, 95, 150, 240]
`
const featureOf = (text: string) => compile('-', () => ({ ok: true, file: '-', bytes: text })).plan!.features[0]!
const refused = (text: string) => {
  const feature = featureOf(text)
  if (feature.status !== 'refused') throw new Error('it is planned')
  return feature
}

const neck = (width: string, offset: string, blank = '5/16', steps = '') => `title: Press arbor
units: inch
part:
  material: mild steel
  held: chuck
  overhang: 3 1/4
  steps:
${steps}    - { name: journal, diameter: 0.750, length: 1.400 }
    - { name: flange, diameter: 1 3/8, length: 2.5 }
${LATHE}tools: { relief: { shape: square, width: ${width}, reach: 0.150, blank: ${blank}, edge-offset: ${offset} } }
features:
  - { kind: groove, name: Neck, from: flange, far: 0, width: 0.125 +0.010 -0, depth: 0.030 ±0.003, tool: relief }
`

describe('a blank that stands a little over the shoulder beside the edge', () => {
  it('is told by how much, and where to set the edge on it, before any grinding back of the sides', () => {
    const { code, remedy: prose } = refused(neck('0.0920', '0.219'))
    const remedy = told(prose)
    expect(code).toBe('reach-too-short')
    // .3125 less .219 less .092 leaves .0015 of the blank beyond the edge.
    expect(remedy).toMatch(/^the headstock side of the blank is \.0015 over "flange": .*edge-offset: \.2205/)
    expect(remedy).toContain('take .0015 off that side')
  })
  it('is planned once the remedy is followed', () => {
    expect(featureOf(neck('0.0920', '0.2205')).status).toBe('planned')
    expect(featureOf(neck('0.0920', '0.219', '0.311')).status).toBe('planned')
  })
  it('is not told to go where another shoulder stands', () => {
    // The width aims at .130: .349 of the journal lie under the tool and the blank, .0005 less than moving the blank would take.
    const collar = '    - { name: collar, diameter: 1 3/8, length: 1 }\n'
    const short = neck('0.0920', '0.219', '5/16', collar).replace('length: 1.400', 'length: 0.3495')
    expect(told(refused(short).remedy)).not.toContain('edge-offset')
    expect(told(refused(short).remedy)).toContain('take .0015 off that side')
  })
})

describe('a tool some 25 times too wide', () => {
  const mixed = (units: string, width: string) => `title: Units mixed
units: ${units}
part: { material: mild steel, held: chuck, diameter: ${units === 'mm' ? 25 : 1}, length: ${units === 'mm' ? 100 : 4} }
${LATHE}tools: { units: ${units === 'mm' ? 'inch' : 'mm'}, neck: { shape: square, width: ${width}, reach: 0.1 } }
features:
  - { kind: groove, name: Slot, near: 0.5, width: 0.165, depth: 0.050, tool: neck }
`
  it('is asked whether the units are right', () => {
    expect(told(refused(mixed('mm', '0.148')).remedy)).toContain('is units: mm right')
  })
  it('is not asked that for a tool that is merely too wide', () => {
    expect(refused(mixed('inch', '4.5')).code).toBe('tool-too-wide')
    expect(told(refused(mixed('inch', '4.5')).remedy)).not.toContain('units')
  })
})
