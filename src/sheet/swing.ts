import { angleFigure } from '../phrase/dimensions.ts'
import { length } from '../phrase/figure.ts'
import type { Phrase } from '../phrase/phrase.ts'
import { INCH, MM } from '../units/length.ts'
import type { Scene, StepWords } from './scene.ts'

/**
 * On the swivel scale of this lathe, and which way it is swung: a scale is marked alike on both sides of its 0, and the
 * wrong side cuts the wrong way. With θ from parallel a feed of C goes C·cos θ toward the headstock and C·sin θ into
 * the work; the other side of a 0 that is parallel is −θ, of one that is square 180° − θ.
 */
export const swing = (scene: Scene): StepWords => {
  const { angle } = scene.feature.operation
  const square = scene.plan.lathe.compound.scaleZero === 'square'
  const shown = angleFigure('angle', Math.abs(square ? 90 - angle : angle))
  return {
    thing: 'COMPOUND',
    does: ['set to ', shown, ` on its swivel scale (0 there is ${square ? 'square' : 'parallel'}), tighten`],
    effect: [],
    more: [...(square ? fromSquare(angle) : fromParallel(angle)), ...tried(scene)],
  }
}

/** Parallel or square does not depend on the marks of the swivel: the error budget assumes an indicator there. */
const tried = ({ plan, feature, units }: Scene): Phrase[] => {
  const { angle } = feature.operation
  // Snug slides for forming (War Department lathe manual, parting).
  if (angle !== 0 && angle !== 90) return [['its gib snug']]
  const over = units === 'inch' ? INCH : 25 * MM
  const step = units === 'inch' ? INCH / 2000 : MM / 100
  const off = Math.round((Math.tan((plan.lathe.accuracy.trued * Math.PI) / 180) * over) / step) * step
  const against = angle === 0 ? 'along a true bar' : 'on a true face'
  const each = units === 'inch' ? ' at most in an inch' : ' at most in 25 mm'
  return [[`by indicator ${against}: `, length('along', off, units), `${each}; its gib snug`]]
}

const fromParallel = (angle: number): Phrase[] => {
  if (angle === 0) return []
  if (angle === 90) return [[STRAIGHT_IN], ['on the other side of 0 it goes straight OUT: WRONG']]
  return angle > 0
    ? [[INTO], ['on the other side of 0 it goes OUT of the work: WRONG']]
    : [[OUT_OF], ['on the other side of 0 it goes INTO the work: WRONG']]
}

const fromSquare = (angle: number): Phrase[] => {
  if (angle === 90) return [[STRAIGHT_IN]]
  if (angle === 0)
    return [
      ['parallel with the ways'],
      ['so that feeding forward goes TOWARD THE HEADSTOCK'],
      ['on the other side of 0 it goes toward the tailstock: WRONG'],
    ]
  const from: Phrase = ['that is ', angleFigure('angle', Math.abs(angle)), ' from parallel']
  if (angle > 0) return [from, [INTO], ['on the other side of 0 it also goes in, but toward the tailstock: WRONG']]
  return [
    from,
    ...farSide(angle),
    [OUT_OF],
    ['on the other side of 0 it also goes out, but toward the tailstock: WRONG'],
    ['on the near side of ', angleFigure('angle', 90), ' it goes INTO the work: WRONG'],
  ]
}

/** Few swivels are marked past 90 from square: an angle past 90 is set on the far side, where the marks count back. */
const farSide = (angle: number): Phrase[] => [
  [
    'a scale that ends at ',
    angleFigure('angle', 90),
    ' or counts back from it: ',
    angleFigure('angle', 90 + angle),
    ' on the far side of ',
    angleFigure('angle', 90),
    ', ',
    angleFigure('angle', -angle),
    ' past it',
  ],
]

const INTO = 'so that feeding forward goes INTO the work and TOWARD THE HEADSTOCK'
const OUT_OF = 'so that feeding forward goes OUT of the work and TOWARD THE HEADSTOCK'
const STRAIGHT_IN = 'so that feeding forward goes straight INTO the work'
