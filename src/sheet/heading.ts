import type { Scale } from '../lathe/lathe.ts'
import { readable } from '../lathe/lathe.ts'
import { marksPerTurn, readingFigure } from '../phrase/dial.ts'
import { angleFigure } from '../phrase/dimensions.ts'
import { figure, identify, length } from '../phrase/figure.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { together } from '../phrase/say.ts'
import type { Plan } from '../plan/plan.ts'
import { carriageWords } from './carriage.ts'
import type { Planned } from './scene.ts'
import type { HeadingLine } from './sheet.ts'
import { noteOf, notes } from './sources.ts'

/** The block above a feature's steps: what is wanted, with which tool, on which dials. */
export const headingOf = (plan: Plan, feature: Planned, position: number): HeadingLine[] => {
  const carriage = carriageWords(plan, feature, scale)
  const { crossFeed, compound } = plan.lathe
  const surface: Phrase = [
    length('stock', feature.operation.surface, plan.units),
    ` diameter, ${stockWords(plan, feature)}`,
  ]
  const why: HeadingLine[] = feature.why === null ? [] : [{ about: 'why', label: 'Why', says: [[feature.why]] }]
  const along: HeadingLine[] = carriage === null ? [] : [{ about: 'carriage', label: 'Carriage', says: [carriage] }]
  const blocks: HeadingLine[] = [
    ...why,
    { about: 'drawn', label: 'Drawn', says: feature.drawn.map((each) => together([each])) },
    { about: 'surface', label: 'On', says: [surface] },
    { about: 'tool', label: 'Tool', says: tool(plan, feature) },
    { about: 'speed', label: 'Speed', says: speed(plan, feature) },
    { about: 'cross-feed', label: 'Cross-feed', says: [scale(crossFeed)] },
    { about: 'compound', label: 'Compound', says: [[...angle(plan, feature), '; ', ...scale(compound.scale)]] },
    ...along,
  ]
  return identified(`feature.${position + 1}`, blocks)
}

/** Whether anybody has measured the surface on which the dial is zeroed. */
const stockWords = ({ part }: Plan, { operation }: Planned): string => {
  const step = part.steps.find(({ from, to }) => operation.region.from >= from && operation.region.to <= to)
  return step?.measuredGiven === false ? 'as drawn: measure it first' : 'as measured'
}

/** The block at the head of the sheet: the part and the lathe. */
export const partHeading = (plan: Plan): HeadingLine[] => {
  const { part, units, lathe } = plan
  const steps = part.steps.map((step): Phrase => {
    const measured: Phrase =
      step.measured === step.diameter ? [] : [' (measures ', length('stock', step.measured, units), ')']
    return [
      `${step.name}: `,
      length('stock', step.diameter, units),
      ' dia',
      ...measured,
      ', from ',
      length('stock', step.from, units),
      ' to ',
      length('stock', step.to, units),
    ]
  })
  return identified('part', [
    { about: 'material', label: 'Material', says: [[part.material]] },
    { about: 'held', label: 'Held', says: [held(plan)] },
    { about: 'part', label: 'Part', says: steps },
    { about: 'lathe', label: 'Lathe', says: [[lathe.name]] },
    {
      about: 'units',
      label: 'Units',
      says: [
        [
          units === 'inch'
            ? 'inches; distances along the work are from the free end'
            : 'millimeters; distances along the work are from the free end',
        ],
      ],
    },
    ...(lathe.crossFeed.kind === 'dial' || lathe.compound.scale.kind === 'dial' ? [DIALS] : []),
    ...sources(plan),
  ])
}

/** The notes at the foot of the sheet. */
const sources = (plan: Plan): HeadingLine[] => {
  const says = notes(plan)
  return says.length === 0 ? [] : [{ about: 'sources', label: 'Sources', says }]
}

const DIALS: HeadingLine = {
  about: 'dials',
  label: 'Dials',
  says: [
    [
      'turns and marks count from the set 0, whatever the dial shows there: "to\u00a01\u00a0turn\u00a0and\u00a025" is the mark 25 after one whole turn from 0',
    ],
  ],
}

/** Between centers there is no overhang, and a dog drives the work. */
const held = ({ part, units }: Plan): Phrase => {
  if (part.held === 'between centers')
    return part.dog === undefined
      ? [part.held]
      : [part.held, ', the dog takes ', length('stock', part.dog, units), ' of the headstock end']
  if (part.held === 'mandrel') return ['on a mandrel between centers']
  return [`${part.held}, `, length('stock', part.overhang, units), ' out']
}

const identified = (place: string, blocks: readonly HeadingLine[]): HeadingLine[] =>
  blocks.map(({ says, ...block }) => ({
    ...block,
    says: says.map((phrase, i) => identify(`${place}.${block.about}.${i + 1}`, phrase)),
  }))

const tool = (plan: Plan, feature: Planned): Phrase[] => {
  const { edge, undersize } = feature
  const of = (value: number) => length('tool', value, plan.units)
  const sizes: Phrase = [
    ...(edge.width === null ? [] : [', ', of(edge.width), ' wide']),
    ...(edge.radius === null ? [] : [', radius ', ...onFace(edge.radius, edge.face?.radius, of)]),
    ...(edge.face?.leg === undefined ? [] : [', stretched to ', of(edge.face.leg), ' down its face']),
    ...(edge.angle === null ? [] : [', ', ...onFace(edge.angle, edge.face?.angle, angleOf, ' included')]),
    ...(edge.nose === null ? [] : [', nose ', of(edge.nose)]),
  ]
  const how = edge.measured ? ' as measured' : ' TO BE GROUND'
  const under: Phrase =
    undersize === null || undersize === 0
      ? []
      : [': ', length('undersize', Math.abs(undersize), plan.units), undersize > 0 ? ' under' : ' over']
  const blank: Phrase = edge.blank === null ? [] : [', blank ', of(edge.blank)]
  return [
    [`"${feature.tool}", ${edge.shape}`, ...sizes, how, ...under],
    ['reach ', of(edge.reach), ...blank, ', rake in use ', angleFigure('tool', edge.rakeInUse)],
  ]
}

/** With rake in use: the size gauged on the face, and the size in the work. */
const onFace = (inWork: number, face: number | null | undefined, of: (value: number) => Figure, word = ''): Phrase =>
  face == null || face === inWork
    ? [of(inWork), word]
    : [of(face), `${word} on its face (`, of(inWork), ' in the work)']

const angleOf = (degrees: number): Figure => angleFigure('tool', degrees)

const speed = (plan: Plan, feature: Planned): Phrase[] => {
  const { spindle } = feature
  const rpm = figure('speed', spindle.rpm, 'rpm')
  const wanted = figure('speed', Math.round(spindle.wanted), 'rpm')
  const factor: Phrase =
    spindle.factor === 1 ? [] : [' x ', figure('speed', spindle.factor, 'count', 2), ' for a form tool']
  const why: Phrase = [
    `${plan.part.material}, `,
    figure('speed', spindle.cuttingSpeed, spindle.speedUnits),
    ...factor,
    ' ',
    ...noteOf(plan, spindle.source),
    ': ',
    wanted,
    ' rpm wanted',
  ]
  if (spindle.tooFast) return [[rpm, ' rpm: LOWEST AVAILABLE, TOO FAST: do not form at this speed'], why]
  if (spindle.rpm > spindle.wanted) return [[rpm, ' rpm, the lowest of this lathe; ', ...over(spindle)], why]
  return [[rpm, ' rpm, the nearest of this lathe that is not faster'], why]
}

/** How much too fast, compared with the speed before it was rounded. */
const over = ({ rpm, wanted }: Planned['spindle']): Phrase => [
  figure('speed', Number((100 * (rpm / wanted - 1)).toPrecision(2)), 'count', 2),
  ' % over the ',
  figure('speed', Number(wanted.toPrecision(4)), 'rpm', 2),
  ' wanted',
]

const scale = (of: Scale): Phrase => {
  if (of.kind === 'readout')
    return ['readout, steps of ', { ...readingFigure(of, of.resolution), role: 'dial' }, ', reads ', sense(of)]
  const half: Phrase = of.readTo === 1 ? [] : [', read to ', { ...readingFigure(of, readable(of)), role: 'dial' }]
  return [
    'marks of ',
    { ...readingFigure(of, of.graduation), role: 'dial' },
    ', ',
    figure('dial', marksPerTurn(of), 'count'),
    ' a turn',
    ...half,
    ', reads ',
    sense(of),
    ', backlash ',
    { ...readingFigure(of, of.backlash), role: 'backlash' },
  ]
}

const sense = (of: Scale): string => (of.reads === 'diameter' ? 'DIAMETER' : 'depth')

const angle = (plan: Plan, feature: Planned): Phrase => {
  const degrees = feature.operation.angle
  if (degrees === 0) return ['parallel']
  const square = plan.lathe.compound.scaleZero === 'square'
  return [
    'at ',
    angleFigure('angle', degrees),
    ' from parallel',
    ...(square ? [' (', angleFigure('angle', 90 - degrees), ' on its scale)'] : []),
  ]
}
