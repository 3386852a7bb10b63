import type { Check } from '../../moves/inspection.ts'
import { overBottomPins } from '../bottom-pins.ts'
import type { ConcaveFeature, CornerFeature } from '../feature.ts'
import {
  bottomLimits,
  check,
  firstAtHand,
  forBottomOfArc,
  forRadius,
  type Inspected,
  NO_NEED,
  placeCheck,
  present,
  twiceTheDepth,
} from '../inspection.ts'

/** A concave groove at the bench: chord and sagitta, radius gauge, over pins, place. */
export function inspectConcave(inspected: Inspected, feature: ConcaveFeature): Check[] {
  const { bench, sizes } = inspected
  const width = sizes.planned('width')
  const radius = sizes.planned('radius')
  if (width === null || radius === null) return []
  const pins = overPins(inspected, radius)
  return present([
    check('radius', 'radius', radius, sizes.limits('radius'), forRadius(bench, radius)),
    check(
      'width',
      'width (chord)',
      width,
      sizes.limits('width'),
      firstAtHand(bench, NO_NEED, [['caliper', ['caliper across the edges']]]),
    ),
    check('depth', 'depth (sagitta)', sizes.planned('depth'), sizes.limits('depth'), forBottomOfArc(bench)),
    pins,
    check(
      'bottomDiameter',
      'bottom diameter',
      sizes.planned('bottomDiameter'),
      bottomLimits(inspected),
      pins?.by
        ? { by: pins.by, over: pins.over, using: ['the size over two pins less twice the pin'] }
        : twiceTheDepth(forBottomOfArc(bench)),
    ),
    placeCheck(inspected, feature.place),
  ])
}

/** A pin thinner than the circle of the groove touches its bottom only; one thicker than the depth stands proud. */
function overPins(inspected: Inspected, radius: number): ReturnType<typeof overBottomPins> {
  const opening = Math.min(2 * radius, 2 * (inspected.sizes.limits('radius')?.[0] ?? radius))
  return overBottomPins(inspected, opening, 'in the bottom')
}

/** A rounded corner at the bench: radius gauge, and both legs from the lines. */
export function inspectCorner({ bench, sizes }: Inspected, _feature: CornerFeature): Check[] {
  const radius = sizes.planned('radius')
  if (radius === null) return []
  return present([
    check('radius', 'radius', radius, sizes.limits('radius'), forRadius(bench, radius)),
    check(
      'legAlong',
      'leg along the work',
      sizes.planned('legAlong'),
      sizes.limits('legAlong'),
      firstAtHand(bench, NO_NEED, [['caliper', ['caliper from the end face to where the cylinder begins']]]),
    ),
    check(
      'legDown',
      'leg down the face',
      sizes.planned('legDown'),
      sizes.limits('legDown'),
      firstAtHand(bench, NO_NEED, [['caliper', ['half of the turned diameter less the diameter of the flat face']]]),
    ),
  ])
}
