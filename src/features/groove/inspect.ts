import type { Check } from '../../moves/inspection.ts'
import type { GrooveFeature } from '../feature.ts'
import {
  anvilEnters,
  besideOf,
  bottomLimits,
  check,
  forBottom,
  forDepth,
  forWidth,
  type Inspected,
  placeCheck,
  present,
} from '../inspection.ts'
import { overPinsOnBottom, pinForBottom } from '../over-pins.ts'

/** A square groove at the bench: width and a pair of gauges for it, bottom diameter, over pins where no anvil enters, depth, place. */
export function inspectGroove(inspected: Inspected, feature: GrooveFeature): Check[] {
  const { bench, sizes } = inspected
  const width = sizes.planned('width')
  const depth = sizes.planned('depth')
  if (width === null || depth === null) return []
  return present([
    check('width', 'width', width, sizes.limits('width'), forWidth(bench.units, width)),
    goNoGo(width, sizes.limits('width')),
    check(
      'bottomDiameter',
      'bottom diameter',
      sizes.planned('bottomDiameter'),
      bottomLimits(inspected),
      forBottom(bench.units, width, depth),
    ),
    overPins(inspected, width),
    check('depth', 'depth', depth, sizes.limits('depth'), forDepth(bench.units, width)),
    placeCheck(inspected, feature.place),
  ])
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

/** Small balls or pins that rest on the floor between the walls, where no anvil enters. */
function overPins(inspected: Inspected, width: number): Check | null {
  const { bench, draft, sizes } = inspected
  const bottom = sizes.planned('bottomDiameter')
  if (bottom === null || anvilEnters(bench.units, width)) return null
  const beside = besideOf(inspected, draft.region.from, draft.region.to)
  const pin = pinForBottom(bench.units, bottom, sizes.limits('width')?.[0] ?? width, beside)
  if (pin === null) return null
  const limits = bottomLimits(inspected)
  return {
    id: 'overPins',
    label: 'over two pins',
    unit: 'length',
    using: [`micrometer over two opposed ${pin.label} balls or pins on the floor`],
    planned: overPinsOnBottom(bottom, pin.diameter),
    limits: limits === null ? null : [limits[0] + 2 * pin.diameter, limits[1] + 2 * pin.diameter],
    pin: pin.diameter,
    pair: null,
  }
}
