// Source: h = r − ½√(4r² − c²), Machinery's Handbook, 31st ed. (2020), p. 79 (grade A; reference-values.yaml id seg_f);
// row seg1_60: radius 1, chord 1, height 0.13397 (recomputed). A 1.000 radius, 0.134 deep, stepped with a .400 round tool: the places stand
// astride the middle; once none was on it, and with a coarse cusp the whole groove came out .001 shallow although a mark at .134 exists.
import { expect, it } from 'vitest'
import { planned } from './whole-job.ts'

const groove = (cusp: string) =>
  planned({
    units: 'inch',
    part: 'diameter: 3, length: 4',
    tool: 'shape: round, radius: 0.4, reach: 0.5',
    feature: `kind: radius, shape: concave, radius: 1, depth: 0.134 ±0.0015, center: 2, cusp: ${cusp}`,
  })

it.each(['0.002', '0.001', '0.0005'])('with a cusp of %s the depth is the drawing to half a mark', (cusp) => {
  expect(Math.abs(groove(cusp).size('depth').planned - 0.134)).toBeLessThanOrEqual(0.0005 + 1e-9)
})

// examples/README.md, "How to cut": `cusp` is the tallest ridge left where a tool steps along a round form. The note beside the steps tells more.
it.each(['0.002', '0.001', '0.0005'])('with a cusp of %s no ridge stands out further', (cusp) => {
  const note = groove(cusp).feature.notes.find((text) => text.includes('ridges are'))!
  const ridge = Number(/at most (\.\d+) out/.exec(note)![1])
  expect(ridge).toBeLessThanOrEqual(Number(cusp))
})
