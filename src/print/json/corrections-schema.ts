import { list, nullable, number, object, range, type Schema } from './schema-words.ts'

export const corrections = (): Schema =>
  table(
    {
      enum: ['bottomDiameter', 'outsideLessBottom'],
      description: 'What is looked up: the bottom diameter, or the outside diameter less it, both as measured.',
    },
    'One for every finishing step of the cross-feed.',
    'bottomDiameter',
    'Each planned and replayed from the form that was measured.',
    'On the stop to measure before a finishing pass: what to finish at, by what is measured.',
  )

export const widthCorrections = (): Schema =>
  table(
    { const: 'width', description: 'What is looked up: the width over the walls, by caliper.' },
    'The feed across; from a shoulder the places before it.',
    'width',
    'Each planned and replayed from the width that was measured, also together with `corrections`.',
    'On the stop to measure before a finishing pass: how far to feed across, by what the width measures. Used together with `corrections`.',
  )

/** Readings for measured sizes; `outcome`: the finished size of each row. */
const table = (measure: Schema, finishes: string, outcome: string, rows: string, description: string): Schema =>
  object(
    {
      measure,
      expected: number('What it comes to when nothing is off.'),
      most: number('Further off than this no stated error explains: measure again, do not correct.'),
      between: {
        enum: ['nearer', 'in proportion', 'none'],
        description: 'How who measures between two rows comes to a reading; none: only by `finish`.',
      },
      rows: list(
        object({
          measured: number('As measured.'),
          finishes: list(
            object({
              step: { type: 'integer', minimum: 1, description: 'Number of the step.' },
              reading: number('Instead of the one that the step says.'),
              turns: nullable({ type: 'integer' }),
              mark: nullable(number('Marks past those turns; null on a readout.')),
            }),
            finishes,
          ),
          [outcome]: number('What the replay comes out at.'),
          within: nullable({ type: 'boolean', description: 'Inside the limits; null where the drawing gives none.' }),
        }),
        rows,
      ),
    },
    description,
  )

export const metalLeft = (): Schema =>
  object(
    {
      again: {
        ...range('Numbers of the first and the last step that are done once more.'),
        items: { type: 'integer' },
      },
      sizes: list(
        object({
          measure: {
            enum: ['bottomDiameter', 'outsideLessBottom', 'width'],
            description: 'What is measured; the second is the outside diameter less the bottom diameter.',
          },
          when: { enum: ['under', 'over'], description: 'On which side of the limit metal is left.' },
          limit: number('Of the drawing; without limits, one step of the dial from its size.'),
          pastSaving: nullable(number('Beyond this limit too much is cut away; null where the drawing gives none.')),
          steps: list({ type: 'integer', minimum: 1 }, 'Numbers of the steps that go further than before.'),
          reading: number(
            'By how much further on the dial of their slide, in its own units and sense, for every `perReading` of the size; less than 0 = back.',
          ),
          perReading: number('What that is worth in the measured size.'),
        }),
        'Proved by replay: the pass once more, one reading further.',
      ),
    },
    'On the last measuring of a feature: how the finishing pass, done once more, takes off metal that is left.',
  )
