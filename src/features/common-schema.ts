import * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Dimension } from '../units/dimension.ts'
import { angle, choice, dimension, length, text } from '../units/measure-schema.ts'
import type { Cutting, Place } from './feature.ts'

const cuttingKeys = {
  leave: z.optional(
    length(
      'Left on the floor for the finish pass; by default the smaller of 0.020 in and a quarter of the depth.',
      'zero or more',
    ),
  ),
  'leave-sides': z.optional(length('Left on each wall for the finish pass; by default 0.', 'zero or more')),
  infeed: z.optional(length('Largest infeed of one pass.')),
  clear: z.optional(length('How far the tool backs out of the surface.')),
  overlap: z.optional(
    length('How far neighboring passes overlap; by default a tenth of the width of the tool.', 'zero or more'),
  ),
  'speed-factor': z.optional(
    z.number().check(z.gt(0)).register(z.globalRegistry, {
      description: 'Spindle speed as a part of plain turning; by default one half for form tools.',
    }),
  ),
  cusp: z.optional(length('Largest ridge left between the steps of a round form; by default 0.0005 in or 0.01 mm.')),
  'side-feed': z.optional(
    choice(
      'What moves the tool along the work: compound (the default), carriage by its dial or indicator, or the carriage to the scribed lines by eye.',
      ['compound', 'carriage', 'lines'],
    ),
  ),
  compound: z.optional(
    z.strictObject({ angle: angle('Degrees from parallel with the ways.', -90, 90, true) }).register(z.globalRegistry, {
      description: 'How the compound is swung for this cut.',
      title: 'compound setting',
    }),
  ),
  order: z.optional(
    z
      .number()
      .check(z.gt(0), z.multipleOf(1))
      .register(z.globalRegistry, { description: 'Place in the order of the operations, counted from 1.' }),
  ),
}

export const cuttingSchema = z.strictObject(cuttingKeys).register(z.globalRegistry, {
  description: 'How to cut. Every depth here is slide travel, never diameter.',
  title: 'cutting',
})

/** Keys that every kind of feature has. How to cut may be said beside them or gathered under `cutting`, as for the whole job. */
export const commonFeatureKeys = {
  name: z.optional(text('What the sheet calls the feature.', 'Thread-relief groove')),
  why: z.optional(text('What it is for; printed on the sheet.', 'clearance for the die at the end of the thread')),
  tool: z.optional(text('Name of a tool in the toolbox; without it the sheet says what to grind.', 'neck')),
  cutting: z.optional(cuttingSchema),
  ...cuttingKeys,
}

/** Where a feature stands along the work. */
export const placeKeys = {
  from: z.optional(
    text(
      '"end" (the default) or the name of a step: its tailstock-side end. Distances run toward the headstock.',
      'end',
    ),
  ),
  near: z.optional(dimension('Distance to the tailstock side. One of near, far and center.', 'any')),
  far: z.optional(dimension('Distance to the headstock side. One of near, far and center.', 'any')),
  center: z.optional(dimension('Distance to the middle. One of near, far and center.', 'any')),
}

type Cuts = AsRead<z.output<typeof cuttingSchema>>
type Places = {
  readonly from?: string | undefined
  readonly near?: Dimension | undefined
  readonly far?: Dimension | undefined
  readonly center?: Dimension | undefined
}

/** The feature's own keys over those of the job. */
export const mergeCutting = (job: Cuts | undefined, own: Cuts): Cutting => {
  const of = <K extends keyof Cuts>(key: K) => own[key] ?? job?.[key] ?? null
  return {
    leave: of('leave'),
    leaveSides: of('leave-sides'),
    infeed: of('infeed'),
    clear: of('clear'),
    overlap: of('overlap'),
    speedFactor: of('speed-factor'),
    cusp: of('cusp'),
    sideFeed: of('side-feed') ?? 'compound',
    compoundAngle: of('compound')?.angle ?? null,
    order: of('order'),
  }
}

/** Exactly one of near, far and center. */
export const readPlace = (given: Given<Places>): Place | null => {
  const ways = (['near', 'far', 'center'] as const).filter((key) => given.has(key))
  const [by, second] = ways
  if (by === undefined)
    given.report(
      null,
      'missing-key',
      'nothing says where it stands',
      'give one of near (tailstock side), far (headstock side) and center',
    )
  else if (second !== undefined)
    given.report(
      second,
      'too-many-keys',
      `${ways.join(' and ')} together say twice where it stands`,
      'keep one of near, far and center',
    )
  const distance = by && given.values[by]
  return distance ? { by, distance, from: given.values.from ?? 'end' } : null
}

/** At most one of depth and bottom-diameter; exactly one where the kind needs it. */
export const depthOrBottom = (
  given: Given<{ readonly depth?: Dimension | undefined; readonly 'bottom-diameter'?: Dimension | undefined }>,
  needed: boolean,
): void => {
  const [depth, bottom] = [given.has('depth'), given.has('bottom-diameter')]
  if (depth && bottom)
    given.report(
      'bottom-diameter',
      'too-many-keys',
      'depth and bottom-diameter together say twice how deep it is',
      'keep one of the two',
    )
  if (needed && !depth && !bottom)
    given.report(null, 'missing-key', 'nothing says how deep it is', 'give depth or bottom-diameter')
}
