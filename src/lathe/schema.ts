import * as z from 'zod/mini'
import { angle, angleFromZero, choice, length, text } from '../units/measure-schema.ts'

/** Parts of a graduation that can be judged by eye, as they may be written. */
export const READ_TO = [1, '1/2', '1/4', '1/5', '1/10', 0.5, 0.25, 0.2, 0.1] as const

const scale = {
  graduation: z.optional(length('What one mark of the dial stands for.')),
  'per-turn': z.optional(length('What one whole turn of the dial stands for: a whole number of graduations.')),
  backlash: z.optional(
    length(
      'Lost motion of the screw as counted on this dial; the sheet is proved for everything from 0 to this.',
      'zero or more',
    ),
  ),
  'read-to': z.optional(
    z.literal([...READ_TO]).register(z.globalRegistry, {
      description: 'The part of a graduation that can be judged by eye: 1, 1/2, 1/4, 1/5 or 1/10.',
    }),
  ),
  readout: z.optional(length('Resolution of a digital readout, given instead of graduation, per-turn and backlash.')),
}

/** What no longer fits once a key is given: a readout has no marks and turns, an indicator has nothing but its range. */
export const NOT_BESIDE: Readonly<Record<string, readonly string[]>> = {
  readout: ['graduation', 'per-turn', 'backlash', 'read-to', 'indicator', 'range'],
  indicator: ['graduation', 'per-turn', 'backlash', 'read-to', 'readout'],
  graduation: ['readout', 'indicator', 'range'],
}

export const crossFeedSchema = z
  .strictObject({
    ...scale,
    reads: z.optional(
      choice('What the dial shows: depth (slide travel, the default) or diameter (the change of the work).', [
        'depth',
        'diameter',
      ]),
    ),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the cross-feed; positive is in, toward the axis.',
    title: 'cross-feed',
  })

export const compoundSchema = z
  .strictObject({
    ...scale,
    angle: z.optional(
      angle('Degrees from parallel with the ways: 0 (the default) is parallel, 90 square.', -90, 90, true),
    ),
    travel: z.optional(length('Greatest less smallest reading the slide can reach.')),
    'scale-zero': z.optional(
      choice('How the swivel scale of this lathe is marked: from parallel (the default) or from square.', [
        'parallel',
        'square',
      ]),
    ),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the compound slide; positive is forward.',
    title: 'compound',
  })

export const carriageSchema = z
  .strictObject({
    ...scale,
    indicator: z.optional(
      length('Resolution of a dial indicator that bears on the carriage, given instead of a dial; its range with it.'),
    ),
    range: z.optional(length('How far the plunger of the indicator follows the carriage.')),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the carriage, or an indicator on it; positive is toward the headstock.',
    title: 'carriage',
  })

export const accuracySchema = z
  .strictObject({
    reading: z.optional(length('Reading a dial; by default half of what can be read on it.', 'zero or more')),
    'touch-off': z.optional(length('Touching the work; by default 0.001 in or 0.02 mm.', 'zero or more')),
    layout: z.optional(length('A scribed line; by default 0.005 in or 0.1 mm.', 'zero or more')),
    tool: z.optional(length('Measuring the tool; by default 0.0005 in or 0.01 mm.', 'zero or more')),
    stock: z.optional(length('Measuring the stock; by default 0.0005 in or 0.01 mm.', 'zero or more')),
    runout: z.optional(length('Runout of the spindle; by default 0.', 'zero or more')),
    swivel: z.optional(
      angleFromZero('Setting the compound to an angle by the marks of its swivel; by default half a degree.', 10),
    ),
    trued: z.optional(
      angleFromZero(
        'A compound set parallel or square and tried with an indicator; by default 0.05 degrees, a thousandth to the inch.',
        10,
      ),
    ),
    'tool-angle': z.optional(
      angleFromZero('The included angle of a V tool, by protractor; by default half a degree.', 10),
    ),
  })
  .register(z.globalRegistry, {
    description: 'What the machinist cannot help, each as plus or minus.',
    title: 'accuracy',
  })

const UNITS = ['inch', 'mm'] as const

const latheKeys = {
  name: text('What the shop calls the lathe.', 'Bench lathe'),
  'cross-feed': crossFeedSchema,
  compound: compoundSchema,
  carriage: z.optional(carriageSchema),
  'spindle-speeds': z
    .array(z.number().check(z.gt(0)).register(z.globalRegistry, { description: 'Turns a minute.' }))
    .check(z.minLength(1))
    .register(z.globalRegistry, { description: 'Every speed of the spindle, turns a minute.' }),
  'jaw-clearance': z.optional(
    length('How far tool and slides stay from the jaws; by default 1/4 in or 6 mm.', 'zero or more'),
  ),
  accuracy: z.optional(accuracySchema),
}
const described = {
  description: 'A manual lathe: its dials, speeds and what can be held on it.',
  title: 'lathe',
}

/** A lathe inside a job. */
export const latheSchema = z
  .strictObject({
    units: z.optional(choice('Meaning of bare numbers here; by default the units of the job.', UNITS)),
    ...latheKeys,
  })
  .register(z.globalRegistry, described)

/** A lathe in a file of its own: it serves jobs in inches and in millimeters, so it must not take its meaning from the job. */
export const latheFileSchema = z
  .strictObject({ units: choice('Meaning of bare numbers in this file, whatever the job is in.', UNITS), ...latheKeys })
  .register(z.globalRegistry, described)
