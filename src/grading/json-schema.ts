const text = (description: string) => ({ type: 'string', description })
const number = (description: string) => ({ type: 'number', description })
const textOrNull = (description: string) => ({ type: ['string', 'null'], description })
const listOf = (items: object, description: string) => ({ type: 'array', description, items })
const object = (properties: Readonly<Record<string, object>>, description?: string) => ({
  type: 'object',
  ...(description === undefined ? {} : { description }),
  properties,
  required: Object.keys(properties),
  additionalProperties: false,
})
const withOptional = (
  optional: Readonly<Record<string, object>>,
  properties: Readonly<Record<string, object>>,
  description: string,
) => ({ ...object(properties, description), properties: { ...properties, ...optional } })
const DRAFT = { $schema: 'http://json-schema.org/draft-07/schema#' }

/** The form that a learner fills in. */
export const answersSchema = (): object => ({
  ...DRAFT,
  title: 'answers',
  ...withOptional(
    { set: textOrNull('Name of the sheet in its set, as it was handed out: a form of another set is not graded.') },
    {
      sheet: { type: ['string', 'number'], description: 'Number of the sheet.' },
      learner: textOrNull('Name of the learner.'),
      answers: listOf(
        object({
          id: text('Of the blank.'),
          value: {
            type: ['string', 'number', 'null'],
            description: 'As on paper: 125, .125, 1 turn 25, 1/8, 0.125 in.',
          },
        }),
        'One of each blank.',
      ),
    },
    'The answers of one learner.',
  ),
})

/** How a class did. */
export const gradesSchema = (): object => ({
  ...DRAFT,
  title: 'grades',
  ...object(
    {
      grades: { const: 1, description: 'The version of this format.' },
      title: text('Of the exercise.'),
      learners: listOf(learner, 'In the order of the set.'),
      questions: listOf(question, 'How each question went.'),
      teach: listOf(
        object({ teach: text('What to teach again.'), times: number('How often it was missed.') }),
        'The most frequent first.',
      ),
    },
    'The grades of a class.',
  ),
})

const learner = object({
  sheet: text('Number of the sheet.'),
  learner: textOrNull('Name of the learner.'),
  score: { type: ['number', 'null'], description: 'Marks; null where nothing could be graded.' },
  outOf: number('Marks that could be had; what could not be read is left out.'),
  blanks: listOf(
    object({
      id: text('Of the blank.'),
      number: number('As on paper.'),
      asks: text('What is asked.'),
      given: text('As it was written.'),
      right: text('As the key has it.'),
      working: text('How it is worked out.'),
      verdict: {
        enum: ['right', 'follow-on', 'wrong', 'blank', 'ungraded'],
        description: 'follow-on: it follows from an earlier answer that is wrong.',
      },
      marks: number('Given.'),
      outOf: number('That could be had.'),
      causes: listOf({ type: 'string' }, 'Codes of the likely causes.'),
      says: listOf({ type: 'string' }, 'The same in words; of what could not be read: why, and how it is written.'),
      wouldCut: textOrNull('What the wrong reading alone would have cut.'),
    }),
    'In the order of the paper.',
  ),
  cuts: listOf({ type: 'string' }, 'What all readings together would have cut, where it is not as drawn.'),
  note: textOrNull('Why it is not graded, or what is odd about the form.'),
})

const question = object({
  asks: text('What is asked.'),
  right: number('So many.'),
  wrong: number('So many.'),
  blank: number('Left blank by so many.'),
  causes: listOf(
    object({
      code: text('Of the cause.'),
      says: text('In words.'),
      teach: text('What to teach again.'),
      times: number('How often.'),
    }),
    'The most frequent first.',
  ),
})
