import type { Check } from '../../moves/inspection.ts'
import type { ConcaveFeature, CornerFeature } from '../feature.ts'
import { besideOf, bottomLimits, check, forRadius, type Inspected, NEEDLE, placeCheck, present } from '../inspection.ts'
import { overPinsOnBottom, pinForBottom } from '../over-pins.ts'

/** A concave groove at the bench: chord and sagitta, radius gauge, over pins, place. */
export function inspectConcave(inspected: Inspected, feature: ConcaveFeature): Check[] {
  const { bench, sizes } = inspected
  const width = sizes.planned('width')
  const radius = sizes.planned('radius')
  if (width === null || radius === null) return []
  const pins = overPins(inspected, radius)
  return present([
    check('radius', 'radius', radius, sizes.limits('radius'), forRadius(bench.units, radius)),
    check('width', 'width (chord)', width, sizes.limits('width'), ['caliper across the edges']),
    check('depth', 'depth (sagitta)', sizes.planned('depth'), sizes.limits('depth'), NEEDLE),
    pins,
    check('bottomDiameter', 'bottom diameter', sizes.planned('bottomDiameter'), bottomLimits(inspected), [
      pins === null ? 'twice the depth off the turned diameter' : 'the size over two pins less twice the pin',
    ]),
    placeCheck(inspected, feature.place),
  ])
}

/** A pin thinner than the circle of the groove touches its bottom only; thicker than the depth it stands proud. */
function overPins(inspected: Inspected, radius: number): Check | null {
  const { bench, draft, sizes } = inspected
  const bottom = sizes.planned('bottomDiameter')
  if (bottom === null) return null
  const opening = Math.min(2 * radius, 2 * (sizes.limits('radius')?.[0] ?? radius))
  const beside = besideOf(inspected, draft.region.from, draft.region.to)
  const pin = pinForBottom(bench.units, bottom, opening, beside)
  if (pin === null) return null
  const limits = bottomLimits(inspected)
  return {
    id: 'overPins',
    label: 'over two pins',
    unit: 'length',
    using: [`micrometer over two opposed ${pin.label} balls or pins in the bottom`],
    planned: overPinsOnBottom(bottom, pin.diameter),
    limits: limits === null ? null : [limits[0] + 2 * pin.diameter, limits[1] + 2 * pin.diameter],
    pin: pin.diameter,
    pair: null,
  }
}

/** A rounded corner at the bench: radius gauge, and both legs from the lines. */
export function inspectCorner({ bench, sizes }: Inspected, _feature: CornerFeature): Check[] {
  const radius = sizes.planned('radius')
  if (radius === null) return []
  return present([
    check('radius', 'radius', radius, sizes.limits('radius'), forRadius(bench.units, radius)),
    check('legAlong', 'leg along the work', sizes.planned('legAlong'), sizes.limits('legAlong'), [
      'caliper from the end face to where the cylinder begins',
    ]),
    check('legDown', 'leg down the face', sizes.planned('legDown'), sizes.limits('legDown'), [
      'half of the turned diameter less the diameter of the flat face',
    ]),
  ])
}
