import type { GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import { number, words } from '../../phrase/words.ts'
import type { Drawing } from '../../sheet/drawing.ts'
import { angle, angles } from '../../sheet/grind/words.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import type { Markup } from '../markup.ts'
import { depthsOf, frameAt, scaleFor, scaleWords, trace } from './curves.ts'
import { across, upright } from './dimension.ts'
import type { PlannedFeature } from './part.ts'
import { circle, GRAY, head, inLines, LEADING, letters, line, type Point, paragraph, path, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'

const WIDTH = 66
/** mm of paper that the ground end may take in the plan; where its tip stands, and where the blank is broken off. */
const ROOM = { wide: 34, long: 18 } as const
const TIP = 43
const TOP = 15
const PLAN = 24
/** The tip in the side view, and how high the bit is there. */
const SIDE = { x: 16, y: 72, high: 16, long: 44 } as const
const NOTES = 105

type Range = readonly [number, number]
const middle = ([low, high]: Range): number => (low + high) / 2
const rad = (degrees: number): number => (degrees * Math.PI) / 180

/** The ground end from above, as it lies over the work, and from the side, with the angles as they are ground. */
export const toolPicture = (sheet: Sheet, feature: PlannedFeature, drawing: Drawing, ground: GrindFacts): Picture => {
  const notes = notesOf(ground)
  const told = notes.flatMap((each) => inLines(each, WIDTH - 6))
  const { drawn, scale } = plan(sheet, drawing, ground)
  return {
    id: `tool-${feature.index + 1}`,
    kind: 'tool',
    feature: feature.index,
    step: null,
    title: `"${feature.tool}" as it is ground: from above and from the side`,
    desc: `${[...sizesOf(sheet, ground), ...notes].join('. ')}.`,
    width: WIDTH,
    height: NOTES + told.length * LEADING,
    drawn: [
      letters([2, 5.5], heading(`"${feature.tool}" as it is ground`), { bold: true }),
      letters([3, 11.5], `from above, ${scaleWords(scale)}`),
      letters([3, 62], 'from the side, angles only'),
      ...drawn,
      ...side(ground),
      ...paragraph([3, NOTES], told),
    ],
  }
}

const heading = (name: string): string => {
  const [first = '', ...rest] = inLines(name, WIDTH - 10)
  return `${first}${rest.length > 0 ? '...' : ''}`
}

const plan = (
  sheet: Sheet,
  { edge }: Drawing,
  { reach, sides, width, nose }: GrindFacts,
): { readonly drawn: Markup[]; readonly scale: number } => {
  const [first, last] = [edge.pieces[0]!, edge.pieces.at(-1)!]
  const [, lowest] = depthsOf(edge.pieces)
  const scale = scaleFor([
    [Math.max(last.to, edge.shank.to) - Math.min(first.from, edge.shank.from), ROOM.wide],
    [reach, ROOM.long],
  ])
  const toPaper = scale / 1e9
  const frame = frameAt(scale, [PLAN + ((first.from + last.to) / 2) * toPaper, TIP - lowest * toPaper])
  const neck = TIP - reach * toPaper
  const [right, left] = [frame.x(first.from), frame.x(last.to)]
  const [rightEnd, leftEnd] = [first, last].map((piece, i) => endOf(frame, piece, i))
  const lean = Math.tan(rad(sides.back === null ? 0 : middle(sides.back)))
  const inward = (from: number): number => Math.max(0, (from - neck) * lean)
  const tipWidth = width === null ? flatAtTip(edge.pieces, nose, frame) : ([right, left] as const)
  const [shankRight, shankLeft] = [frame.x(edge.shank.from), frame.x(edge.shank.to)]
  const outline = `M${shankRight} ${TOP}V${neck}L${right - inward(rightEnd!)} ${neck}L${right} ${rightEnd}${trace(
    edge.pieces,
    frame,
    false,
    'L',
  )}L${left + inward(leftEnd!)} ${neck}H${shankLeft}V${TOP}`
  return {
    scale,
    drawn: [
      path(outline, { width: WEIGHT.edge, fill: GRAY.metal, as: 'plan' }),
      ...upright(neck, TIP, shankRight + 5, [right, right], [number(length('tool', reach, sheet.units), sheet.units)]),
      ...(tipWidth === null
        ? []
        : across(
            ...tipWidth,
            TIP + 7,
            [TIP, TIP],
            number(length('tool', width?.edge ?? nose!, sheet.units), sheet.units),
            64,
          )),
    ],
  }
}

/** Where the flat of a V ends on paper; null where it has none. */
const flatAtTip = (
  pieces: Drawing['edge']['pieces'],
  nose: number | null,
  frame: ReturnType<typeof frameAt>,
): readonly [number, number] | null => {
  const flat = pieces.find(({ curve }) => curve.kind === 'line' && Math.abs(curve.d1 - curve.d0) < 1e3)
  return nose === null || flat === undefined ? null : [frame.x(flat.from), frame.x(flat.to)]
}

const endOf = (
  frame: ReturnType<typeof frameAt>,
  { curve, from, to }: Drawing['edge']['pieces'][number],
  i: number,
): number => {
  const z = i === 0 ? from : to
  return curve.kind === 'line'
    ? frame.y(i === 0 ? curve.d0 : curve.d1)
    : frame.y(curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2)))
}

/** The bit lies level and points at the work, which is to the left; the front falls back under the edge, the top is ground as it is. */
const side = ({ rakeGround, endRelief }: GrindFacts): Markup[] => {
  const relief = middle(endRelief.ground)
  const { x, y, high, long } = SIDE
  const at = (dx: number, dy: number): Point => [x + dx, y + dy]
  const heel = at(Math.tan(rad(relief)) * high, high)
  const face = at(14, Math.tan(rad(rakeGround)) * 14)
  const body = `M${x} ${y}L${heel.join(' ')}H${x + long}V${face[1]}L${face.join(' ')}Z`
  const foot = at(0, high + 5)
  return [
    path(body, { width: WEIGHT.edge, fill: GRAY.metal, as: 'side' }),
    circle([x, y], 0.7, { width: 0, fill: '#000' }),
    line(at(-12, 0), at(long + 2, 0), { dash: '5 1 1 1' }),
    letters(at(-12, -1.5), 'center', { anchor: 'start', rim: true }),
    line([x, y], foot, { width: WEIGHT.thin }),
    ...arc([x, y], high, 90, 90 - relief),
    letters(at(4, high + 5), 'end relief'),
    letters(at(4, high + 10), words(angles(endRelief.ground), 'inch'), { as: 'relief' }),
    letters(at(16, Math.min(0, face[1] - y) - 2), words(['rake ', angle(rakeGround)], 'inch'), {
      rim: true,
      as: 'rake',
    }),
    ...(Math.abs(rakeGround) < 1 / 120 ? [] : arc([x, y], 14, 0, rakeGround)),
  ]
}

/** Between two directions, degrees from the right turning down, with a head at its end. */
const arc = ([x, y]: Point, r: number, from: number, to: number): Markup[] => {
  const on = (degrees: number): Point => [x + r * Math.cos(rad(degrees)), y + r * Math.sin(rad(degrees))]
  const clockwise = to > from ? 1 : 0
  return [
    path(`M${on(from).join(' ')}A${r} ${r} 0 0 ${clockwise} ${on(to).join(' ')}`),
    head(on(to), to + (clockwise === 1 ? 90 : -90), 2),
  ]
}

/** What neither view shows to scale, and how the angles stand in use. */
const notesOf = ({ sides, endRelief, rakeInUse, holderAngle, form }: GrindFacts): string[] => [
  words(
    [
      'sides: relief ',
      ...angles(sides.relief),
      ...(sides.back === null ? [] : ['; clearance ', ...angles(sides.back), ' back from the edge']),
    ],
    'inch',
  ),
  ...(form.vee === null ? [] : [words(['ground to ', angle(2 * form.vee.ground), ' included'], 'inch')]),
  words(
    [
      'in use',
      ...(holderAngle === 0 ? [] : [' in a holder at ', angle(holderAngle)]),
      ': rake ',
      angle(rakeInUse),
      ', end relief ',
      ...angles(endRelief.use),
    ],
    'inch',
  ),
]

const sizesOf = (
  { units }: Sheet,
  { width, reach, nose, cornerRadius, endRelief, rakeGround }: GrindFacts,
): string[] => {
  const of = (word: string, size: number | null | undefined): string[] =>
    size === null || size === undefined ? [] : [`${word} ${number(length('tool', size, units), units)}`]
  return [
    ...of('width', width?.edge),
    ...of('flat at the nose', nose),
    ...of('corner radius', cornerRadius),
    ...of('ground end', reach),
    words(['end relief ', ...angles(endRelief.ground)], units),
    words(['rake ', angle(rakeGround)], units),
  ]
}
