import * as z from 'zod/mini'
import type { AsRead, Given } from '../diagnostics/given.ts'
import type { Dimension } from '../units/dimension.ts'
import { angle, byDefault, choice, dimension, length, text } from '../units/measure-schema.ts'
import type { Cutting, Place } from './feature.ts'

const cuttingKeys = {
  leave: byDefault(
    'the smaller of 0.020 in (0.5 mm) and a quarter of the depth, and no more than infeed',
    length('Left on the floor for the finish pass.', 0.01, 'zero or more'),
  ),
  'leave-sides': byDefault(
    '0; for a V with a flat root, and for walls that are plunged, 0.003 in (0.08 mm); by a rough-tool 0.015 in (0.4 mm)',
    length('Left on each wall for the finish pass.', 0.005, 'zero or more'),
  ),
  infeed: byDefault(
    'all at once; for a V 0.060 in (1.5 mm), for a corner 0.005 in (0.12 mm), for a form stepped along 0.020 in (0.5 mm)',
    length('Largest infeed of one pass.', 0.04),
  ),
  peck: byDefault(
    'the width of the tool, where a straight-sided plunge is more than a quarter deeper than that',
    length('How deep one plunge goes before the tool is drawn out to clear the chip.', 0.06),
  ),
  clear: byDefault(
    '0.030 in (0.75 mm)',
    length('How far the tool backs out of the largest diameter that it passes, the backlash besides.', 0.05),
  ),
  overlap: byDefault(
    'a tenth of the width of the tool',
    length('How far neighboring plunges overlap.', 0.02, 'zero or more'),
  ),
  'speed-factor': byDefault(
    '0.5',
    z
      .number()
      .check(z.gt(0))
      .register(z.globalRegistry, {
        description: 'Spindle speed as a part of that of plain turning.',
        examples: [0.4],
      }),
  ),
  cusp: byDefault(
    '0.0005 in (0.01 mm); with a sharp square tool, to be filed, 0.003 in (0.08 mm)',
    length('Tallest ridge left where a tool steps along a round form.', 0.001),
  ),
  'side-feed': byDefault(
    'compound',
    choice(
      'What moves the tool along the work: compound; carriage, by its dial or its indicator; or lines, the carriage to the scribed lines by eye.',
      ['compound', 'lines', 'carriage'],
    ),
  ),
  compound: byDefault(
    'as it usually stands: angle of the compound of the lathe',
    z
      .strictObject({ angle: angle('Degrees from parallel with the ways.', "5° 44'", -90, 90, true) })
      .register(z.globalRegistry, {
        description: 'How the compound is swung for this cut.',
        title: 'compound setting',
        examples: [{ angle: 30 }],
      }),
  ),
  order: byDefault(
    'the order that changes tool and compound least, from the free end on',
    z
      .number()
      .check(z.gt(0), z.multipleOf(1))
      .register(z.globalRegistry, { description: 'Place of the feature in the order of work, from 1.', examples: [1] }),
  ),
}

export const cuttingSchema = z.strictObject(cuttingKeys).register(z.globalRegistry, {
  description: 'How to cut. Every depth here is travel of the slide, never diameter.',
  title: 'cutting',
  examples: [{ leave: 0.01, infeed: 0.04 }],
})

/**
 * Keys that every kind of feature has. Cutting keys may be beside them or grouped under `cutting`, as for the whole
 * job.
 */
export const commonFeatureKeys = {
  name: byDefault('its kind and a number', text('What the sheet calls the feature.', 'Thread-relief groove')),
  why: z.optional(text('What it is for; printed on the sheet.', 'clearance for the die at the end of the thread')),
  tool: byDefault('a tool to be ground, described on the sheet', text('Name of a tool in the toolbox.', 'neck')),
  cutting: byDefault('as for the whole job', cuttingSchema),
  ...cuttingKeys,
}

/** Of forms that a wide edge would cut all at once. */
export const roughToolKey = {
  'rough-tool': byDefault(
    'its own tool roughs it',
    text(
      'Name of a square tool, or under a V also of a V tool with no more angle, that takes most of the metal out in steps before its own tool finishes it.',
      'neck',
    ),
  ),
}

/** Where a feature is along the work. */
export const placeKeys = {
  from: byDefault(
    'end',
    text('Where the distance starts: end, or the name of a step for its tailstock-side end.', 'body'),
  ),
  near: z.optional(
    dimension(
      'Where its tailstock side is, a distance toward the headstock. One of near, far and center.',
      1.125,
      'any',
    ),
  ),
  far: z.optional(
    dimension(
      'Where its headstock side is, a distance toward the headstock. One of near, far and center.',
      '1 1/2',
      'any',
    ),
  ),
  center: z.optional(
    dimension(
      'Where its middle is, a distance toward the headstock. One of near, far and center.',
      '1 1/4 ±0.020',
      'any',
    ),
  ),
}

type Cuts = AsRead<z.output<typeof cuttingSchema>>
type Places = {
  readonly from?: string | undefined
  readonly near?: Dimension | undefined
  readonly far?: Dimension | undefined
  readonly center?: Dimension | undefined
}

/** The feature's own keys override those of the job. */
export const mergeCutting = (job: Cuts | undefined, own: Cuts): Cutting => {
  const of = <K extends keyof Cuts>(key: K) => own[key] ?? job?.[key] ?? null
  return {
    leave: of('leave'),
    leaveSides: of('leave-sides'),
    infeed: of('infeed'),
    peck: of('peck'),
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
      'nothing says where it is',
      'give one of near (tailstock side), far (headstock side) and center',
    )
  else if (second !== undefined)
    given.report(
      second,
      'too-many-keys',
      `${ways.join(' and ')} together say twice where it is`,
      'keep one of near, far and center',
    )
  const distance = by && given.values[by]
  return distance ? { by, distance, from: given.values.from ?? 'end' } : null
}

/** At most one of depth and bottom-diameter; exactly one if the kind needs it. */
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
