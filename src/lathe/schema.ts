import * as z from 'zod/mini'
import { angle, angleFromZero, byDefault, choice, length, text } from '../units/measure-schema.ts'
import { INSTRUMENT_NAMES } from './instruments.ts'

/** The parts of a graduation that can be judged by eye, in the ways they may be written. */
const READ_TO = [1, '1/2', '1/4', '1/5', '1/10', 0.5, 0.25, 0.2, 0.1] as const

const scale = {
  graduation: z.optional(
    length(
      'What one mark of the dial stands for. A dial has graduation, per-turn and backlash, a readout none of them.',
      0.001,
    ),
  ),
  'per-turn': z.optional(length('What one whole turn of the dial stands for: a whole number of graduations.', 0.1)),
  backlash: z.optional(
    length(
      'Lost motion of the screw as counted on this dial. Give a little more than you find: every amount from 0 to it is checked.',
      0.008,
      'zero or more',
    ),
  ),
  'read-to': byDefault(
    '1, whole marks',
    z.literal([...READ_TO]).register(z.globalRegistry, {
      description: 'The part of a mark that you trust your eye with: 1, 1/2, 1/4, 1/5 or 1/10.',
      examples: ['1/2'],
    }),
  ),
  readout: z.optional(
    length('Resolution of a digital readout, given instead of graduation, per-turn and backlash.', 0.0005),
  ),
}

/** Keys that make no sense beside a given key: a readout has no marks and turns, an indicator has only its range. */
export const NOT_BESIDE: Readonly<Record<string, readonly string[]>> = {
  readout: ['graduation', 'per-turn', 'backlash', 'read-to', 'indicator', 'range'],
  indicator: ['graduation', 'per-turn', 'backlash', 'read-to', 'readout'],
  graduation: ['readout', 'indicator', 'range'],
}

const DIAL = { graduation: 0.001, 'per-turn': 0.1, backlash: 0.006 }

export const crossFeedSchema = z
  .strictObject({
    ...scale,
    reads: byDefault(
      'depth',
      choice('What the dial shows: depth (travel of the slide) or diameter (the change of the work).', [
        'depth',
        'diameter',
      ]),
    ),
    stop: byDefault(
      'false: the spindle is stopped where turns would be counted toward the work',
      z.boolean().register(z.globalRegistry, {
        description: 'The slide has a stop that can be set where it stands, to come back in against.',
        examples: [true],
      }),
    ),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the cross-feed; positive is in, toward the axis.',
    title: 'cross-feed',
    examples: [{ ...DIAL, reads: 'diameter' }],
  })

export const compoundSchema = z
  .strictObject({
    ...scale,
    angle: byDefault(
      '0',
      angle(
        'Where the compound usually stands, degrees from parallel with the ways: 0 is parallel, 90 square.',
        30,
        -90,
        90,
        true,
      ),
    ),
    travel: byDefault('not checked', length('Greatest less smallest reading the slide can reach.', 2.5)),
    'scale-zero': byDefault(
      'parallel',
      choice('How the swivel scale of this lathe is marked, from parallel or from square: the sheet tells angles so.', [
        'parallel',
        'square',
      ]),
    ),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the compound slide; positive is forward.',
    title: 'compound',
    examples: [{ ...DIAL, travel: 2.5 }],
  })

export const carriageSchema = z
  .strictObject({
    ...scale,
    indicator: z.optional(
      length(
        'Resolution of a dial indicator that bears on the carriage, given instead of a dial; its range with it.',
        0.001,
      ),
    ),
    range: z.optional(length('How far the plunger of the indicator follows the carriage.', 1)),
  })
  .register(z.globalRegistry, {
    description: 'The dial of the carriage, or an indicator on it; positive is toward the headstock.',
    title: 'carriage',
    examples: [{ indicator: 0.001, range: 1 }],
  })

const error = (says: string, say: string, example: string | number) =>
  byDefault(says, length(say, example, 'zero or more'))

const accuracySchema = z
  .strictObject({
    reading: error(
      'half of what can be read on it; of the carriage never less',
      'Reading a dial, as that dial shows it: on one that reads diameter half of that in travel.',
      0.0005,
    ),
    'touch-off': error('0.001 in (0.02 mm)', 'Touching the work with the tool.', 0.0005),
    layout: error('0.005 in (0.1 mm)', 'Bringing the tool to a scribed line.', 0.003),
    tool: error('0.0005 in (0.01 mm)', 'Measuring the tool.', 0.001),
    stock: error('0.0005 in (0.01 mm)', 'Measuring the stock.', 0.001),
    runout: error('0', 'Runout of the spindle.', 0.0005),
    swivel: byDefault(
      'half a degree',
      angleFromZero('Degrees: setting the compound to an angle by the marks of its swivel.', 0.25, 10),
    ),
    trued: byDefault(
      '0.05 degrees, a thousandth to the inch',
      angleFromZero('Degrees: a compound set parallel or square and tried with an indicator.', 0.02, 10),
    ),
    'tool-angle': byDefault(
      'half a degree',
      angleFromZero('Degrees: the included angle of a V tool, by protractor. A tool may say otherwise.', 0.25, 10),
    ),
  })
  .register(z.globalRegistry, {
    description: 'What nobody can help, each as plus or minus.',
    title: 'accuracy',
    examples: [{ 'touch-off': 0.0005, layout: 0.003 }],
  })

const sure = (inch: string, mm: string, say: string, example: string | number) =>
  byDefault(`${inch} (${mm})`, length(say, example))

const instrumentsSchema = z
  .strictObject({
    rule: sure('1/64 in', '0.5 mm', 'A steel rule: one of its marks (Introduction to Machining, 5.4).', '1/32'),
    caliper: sure(
      '0.001 in',
      '0.03 mm',
      'A caliper outside: US Army TB 9-5210-208-35, for the first 6 in; DIN 862 has 0.02 mm.',
      0.002,
    ),
    'inside-caliper': sure(
      '0.002 in',
      '0.05 mm',
      'The same caliper inside a groove, and its depth rod: DIN 862 adds 0.02 mm for both.',
      0.003,
    ),
    micrometer: sure(
      '0.0005 in',
      '0.01 mm',
      'An outside micrometer: half a mark of 0.001 in, one mark of 0.01 mm; the instrument itself is within 0.004 mm (DIN 863).',
      0.0002,
    ),
    'blade-micrometer': sure(
      '0.0005 in',
      '0.01 mm',
      'A micrometer with blades, tried on a pin: they wear hollow on round work (an instrument supplier).',
      0.001,
    ),
    'depth-micrometer': sure(
      '0.001 in',
      '0.02 mm',
      'A depth micrometer, its base on round work: common practice, no source.',
      0.0005,
    ),
    'depth-indicator': sure(
      '0.001 in',
      '0.02 mm',
      'A dial indicator with a needle point on a base: one mark in its first turns (AGD rule, by a gauge maker).',
      0.0005,
    ),
    'gauge-blocks': sure(
      '0.0005 in',
      '0.01 mm',
      'Gauge blocks or feelers, by their fit: the blocks are within 0.001 mm (DIN 861, ISO 3650), the feel is common practice.',
      0.0002,
    ),
    pins: sure('0.0005 in', '0.01 mm', 'Pins or balls, both of a pair together: common practice, no source.', 0.0002),
    'radius-gauges': sure(
      '1/128 in',
      '0.25 mm',
      'Radius gauges against the light: half a step of a set by 64ths or by half millimeters.',
      0.005,
    ),
    protractor: byDefault(
      'half a degree',
      angleFromZero(
        'Degrees: a protractor, by half of its marks; a vernier bevel protractor has 5 minutes (an instrument dealer).',
        "5'",
        10,
      ),
    ),
    missing: byDefault(
      'none: all of them are at hand',
      z.array(z.enum(INSTRUMENT_NAMES)).register(z.globalRegistry, {
        description: 'Instruments that are not at hand: nothing is asked for that only they can take.',
        examples: [['blade-micrometer', 'pins']],
      }),
    ),
  })
  .register(z.globalRegistry, {
    description: 'What sizes are taken with, each with how far its reading may be off, as plus or minus.',
    title: 'instruments',
    examples: [{ caliper: 0.001, missing: ['blade-micrometer', 'pins'] }],
  })

const UNITS = ['inch', 'mm'] as const

const latheKeys = {
  name: text('What the shop calls the lathe.', 'Bench lathe'),
  'cross-feed': crossFeedSchema,
  compound: compoundSchema,
  carriage: byDefault('a carriage without a dial', carriageSchema),
  'spindle-speeds': z
    .array(z.number().check(z.gt(0)).register(z.globalRegistry, { description: 'Turns a minute.' }))
    .check(z.minLength(1))
    .register(z.globalRegistry, {
      description: 'Every speed of the spindle, turns a minute.',
      examples: [[60, 95, 150, 240, 380, 600, 950]],
    }),
  'jaw-clearance': byDefault(
    '1/4 in (6 mm)',
    length('How far tool and slides stay from the jaws.', '3/8 in', 'zero or more'),
  ),
  'widest-edge': byDefault(
    '1/2 in (12 mm)',
    length(
      'The longest edge that cuts at once without chatter, along the edge, in mild steel; a light bench lathe has 1/4 in or less. Common practice, no source.',
      '1/4',
    ),
  ),
  accuracy: byDefault('the default of each of its keys', accuracySchema),
  instruments: byDefault('the default of each of its keys', instrumentsSchema),
}
const described = { description: 'A manual lathe: its dials, speeds and what can be held on it.', title: 'lathe' }

/** A lathe inside a job. */
export const latheSchema = z
  .strictObject({
    units: byDefault('the units of the job', choice('Meaning of bare numbers in this lathe.', UNITS)),
    ...latheKeys,
  })
  .register(z.globalRegistry, described)

/** A lathe in its own file: jobs in inches and in millimeters use it, so its meaning must not depend on the job. */
export const latheFileSchema = z
  .strictObject({ units: choice('Meaning of bare numbers in this file, whatever the job is in.', UNITS), ...latheKeys })
  .register(z.globalRegistry, described)
