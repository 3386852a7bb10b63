import type { StepCuts } from '../moves/cuts.ts'
import { about, say } from '../phrase/say.ts'
import { INCH, type Length, MM } from '../units/length.ts'
import type { Request, Sequenced } from './request.ts'
import { type StepPlaces, stepPlaces } from './steps-places.ts'

/** Nobody follows a longer table of places without a mistake: common practice, no source. */
export const MOST_PLACES = 150

/** The remedy names a cusp that was tried. */
export function tooManyPlaces(request: Request, cuts: StepCuts, { counts }: StepPlaces): Sequenced {
  const { lathe, units } = request
  const quantum = units === 'inch' ? INCH / 10_000 : MM / 1000
  const dials = { along: lathe.compound.scale, inward: lathe.crossFeed }
  let cusp = cuts.cusp
  let fewer = counts.length
  while (fewer > MOST_PLACES && cusp < 100 * cuts.cusp) {
    cusp = Math.ceil((cusp * 1.5) / quantum - 1e-9) * quantum
    fewer = stepPlaces({ ...cuts, cusp }, dials).counts.length
  }
  const show = (length: Length) => about('planned', length, units, units === 'inch' ? 4 : 3)
  return {
    ok: false,
    code: 'too-many-places',
    reason: say`to leave no ridge over ${show(cuts.cusp)} the tool would step to ${counts.length} places, more than ${MOST_PLACES}`,
    ...(fewer > MOST_PLACES
      ? { remedy: 'grind a form tool, or take a rounder one' }
      : {
          offers: [{ say: say`allow a taller ridge (cusp: ${show(cusp)} takes ${fewer} places)`, change: { cusp } }],
          remedy: 'grind a form tool',
        }),
  }
}

export function cuspNotKept(request: Request, places: StepPlaces): Sequenced {
  const show = (length: Length) => about('planned', length, request.units, 4)
  const last = request.units === 'inch' ? INCH / 10_000 : MM / 10_000
  const cusp = Math.ceil(places.exact / last) * last
  return {
    ok: false,
    code: 'cusp-not-kept',
    reason: say`the marks of the compound are too far apart on the steep end of this form: whole marks leave ridges of ${show(places.exact)}`,
    offers: [{ say: say`allow that cusp (cusp: ${show(cusp)})`, change: { cusp } }],
    remedy: 'take a larger tool, or a compound that reads finer',
  }
}

export const swung = (): Sequenced => ({
  ok: false,
  code: 'compound-swung',
  reason: 'stepping along a round form needs the compound parallel: both dials must move square to each other',
  offers: [
    { say: 'set the compound parallel for this feature (compound: { angle: 0 })', change: { compoundAngle: 0 } },
  ],
  remedy: 'grind a form tool',
})
