import { describe, expect, it } from 'vitest'
import rows from './arcs.json' with { type: 'json' }
import { cuts, planned, type Sheet, within } from './whole-job.ts'

it('has the rows', () => {
  expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
    fromChord: 1,
    unit: 11,
    widths: 6,
    coordinates: 11,
    angles: 10,
    gaugeSet: 1,
    gaugeStep: 1,
  })
})

/** Height of a segment: h = r − ½√(4r² − c²) (Machinery's Handbook, 31st ed., p. 79). */
const height = (radius: number, chord: number): number => radius - 0.5 * Math.sqrt(4 * radius ** 2 - chord ** 2)

/** The deepest cut of the finish at each place along the work. */
const deepestAt = (sheet: Sheet): [number, number][] => {
  const list = new Map<number, number>()
  for (const { crossFeed, compound } of cuts(sheet, 'finish')) {
    list.set(compound, Math.max(list.get(compound) ?? Number.NEGATIVE_INFINITY, crossFeed))
  }
  return [...list]
}

const groove = (radius: number, tool: number, form: string, floor: number, again = false) =>
  planned(
    {
      units: 'inch',
      part: `diameter: ${(4 * floor + 2).toFixed(3)}, length: 12`,
      tool: `shape: round, radius: ${tool}, reach: ${(floor + 0.2).toFixed(3)}`,
      feature: `kind: radius, shape: concave, radius: ${radius}, ${form}, center: 5`,
    },
    { again },
  )

/** Every place of the tip lies on the circle that the tool's middle runs along: a segment of R − r, as high as the handbook's formula has it. */
const onTheArc = (sheet: Sheet, radius: number, tool: number, floor: number): void => {
  const places = deepestAt(sheet)
  expect(places.length).toBeGreaterThan(4)
  for (const [z, tip] of places) {
    const wanted = floor - height(radius - tool, 2 * Math.abs(z))
    within(tip, wanted - 0.0011, wanted + 0.0006)
  }
}

describe('concave grooves stepped along with a smaller tool', () => {
  it.each(rows.fromChord)('a tenth of chord $chord and height $height is of radius $radius ($source)', (row) => {
    const [radius, chord, high] = [row.radius / 10, row.chord / 10, row.height / 10]
    const { sheet, size } = groove(Number(radius.toFixed(5)), 0.3, `width: ${chord}`, high, true)
    within(size('depth').planned, high - 0.0006, high + 0.0006)
    within(size('width').planned, chord - 0.002, chord + 0.002)
    onTheArc(sheet, radius, 0.3, high)
  })

  // The radius is checked against a width and a depth that are given both: the handbook's own triple is right, another is not.
  it.each(rows.fromChord)('chord $chord and height $height belong to $radius, and to no other ($source)', (row) => {
    const both = `width: ${row.chord / 10}, depth: ${row.height / 10}`
    expect(() => groove(0.83333, 0.3, both, row.height / 10)).not.toThrow()
    expect(() => groove(0.85, 0.3, both, row.height / 10)).toThrow()
  })

  it.each(rows.unit.filter(({ angle }) => angle >= 30 && angle < 180))(
    'radius 1, $angle°: chord $chord, height $height ($source)',
    (row) => {
      const { sheet, size } = groove(1, 0.4, `width: ${row.chord}`, row.height)
      within(size('depth').planned, row.height - 0.0006, row.height + 0.0006)
      within(Math.max(...deepestAt(sheet).map(([, tip]) => tip)), row.height - 0.001, row.height + 0.0006)
      onTheArc(sheet, 1, 0.4, row.height)
      const other = groove(1, 0.4, `depth: ${row.height}`, row.height)
      within(other.size('width').planned, row.chord - 0.01, row.chord + 0.01)
    },
  )

  it.each(rows.widths.filter(({ radius }) => radius <= 1))(
    'radius $radius, $width wide: $depth deep ($source)',
    ({ radius, width, depth }) => {
      const { sheet, size } = groove(radius, 0.15, `width: ${width}`, depth)
      within(size('depth').planned, depth - 0.0006, depth + 0.0006)
      onTheArc(sheet, radius, 0.15, depth)
    },
  )
})

// A corner of 10 mm by a sharp square tool: its corner rides the arc. Between two rows of the table it is between their two offsets;
// before the first the whole offset is less than the ridge that is allowed.
describe('a corner by coordinates', () => {
  const { sheet } = planned(
    {
      units: 'mm',
      part: 'diameter: 60, length: 60',
      tool: 'shape: square, width: 3, reach: 15',
      feature: 'kind: radius, shape: corner, corner-of: end, radius: 10, cusp: 0.2',
    },
    { again: false },
  )
  const places = deepestAt(sheet).map(([along, diameter]) => ({ z: 10 - along, offset: diameter / 2 }))

  it('steps through the whole of it', () => {
    expect(places.length).toBeGreaterThan(20)
  })

  it.each(rows.coordinates.slice(1, -1))('from $z from the tangent on: offset $offset ($source)', ({ z, offset }) => {
    const next = rows.coordinates.find((row) => row.z === z + 1)!.offset
    const here = places.filter((place) => place.z >= z && place.z < z + 1)
    expect(here.length).toBeGreaterThan(0)
    for (const place of here) within(place.offset, offset - 0.011, next + 0.011)
  })

  // By angle: at sin the offset is 1 − cos. Where the tool stands nearest to such a row, it lies on the tangent through it.
  it.each(rows.angles.slice(1, -2))('at $angle°: $z along, $x in ($source)', ({ angle, z, x }) => {
    const near = places.reduce((best, place) => (Math.abs(place.z - 10 * z) < Math.abs(best.z - 10 * z) ? place : best))
    const slope = Math.tan((angle * Math.PI) / 180)
    const away = near.z - 10 * z
    expect(Math.abs(away)).toBeLessThan(0.6)
    // The arc leaves its tangent by the second derivative, 1 / (R cos³).
    const bend = (away ** 2 / 20) * (1 + slope ** 2) ** 1.5 * 1.5
    within(near.offset, 10 * x + slope * away - 0.02, 10 * x + slope * away + 0.02 + bend)
  })
})
