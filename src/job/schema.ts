import * as z from 'zod/mini'
import { cuttingSchema } from '../features/common-schema.ts'
import { KINDS } from '../features/registry.ts'
import { latheSchema } from '../lathe/schema.ts'
import { SHAPES } from '../tools/registry.ts'
import { byDefault, choice, dimension, length, text } from '../units/measure-schema.ts'

/** The schema of every entry of a registry, in its order. */
const schemasOf = <R extends Readonly<Record<string, { readonly schema: z.ZodMiniType }>>>(registry: R) =>
  Object.values(registry).map(({ schema }) => schema) as [R[keyof R]['schema'], ...R[keyof R]['schema'][]]

export const toolSchema = z.discriminatedUnion('shape', schemasOf(SHAPES)).register(z.globalRegistry, {
  description: 'A tool by the name the shop gives it.',
  title: 'tool',
  examples: [{ shape: 'square', width: 0.148, reach: 0.14 }],
})

export const toolboxSchema = z
  .catchall(
    z.strictObject({
      units: byDefault('the units of the job', choice('Meaning of bare numbers in this toolbox.', ['inch', 'mm'])),
    }),
    toolSchema,
  )
  .register(z.globalRegistry, { description: 'Tools by name. The name "units" is reserved.', title: 'toolbox' })

export const featureSchema = z
  .discriminatedUnion('kind', schemasOf(KINDS))
  .register(z.globalRegistry, { title: 'feature' })

const measuredDiameter = () => byDefault('as drawn', length('Diameter as measured.', 1.4985))

const PILOT = { name: 'pilot', diameter: 0.875, length: 2 }
const BODY = { name: 'body', diameter: 1.5, length: 3 }

export const stepSchema = z
  .strictObject({
    name: text('What features call this step in from and corner-of.', 'body'),
    diameter: dimension('Diameter as drawn.', '1.500'),
    length: length('Length along the work.', 3),
    'measured-diameter': measuredDiameter(),
  })
  .register(z.globalRegistry, { title: 'step' })

const materialSchema = z
  .union([
    text('A material of the cutting-speed table.', 'mild steel', 'brass'),
    z
      .strictObject({
        name: text('What the sheet calls the material.', 'yew'),
        'cutting-speed': z
          .number()
          .check(z.gt(0))
          .register(z.globalRegistry, {
            description: 'Cutting speed of plain turning: ft/min in an inch job, m/min in a mm job.',
            examples: [300],
          }),
      })
      .register(z.globalRegistry, { title: 'material' }),
  ])
  .register(z.globalRegistry, {
    description: 'A material of the cutting-speed table, or a name with its cutting-speed.',
    examples: ['mild steel'],
  })

export const partSchema = z
  .strictObject({
    material: materialSchema,
    held: byDefault(
      'chuck',
      choice('How the work is held. On a mandrel nothing is in the way of the tool.', [
        'chuck',
        'collet',
        'between centers',
        'chuck and center',
        'mandrel',
      ]),
    ),
    overhang: byDefault(
      'its whole length, with a warning that asks for it',
      length('How far the work sticks out of the chuck or collet.', '2 1/2'),
    ),
    grip: byDefault(
      'what the overhang leaves',
      length('How much of it the chuck or collet holds, instead of overhang.', 1),
    ),
    dog: byDefault(
      'not known: a tool that comes within 1 in (25 mm) of that end is warned of',
      length('Between centers: how much of the headstock end the dog takes; the tool is kept off it as off jaws.', 1),
    ),
    steps: z.optional(
      z
        .array(stepSchema)
        .check(z.minLength(1))
        .register(z.globalRegistry, {
          description: 'A list of cylinders, from the free end toward the headstock.',
          examples: [[PILOT, BODY]],
        }),
    ),
    diameter: z.optional(dimension('Diameter of a plain bar as drawn, instead of steps.', '1 1/2')),
    length: z.optional(length('Length of a plain bar, instead of steps.', 5)),
    'measured-diameter': measuredDiameter(),
  })
  .register(z.globalRegistry, {
    description: 'The work before these features are cut.',
    title: 'part',
    examples: [{ material: 'mild steel', diameter: '1 1/2', length: 5 }],
  })

const include = (say: string, example: string) =>
  z.string().register(z.globalRegistry, { description: say, examples: [example] })

const fileOrKeys = (example: string) => ({
  description: 'A path beside this file, or the same keys inline.',
  examples: [example],
})

export const jobSchema = z
  .strictObject({
    title: text('What the sheet is headed with.', 'Cider press screw'),
    'drawing-number': z.optional(text('Printed beside the title.', 'CP-14')),
    units: choice('Meaning of bare numbers here, and units of the sheet.', ['inch', 'mm']),
    work: byDefault(
      'one-off',
      choice('A tool to be ground is a little narrower than the groove (one-off) or of its exact width (repeat).', [
        'one-off',
        'repeat',
      ]),
    ),
    decision: byDefault(
      'prove',
      choice(
        'What an inspection accepts: prove, what lies inside the limits by all that the instrument may be off (ISO 14253-1); or simple, what reads inside the limits.',
        ['prove', 'simple'],
      ),
    ),
    part: partSchema,
    lathe: z
      .union([include('Path of a lathe file, relative to this file.', 'bench-lathe.yaml'), latheSchema])
      .register(z.globalRegistry, fileOrKeys('bench-lathe.yaml')),
    tools: byDefault(
      'every tool is to be ground',
      z
        .union([include('Path of a toolbox, relative to this file.', 'toolbox.yaml'), toolboxSchema])
        .register(z.globalRegistry, fileOrKeys('toolbox.yaml')),
    ),
    cutting: byDefault('the default of each of its keys', cuttingSchema),
    features: z
      .array(featureSchema)
      .check(z.minLength(1))
      .register(z.globalRegistry, {
        description: 'What is to be cut: a list.',
        examples: [[{ kind: 'groove', near: 1.125, width: '5/32', depth: 0.07 }]],
      }),
  })
  .register(z.globalRegistry, { description: 'A job for a manual engine lathe.', title: 'job' })
