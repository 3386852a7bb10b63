import type { Check, OverPins, TextPart } from '../../moves/inspection.ts'
import { INCH, type Length, MM, type Units } from '../../units/length.ts'
import type { VGrooveFeature } from '../feature.ts'
import {
  besideOf,
  bladeEnters,
  bottomLimits,
  bottomNeed,
  check,
  firstAtHand,
  forBottom,
  forDepth,
  halfOf,
  type Inspected,
  NO_NEED,
  needOf,
  overPinsWay,
  placeCheck,
  present,
  twiceTheDepth,
  type Way,
} from '../inspection.ts'
import { overPinsInVee, pinForVee } from '../over-pins.ts'
import { overCurvedFlanks } from './raked.ts'

/** A V at the bench: angle, width at the surface, bottom, flat, over pins, place. */
export function inspectVGroove(inspected: Inspected, feature: VGrooveFeature): Check[] {
  const { bench, sizes } = inspected
  const root = sizes.planned('root')
  const depth = sizes.planned('depth')
  if (root === null || depth === null) return []
  const at = feature.widthAt
  return present([
    check(
      'angle',
      'included angle',
      sizes.planned('angle'),
      sizes.limits('angle'),
      firstAtHand(bench, NO_NEED, [['protractor', ['protractor, or the template the tool was ground to']]]),
      'angle',
    ),
    check(
      'width',
      at === null ? 'width at surface' : 'width as drawn',
      sizes.planned('width'),
      sizes.limits('width'),
      at === null
        ? firstAtHand(bench, NO_NEED, [['caliper', ['caliper across the edges; once they are broken, only over pins']]])
        : onlyOverPins(inspected, feature, at),
    ),
    overPins(inspected, feature),
    check(
      'bottomDiameter',
      'bottom diameter',
      sizes.planned('bottomDiameter'),
      bottomLimits(inspected),
      surer(
        bladeEnters(bench.units, root)
          ? forBottom(bench, root, depth, bottomNeed(inspected))
          : twiceTheDepth(forDepth(bench, root, halfOf(bottomNeed(inspected))), [': no blade enters']),
        bottomByPins(inspected, feature),
      ),
    ),
    check('depth', 'depth', depth, sizes.limits('depth'), forDepth(bench, root, needOf(inspected, 'depth'))),
    check(
      'root',
      'flat at the root',
      root,
      sizes.limits('root'),
      firstAtHand(bench, NO_NEED, [
        root >= leastFlat(bench.units) && [
          'gauge-blocks',
          ['width of a feeler or flat pin that just lies on the floor'],
        ],
      ]),
    ),
    placeCheck(inspected, feature.place),
  ])
}

/** Nothing flat is set on end on a floor narrower than this, 0.010 in or 0.25 mm: common practice, no source. */
const leastFlat = (units: Units): Length => (units === 'inch' ? INCH / 100 : MM / 4)

/** The first way, unless it takes nothing or is less sure. */
const surer = (way: Way, other: Way | null): Way =>
  other?.by && (!way.by || way.by.within > other.by.within) ? other : way

/**
 * Pins on the flanks say where those are: the bottom follows from them, less sure by what the cut may have made of the angle and of the root. Null where
 * none seats at the stop too, in the part of the form that is roughed by then.
 */
function bottomByPins(inspected: Inspected, feature: VGrooveFeature): Way | null {
  const { draft, sizes } = inspected
  const pins = overPins(inspected, feature)
  const [angle, root, bottom] = [sizes.planned('angle'), sizes.planned('root'), sizes.planned('bottomDiameter')]
  const { tool, cuts } = draft
  if (!pins?.by || angle === null || root === null || bottom === null || tool.shape !== 'vee') return null
  const half = (angle * Math.PI) / 360
  const [sin, cos, tangent] = [Math.sin(half), Math.cos(half), Math.tan(half)]
  const roughed = 'roughDepths' in cuts ? (cuts.roughDepths.at(-1) ?? cuts.depth) : 0
  if (pins.over.pin.size * cos >= tool.nose + 2 * roughed * tangent) return null
  const [turned, widened] = [sizes.cut('angle') ?? 0, sizes.cut('root') ?? 0]
  const byAngle = (Math.abs(root - pins.over.pin.size * cos) / sin ** 2) * ((turned * Math.PI) / 360)
  return {
    using: ['the size over two pins less what they stand above the bottom, by the angle and the flat as planned'],
    by: { ...pins.by, within: pins.by.within + byAngle + widened / tangent },
    over: { ...pins.over, more: pins.planned - bottom, flanks: { root, tangent } },
  }
}

/** What pins are off by, as a width: W/tan α is in the size over pins. */
function onlyOverPins(inspected: Inspected, feature: VGrooveFeature, at: Length): Way {
  const pins = overPins(inspected, feature)
  const angle = inspected.sizes.planned('angle')
  const there: readonly TextPart[] = ['at the diameter of ', { length: at }, ': over pins only']
  if (!pins?.by || angle === null) return { using: [...there, ', and none that fits is at hand'], by: null }
  const part = Math.tan((angle * Math.PI) / 360)
  return {
    using: there,
    by: { ...pins.by, within: pins.by.within * part, reads: pins.by.reads * part },
  }
}

/** Limits follow from those of the width, at the angle as planned; if the width has none, there are none. */
function overPins(inspected: Inspected, feature: VGrooveFeature): (Check & { over: OverPins }) | null {
  const { bench, draft, sizes } = inspected
  const [width, angle, root] = [sizes.planned('width'), sizes.planned('angle'), sizes.planned('root')]
  if (width === null || angle === null || root === null) return null
  const halfAngle = angle / 2
  const diameter = feature.widthAt ?? draft.surface
  const atSurface = width + (draft.surface - diameter) * Math.tan((halfAngle * Math.PI) / 180)
  const beside = besideOf(inspected, draft.region.from, draft.region.to)
  const pin = pinForVee(bench.units, { diameter: draft.surface, width: atSurface, halfAngle, root }, beside)
  if (pin === null) return null
  const curved = overCurvedFlanks(draft, root, pin.diameter)
  const over = (wide: number): number => overPinsInVee({ diameter, width: wide, halfAngle }, pin.diameter) + curved
  const limits = sizes.limits('width')
  return {
    id: 'overPins',
    label: 'over two pins',
    unit: 'length',
    ...overPinsWay(
      bench,
      [
        'micrometer over two opposed ',
        { size: pin.diameter, label: pin.label },
        ' balls or pins that rest on the flanks',
        ...(limits === null ? [] : ['; limits from the width, at ', { angle }]),
      ],
      (1 + 1 / Math.sin((halfAngle * Math.PI) / 180)) / 2,
    ),
    planned: over(width),
    limits: limits === null ? null : [over(limits[1]), over(limits[0])],
    over: { pin: { size: pin.diameter, label: pin.label }, more: 0, flanks: null },
    pin: pin.diameter,
    pair: null,
  }
}
