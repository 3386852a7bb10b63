import { angleFigure } from '../phrase/dimensions.ts'
import { length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import type { Length } from '../units/length.ts'
import { INCH, MM } from '../units/length.ts'
import type { Scene, StepWords } from './scene.ts'

/** The tool in its holder: on center and square to the work, with the error on this form if it is not. */
export const fitTool = (scene: Scene): StepWords => {
  const { tool, edge } = scene.feature
  return {
    thing: 'TOOL',
    does: [`"${tool}" on center, square to the work`],
    effect: [],
    more: [
      [
        'stick the bit out no more than it must (the ground edge reaches ',
        length('tool', edge.reach, scene.units),
        ')',
      ],
      ...(firstTool(scene) ? [PINCHED] : []),
      ...offCenter(scene),
      ...askew(scene),
      ...rubbing(scene),
      // Before there is a zero that this would lose.
      [
        `power off: run each slide by hand over its travel, clear of ${IN_THE_WAY[scene.plan.part.held] ?? 'the chuck'}`,
      ],
    ],
  }
}

const IN_THE_WAY: Readonly<Record<string, string>> = {
  collet: 'the collet',
  'chuck and center': 'chuck and center',
  'between centers': 'dog and centers',
  mandrel: 'dog and centers',
}

/** Above center the surface of the work leans away from the machinist, and the rule with it. Printed once per sheet. */
const PINCHED: Phrase = [
  'a rule pinched lightly between nose and work is upright when on center; top toward you: low, away: high',
]

const firstTool = ({ plan, feature }: Scene): boolean =>
  plan.features.find(({ status }) => status === 'planned') === feature

/** About what a pinched rule shows. Common practice, no source. */
const offBy = ({ units }: Scene): Length => (units === 'inch' ? (15 * INCH) / 1000 : 0.4 * MM)

const offCenter = (scene: Scene): Phrase[] => {
  const off = offBy(scene)
  const { surface } = scene.feature.operation
  const bottom = bottomRadius(scene)
  if (bottom <= off) return []
  const shallow = shallowBy(off, surface / 2, bottom)
  const least = scene.units === 'inch' ? INCH / 10_000 : MM / 1000
  const says: Phrase =
    shallow < least / 2
      ? ['less than ', length('tool', least, scene.units)]
      : [length('depth', Math.round(shallow / least) * least, scene.units)]
  const turned = Math.max(1, Math.round((Math.asin(off / bottom) * 180) / Math.PI))
  return [
    [
      'off by ',
      length('tool', off, scene.units),
      ' it cuts ',
      ...says,
      ' shallow; high rubs, low drags (about ',
      angleFigure('tool', turned),
      ' of relief or rake gone)',
    ],
  ]
}

/**
 * An edge h above or below center touches a bar of radius R with the slide at √(R² − h²) from the axis; D further in it
 * cuts to ρ' = √((√(R² − h²) − D)² + h²) instead of ρ = R − D: shallow by nearly h²/2 · (1/ρ − 1/R), either way. By
 * Pythagoras.
 */
export const shallowBy = (off: Length, surface: Length, bottom: Length): Length => {
  const touch = Math.sqrt(surface ** 2 - off ** 2)
  return Math.hypot(touch - (surface - bottom), off) - bottom
}

/**
 * A blank that ends where its edge does bears against the whole face of the shoulder, far above the ground part. Common
 * practice, no source.
 */
const rubbing = (scene: Scene): Phrase[] => {
  const side = shoulderSide(scene)
  const { blank, edgeOffset, width } = scene.feature.edge
  if (side === null || blank === null || edgeOffset === null || width === null) return []
  const beside = side === 'tailstock' ? edgeOffset : blank - edgeOffset - width
  if (beside > INCH / 1000) return []
  return [[`relieve its ${side} side all the way up: the blank is flush there and rubs the whole face of the shoulder`]]
}

/** The side on which an edge of the form is on the face of a larger step. */
const shoulderSide = ({ plan: { part }, feature: { operation } }: Scene): 'headstock' | 'tailstock' | null => {
  const { from, to } = operation.region
  const larger = ({ measured }: (typeof part.steps)[number]) => measured > operation.surface
  if (part.steps.some((step) => step.from === to && larger(step))) return 'headstock'
  return part.steps.some((step) => step.to === from && larger(step)) ? 'tailstock' : null
}

const bottomRadius = ({ feature }: Scene): Length => {
  const bottom = feature.budget.find(({ id }) => id === 'bottomDiameter')
  if (bottom !== undefined && Number.isFinite(bottom.planned)) return bottom.planned / 2
  return feature.operation.surface / 2 - (feature.edge.radius ?? 0)
}

/** The effect of one degree askew; a round end is the same all round. */
const askew = ({ feature: { edge }, units }: Scene): Phrase[] => {
  const one = angleFigure('tool', 1)
  switch (edge.shape) {
    case 'square':
      return [
        [
          'square: the light even between edge and turned surface; ',
          one,
          ' askew tapers the floor ',
          length('depth', (edge.width ?? 0) * Math.tan(Math.PI / 180), units),
        ],
      ]
    case 'vee':
      return [['square: by a gauge against the turned surface; ', one, ' askew leans both flanks ', one, ' one way']]
    case 'corner':
      return [['square: its side along the face by eye and light; askew, the round meets one surface with a step']]
    default:
      return []
  }
}
