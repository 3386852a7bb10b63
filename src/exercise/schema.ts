import * as z from 'zod/mini'
import { byDefault, length, text } from '../units/measure-schema.ts'
import { HIDE_WORDS } from './words.ts'

const listOf = <T extends z.core.$ZodType>(schema: T, say: string, example: readonly unknown[]) =>
  z
    .array(schema)
    .check(z.minLength(1))
    .register(z.globalRegistry, { description: say, examples: [example] })

const amounts = z
  .strictObject({
    under: z.optional(text('Path of the value that these amounts are taken from.', 'features.0.width')),
    over: z.optional(text('Path of the value that these amounts are added to.', 'features.0.width')),
    from: text('The first amount, written as in the job.', 0.004),
    to: text('The last amount.', 0.015),
    step: text('From one amount to the next.', 0.001),
  })
  .register(z.globalRegistry, { title: 'range' })

const varied = z
  .union([z.array(text('One value.', '5/32')).check(z.minLength(1)), amounts])
  .register(z.globalRegistry, {
    description: 'The values of one path of the job: a list, or a range with its step; under or over another value.',
    title: 'values',
    examples: [{ from: 0.15, to: 0.18, step: 0.005 }],
  })

export const exerciseSchema = z
  .strictObject({
    title: text('What every sheet is headed with.', 'A neck for the press screw'),
    teaches: text(
      'What a learner knows afterwards; printed under the title.',
      'from a drawing to the readings of a dial',
    ),
    base: z
      .union([text('Path of the job.', '../jobs/01-press-screw.yaml'), z.array(text('Path of a job.', 'one.yaml'))])
      .register(z.globalRegistry, {
        description: 'Path of the job that is varied, relative to this file; a list of them for a choice among jobs.',
        examples: ['../jobs/01-press-screw.yaml'],
      }),
    seed: byDefault('the title', text('The same seed gives the same sheets; another one gives others.', 2026)),
    sheets: z.optional(
      z
        .number()
        .check(z.gt(0), z.lte(100_000), z.multipleOf(1))
        .register(z.globalRegistry, { description: 'How many sheets, where no learners are named.', examples: [30] }),
    ),
    learners: z.optional(
      z
        .union([
          text('Path of a table (CSV) of learners.', 'class.csv'),
          listOf(text('A name.', 'Ann'), 'Names.', ['Ann', 'Ben']),
        ])
        .register(z.globalRegistry, {
          description:
            'A list of names, or the path of a table (CSV) with a column learner, and if wanted lathe (a file) and paths of the job, such as tools.neck.width.',
          examples: [['Ann', 'Ben']],
        }),
    ),
    vary: byDefault(
      'every sheet is alike',
      z.catchall(z.strictObject({}), varied).register(z.globalRegistry, {
        description: 'Paths of the job, such as features.0.width or tools.neck.width, and what stands there in turn.',
        title: 'vary',
        examples: [{ 'features.0.width': { from: 0.16, to: 0.18, step: 0.005 } }],
      }),
    ),
    hide: listOf(
      z.enum(HIDE_WORDS).register(z.globalRegistry, { description: 'What is left open.', examples: ['readings'] }),
      'What the learner fills in.',
      ['readings'],
    ),
    tolerance: byDefault(
      'half a thousandth of an inch, or a hundredth of a millimeter; half a mark on a dial',
      length('How far a length that is worked out may be off, either way.', 0.001),
    ),
  })
  .register(z.globalRegistry, {
    description: 'An exercise for a class: a job, and what of it is left open.',
    title: 'exercise',
  })
