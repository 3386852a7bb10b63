import type { Check } from '../../moves/inspection.ts'
import { overBottomPins } from '../bottom-pins.ts'
import type { ConcaveFeature, CornerFeature } from '../feature.ts'
import { bottomLimits, check, forRadius, type Inspected, NEEDLE, placeCheck, present } from '../inspection.ts'

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

/** A pin thinner than the circle of the groove touches its bottom only; one thicker than the depth stands proud. */
function overPins(inspected: Inspected, radius: number): Check | null {
  const opening = Math.min(2 * radius, 2 * (inspected.sizes.limits('radius')?.[0] ?? radius))
  return overBottomPins(inspected, opening, 'in the bottom')
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
