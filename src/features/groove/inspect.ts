import { radiusGauges } from '../../handbook/pins.ts'
import type { Check } from '../../moves/inspection.ts'
import { overBottomPins } from '../bottom-pins.ts'
import type { GrooveFeature } from '../feature.ts'
import {
  anvilEnters,
  bottomLimits,
  bottomNeed,
  check,
  forBottom,
  forDepth,
  forRadius,
  forWidth,
  type Inspected,
  needOf,
  placeCheck,
  present,
  type Way,
} from '../inspection.ts'

/**
 * A square groove at the bench: width and a pair of gauges for it, bottom diameter, over pins if no anvil fits, depth,
 * place.
 */
export function inspectGroove(inspected: Inspected, feature: GrooveFeature): Check[] {
  const { bench, sizes } = inspected
  const width = sizes.planned('width')
  const depth = sizes.planned('depth')
  if (width === null || depth === null) return []
  return present([
    check('width', 'width', width, sizes.limits('width'), forWidth(bench, width, needOf(inspected, 'width'))),
    bench.instruments['gauge-blocks'] === null ? null : goNoGo(width, sizes.limits('width')),
    check(
      'bottomDiameter',
      'bottom diameter',
      sizes.planned('bottomDiameter'),
      bottomLimits(inspected),
      forBottom(bench, width, depth, bottomNeed(inspected)),
    ),
    overPins(inspected, width),
    cornerRadius(inspected),
    check('depth', 'depth', depth, sizes.limits('depth'), forDepth(bench, width, needOf(inspected, 'depth'))),
    placeCheck(inspected, feature.place),
  ])
}

function cornerRadius({ bench, sizes }: Inspected): Check | null {
  const radius = sizes.planned('cornerRadius')
  if (radius === null) return null
  const tooSmall = radius < Math.min(...radiusGauges(bench.units)) * 0.9
  const using: Way = tooSmall
    ? { using: ['under a glass, beside the corner of the tool: too small for a radius gauge'] }
    : forRadius(bench, radius)
  return check('cornerRadius', 'corner radius', radius, sizes.limits('cornerRadius'), using)
}

function goNoGo(width: number, limits: Check['limits']): Check | null {
  if (limits === null) return null
  return {
    id: 'goNoGo',
    label: 'go / no-go pair',
    unit: 'length',
    using: ['flat gauges: ', { length: limits[0] }, ' enters to the floor, ', { length: limits[1] }, ' does not'],
    planned: width,
    limits,
    pin: null,
    pair: limits,
  }
}

/** Small balls or pins that rest on the floor between the walls, if no anvil fits. */
function overPins(inspected: Inspected, width: number): Check | null {
  const { bench, sizes } = inspected
  if (anvilEnters(bench.units, width)) return null
  return overBottomPins(inspected, sizes.limits('width')?.[0] ?? width, 'on the floor')
}
