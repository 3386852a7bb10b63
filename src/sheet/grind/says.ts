import type { FormFacts, GrindFacts } from '../../moves/grinding.ts'
import { length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { called } from '../../phrase/say.ts'
import type { Length, Units } from '../../units/length.ts'
import type { Labeled } from '../sheet.ts'
import { corrections } from './correction.ts'
import { SHAPE_WORDS } from './shapes.ts'
import { angle, angles, deepest, lengths, narrowest, topWords } from './words.ts'

/** What a tool is ground to, block by block, in the order in which they are needed. */
export const blocksOf = (facts: readonly GrindFacts[], units: Units): Labeled[] => {
  const main = deepest(facts)
  return [
    { label: 'For', says: facts.map(({ form }) => formWords(form, units)) },
    { label: 'Start from', says: [blank(main, units)] },
    { label: 'Edge', says: edge(facts, units) },
    { label: 'End relief', says: endRelief(main) },
    { label: 'Sides', says: [...sides(main), ['reliefs and clearances: common practice']] },
    { label: 'Length', says: reach(main, units) },
    { label: 'Rake', says: rake(main) },
    { label: 'Correction', says: corrections(facts, units) },
    { label: 'Gauge', says: gauge(main, units) },
    { label: 'Protractor', says: protractor(main) },
    { label: 'Measure', says: SHAPE_WORDS[main.shape].measure(main, units) },
  ].filter(({ says }) => says.length > 0)
}

/** What goes wrong at the grinder or in the groove if it is not noticed before. */
export const warningsOf = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  const main = deepest(facts)
  const { sides, rakeAdvice, rakeInUse, bit, measured } = main
  const warnings: Phrase[] = []
  if (sides.backInUse !== null && sides.backNeeded !== null)
    warnings.push([
      'As little as ',
      angle(sides.backInUse[0]),
      ' of side clearance may be left in use, under ',
      angle(1),
      ': grind at least ',
      angle(sides.backNeeded),
      ' back from the edge, or leave the top as it is.',
    ])
  const most = rakeAdvice.forming?.[1]
  if (most !== undefined && rakeInUse > most + 1 / 120)
    warnings.push([
      angle(rakeInUse),
      ' of rake in use, where this metal is formed with ',
      angle(most),
      most === 0 ? ': it pulls the tool in; level the top.' : ' at most: level the top, or grind to the correction.',
    ])
  if (bit === 'carbide') warnings.push(['Carbide: a silicon-carbide or diamond wheel, dry, and no dipping.'])
  if (measured && main.form.corner === null && main.form.face > main.reach)
    warnings.push([
      'The ground end reaches ',
      length('tool', main.reach, units),
      ', the edge must be ',
      length('depth', main.form.face, units),
      ' long.',
    ])
  return warnings
}

const formWords = (form: FormFacts, units: Units): Phrase => [
  `${form.feature}: `,
  length('depth', form.depth, units),
  ' deep on ',
  length('diameter', form.surface, units),
]

const blank = ({ blank: stock }: GrindFacts, units: Units): Phrase => {
  if (stock === null) return ['no stock square is as wide as the edge: a forged or brazed tool']
  const side = length('tool', stock.square, units)
  return stock.given
    ? ['its own blank, ', side, ' square']
    : [side, ' square, the smallest stock bit that carries it', stock.fromMemory ? ' (sizes from memory)' : '']
}

const edge = (facts: readonly GrindFacts[], units: Units): Phrase[] => {
  const { nose, cornerRadius, measured } = deepest(facts)
  const of = (value: Length) => length('tool', value, units)
  const says: Phrase[] = []
  const { width } = narrowest(facts)
  if (width !== null) {
    const groove: Phrase = width.drawn === null ? [] : [', the groove is ', of(width.drawn), why(narrowest(facts))]
    if (measured) {
      says.push(['measures ', of(width.edge), ', and the plan goes by that: sharpen it to ', of(width.edge), ' again'])
      if (width.aim > width.edge)
        says.push(['another may be up to ', of(width.aim), ' wide', ...groove, '; plan again with it'])
    } else says.push([width.drawn === null ? '' : 'aim at ', of(width.aim), ' wide', ...groove])
  }
  if (cornerRadius !== null) says.push(['corners rounded to ', of(cornerRadius)])
  if (nose !== null) says.push(nose > 0 ? ['nose flat ', of(nose), ' wide, no wider'] : ['a keen point, only stoned'])
  return says
}

const why = ({ width, severalPlaces }: GrindFacts): string => {
  if (severalPlaces) return ': cut in several places'
  return width !== null && width.drawn !== null && width.aim < width.drawn
    ? ': a little under, for one part'
    : ': on size, for repeat work'
}

const endRelief = ({ endRelief: { use, ground, tilted }, holderAngle, measured }: GrindFacts): Phrase[] => {
  if (holderAngle !== 0)
    return [
      [...angles(use), ' in use; the holder tilts the bit ', angle(holderAngle)],
      ['GRIND ', ...angles(ground)],
    ]
  return [
    ['GRIND ', ...angles(ground), ', the same in use: the bit lies level, as in a quick-change block'],
    ...(measured ? [] : [['in a holder that tilts the bit ', angle(tilted[0] - use[0]), ' grind ', ...angles(tilted)]]),
  ]
}

const sides = ({ sides: { relief, reliefInUse, back, backInUse } }: GrindFacts): Phrase[] => [
  ['relief ', ...angles(relief), '; in use ', ...angles(reliefInUse)],
  ...(back === null || backInUse === null
    ? [['the flanks widen going back: no clearance behind them but their relief']]
    : [['clearance ', ...angles(back), ' back from the edge; in use ', ...angles(backInUse)]]),
]

const reach = ({ form, rakeInUse }: GrindFacts, units: Units): Phrase[] => [
  ['relieve the sides ', ...lengths(form.sidesReach, units), ' back along the face and no further'],
  ...(form.shoulder > 0
    ? [['that is past the step close by, ', length('depth', form.shoulder, units), ' higher than the surface']]
    : []),
  ...(rakeInUse === 0
    ? [['the form itself takes ', length('depth', form.face, units), ' of it, its depth']]
    : [
        [
          'the form itself takes ',
          length('depth', form.face, units),
          ' of it, for ',
          length('depth', form.depth, units),
          ' of depth',
        ],
      ]),
  [length('depth', form.squareToFront, units), ' where it is measured square to the front'],
]

const rake = ({ rakeAdvice: advice, rakeGround, rakeInUse, holderAngle }: GrindFacts): Phrase[] => [
  [
    ...topWords(rakeGround),
    '; in use ',
    angle(rakeInUse),
    ...(holderAngle === 0 ? [] : [', with the tilt of the holder']),
  ],
  advice.forming === null
    ? [`a soft metal bears more rake than steel (${advice.formingSource})`]
    : [`this metal is formed with `, ...angles(advice.forming), ` (${advice.formingSource})`],
  ...(advice.turning === null || advice.turningSource === null
    ? []
    : [['a plain turning tool has ', ...angles(advice.turning), ` (${advice.turningSource})`]]),
]

const gauge = ({ gauge: leaf, shape }: GrindFacts, units: Units): Phrase[] => {
  if (leaf === null) return []
  const radius = leaf.radius + leaf.off
  const name = called('instrument', leaf.label, leaf.radius, units)
  if (Math.abs(leaf.off) > radius / 10)
    return [['no leaf is near: the nearest of the sets is ', name, '; look at the radius under a glass'], [leaf.source]]
  const off: Phrase =
    Math.abs(leaf.off) < 1
      ? [': the radius itself']
      : [': the radius is ', length('clearance', Math.abs(leaf.off), units), leaf.off > 0 ? ' larger' : ' smaller']
  return [['radius gauge ', name, ` ${SHAPE_WORDS[shape].gaugeAt}, held to the light`, ...off], [leaf.source]]
}

const protractor = ({ endRelief: { ground }, sides, form }: GrindFacts): Phrase[] => [
  ['front ', angle(90 - ground[1]), ' to ', angle(90 - ground[0]), ' from the bottom of the bit'],
  ['sides ', angle(90 - sides.relief[1]), ' to ', angle(90 - sides.relief[0]), ' from the bottom'],
  ...(form.vee !== null
    ? [
        [
          'each flank ',
          angle(form.vee.ground),
          ' from the side of the bit, on the face; ',
          angle(2 * form.vee.ground),
          ' between them',
        ],
      ]
    : []),
]
