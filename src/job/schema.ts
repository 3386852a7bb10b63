import * as z from 'zod/mini'
import { cuttingSchema } from '../features/common-schema.ts'
import { grooveSchema } from '../features/groove/schema.ts'
import { radiusSchema } from '../features/radius/schema.ts'
import { vGrooveSchema } from '../features/v-groove/schema.ts'
import { latheSchema } from '../lathe/schema.ts'
import { cornerToolSchema } from '../tools/corner/schema.ts'
import { roundToolSchema } from '../tools/round/schema.ts'
import { squareToolSchema } from '../tools/square/schema.ts'
import { veeToolSchema } from '../tools/vee/schema.ts'
import { choice, dimension, length, text } from '../units/measure-schema.ts'

export const toolSchema = z
  .discriminatedUnion('shape', [squareToolSchema, veeToolSchema, roundToolSchema, cornerToolSchema])
  .register(z.globalRegistry, { description: 'A tool by the name the shop gives it.', title: 'tool' })

export const toolboxSchema = z
  .catchall(
    z.strictObject({
      units: z.optional(choice('Meaning of bare numbers here; by default the units of the job.', ['inch', 'mm'])),
    }),
    toolSchema,
  )
  .register(z.globalRegistry, { description: 'Tools by name. The name "units" is reserved.', title: 'toolbox' })

export const featureSchema = z
  .discriminatedUnion('kind', [grooveSchema, radiusSchema, vGrooveSchema])
  .register(z.globalRegistry, { title: 'feature' })

const measuredDiameter = z.optional(length('Diameter as measured; by default as drawn.'))

export const stepSchema = z
  .strictObject({
    name: text('What features call this step in from and corner-of.', 'body'),
    diameter: dimension('Diameter as drawn.'),
    length: length('Length along the work.'),
    'measured-diameter': measuredDiameter,
  })
  .register(z.globalRegistry, { title: 'step' })

const materialSchema = z
  .union([
    text('A material of the cutting-speed table.', 'mild steel', 'brass'),
    z
      .strictObject({
        name: text('What the sheet calls the material.', 'yew'),
        'cutting-speed': z.number().check(z.gt(0)).register(z.globalRegistry, {
          description: 'Cutting speed of plain turning: ft/min in an inch job, m/min in a mm job.',
        }),
      })
      .register(z.globalRegistry, { title: 'material' }),
  ])
  .register(z.globalRegistry, {
    description: 'A material of the cutting-speed table, or a name with its cutting-speed.',
  })

export const partSchema = z
  .strictObject({
    material: materialSchema,
    held: z.optional(
      choice('How the work is held; by default chuck.', ['chuck', 'collet', 'between centers', 'chuck and center']),
    ),
    overhang: z.optional(length('How far the work stands out of the chuck; by default its whole length.')),
    dog: z.optional(
      length('Between centers: how much of the headstock end the dog takes; the tool is kept off it as off jaws.'),
    ),
    steps: z.optional(
      z
        .array(stepSchema)
        .check(z.minLength(1))
        .register(z.globalRegistry, { description: 'From the free end toward the headstock.' }),
    ),
    diameter: z.optional(dimension('Diameter of a plain bar, instead of steps.')),
    length: z.optional(length('Length of a plain bar, instead of steps.')),
    'measured-diameter': measuredDiameter,
  })
  .register(z.globalRegistry, { description: 'The work before these features are cut.', title: 'part' })

const include = (description: string, example: string) =>
  z.string().register(z.globalRegistry, { description, examples: [example] })

export const jobSchema = z
  .strictObject({
    title: text('What the sheet is headed with.', 'Cider press screw'),
    'drawing-number': z.optional(text('Printed beside the title.', 'CP-14')),
    units: choice('Meaning of bare numbers here, and units of the sheet.', ['inch', 'mm']),
    work: z.optional(
      choice('How closely form tools are ground to width: one-off (the default) or repeat.', ['one-off', 'repeat']),
    ),
    part: partSchema,
    lathe: z
      .union([include('Path of a lathe file, relative to this file.', 'lathe-bench.yaml'), latheSchema])
      .register(z.globalRegistry, { description: 'A path beside this file, or the same keys inline.' }),
    tools: z.optional(
      z
        .union([include('Path of a toolbox, relative to this file.', 'toolbox.yaml'), toolboxSchema])
        .register(z.globalRegistry, { description: 'A path beside this file, or the same keys inline.' }),
    ),
    cutting: z.optional(cuttingSchema),
    features: z
      .array(featureSchema)
      .check(z.minLength(1))
      .register(z.globalRegistry, { description: 'What is to be cut.' }),
  })
  .register(z.globalRegistry, { description: 'A job for a manual engine lathe.', title: 'job' })
