import { describe, expect, it } from 'vitest'
import { printerOf } from '../../src/print/registry.ts'
import { drawnExample, drawnSheets } from './drawn.ts'
import { type Element, everyIn, parse, pointsOf, textIn, withClass } from './xml.ts'

const print = await printerOf('sheet', 'svg')
const toolOf = (name: string, form = 1): Element =>
  everyIn(parse(print(drawnExample(name)))).find(({ attributes }) => attributes.id === `tool-${form}`)!
const points = (tool: Element, of: string) => pointsOf(withClass(tool, of)[0]!.attributes.d!)
const texts = (tool: Element): string[] =>
  everyIn(tool)
    .filter(({ name }) => name === 'text')
    .map(textIn)
const scaleOf = (tool: Element): number => {
  const [, paper, work] = /scale (\d+):(\d+)$/.exec(texts(tool).find((text) => text.includes('scale'))!)!
  return Number(paper) / Number(work)
}
const degrees = (dx: number, dy: number): number => (Math.atan2(dy, dx) * 180) / Math.PI

describe('the tool of the press screw', () => {
  const tool = toolOf('01-press-screw')

  it('is as wide and as long from above as it measures: .148 and .140', () => {
    const all = points(tool, 'plan')
    const tip = Math.max(...all.map(([, y]) => y))
    const low = all.filter(([, y]) => Math.abs(y - tip) < 0.01).map(([x]) => x)
    expect((Math.max(...low) - Math.min(...low)) / scaleOf(tool) / 25.4).toBeCloseTo(0.148, 3)
    const neck = all.map(([, y]) => y).filter((y) => y < tip - 1)
    expect((tip - Math.max(...neck)) / scaleOf(tool) / 25.4).toBeCloseTo(0.14, 3)
    expect(texts(tool)).toEqual(expect.arrayContaining(['.148', '.140']))
  })

  it('is narrower back from the edge, by 2° to 4° a side', () => {
    const all = points(tool, 'plan')
    const tip = Math.max(...all.map(([, y]) => y))
    const corner = all.filter(([, y]) => Math.abs(y - tip) < 0.01).sort(([a], [b]) => b - a)[0]!
    const neck = all.filter(([x, y]) => y < tip - 1 && Math.abs(x - corner[0]) < 3).sort((a, b) => b[1] - a[1])[0]!
    const lean = degrees(corner[1] - neck[1], corner[0] - neck[0])
    expect(lean).toBeGreaterThan(1.99)
    expect(lean).toBeLessThan(4.01)
  })

  it('falls back under the edge by the 8° to 10° that it is ground to, its top flat', () => {
    const [tip, heel, , , face] = points(tool, 'side')
    expect(degrees(heel![1] - tip![1], heel![0] - tip![0])).toBeCloseTo(9, 1)
    expect(face![1]).toBeCloseTo(tip![1], 2)
    expect(texts(tool)).toEqual(expect.arrayContaining(['8° to 10°', 'rake 0°']))
  })
})

describe('the tool in a tilted holder', () => {
  it('has the angles as they are ground, and says what they are in use', () => {
    const tool = toolOf('21-tilted-holder')
    expect(texts(tool).join(' ')).toMatch(/in use in a holder at 14° 30': rake 14° 30', end relief 8° to 10°/)
    const [tip, heel] = points(tool, 'side')
    expect(degrees(heel![1] - tip![1], heel![0] - tip![0])).toBeCloseTo(23.5, 1)
  })
})

describe('every job', () => {
  it.each(drawnSheets())('%s: a tool for each form, with its words', (_, sheet) => {
    const tools = withClass(parse(print(sheet)), 'tool').filter(({ attributes }) => attributes.id?.startsWith('tool-'))
    const planned = sheet.features.filter((one) => one.status === 'planned' && one.kind !== 'roughing')
    expect(tools).toHaveLength(planned.length)
    for (const tool of tools) {
      const desc = everyIn(tool).find(({ name }) => name === 'desc')!
      expect(textIn(desc)).toMatch(/end relief .*rake /)
    }
  })
})
