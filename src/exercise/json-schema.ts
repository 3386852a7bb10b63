import { jsonSchemaOf } from '../job/json-schema.ts'
import { exerciseSchema } from './schema.ts'

/** What an exercise may contain, for editors. */
export const exerciseJsonSchema = (): object => jsonSchemaOf(exerciseSchema)

const text = (description: string) => ({ type: 'string', description })
const number = (description: string) => ({ type: 'number', description })
const orNull = (type: string, description: string) => ({ type: [type, 'null'], description })

/** A set as it was handed out. What only a replay reads is not described further. */
export const manifestSchema = (): object => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'manifest',
  description: 'A set of exercise sheets as it was handed out, with its key.',
  type: 'object',
  properties: {
    manifest: { const: 1, description: 'The version of this format.' },
    title: text('Of the exercise.'),
    teaches: text('What a learner knows afterwards.'),
    learners: {
      type: 'array',
      description: 'In the order of the set.',
      items: {
        type: 'object',
        properties: {
          sheet: text('Number of the sheet.'),
          set: text('Name of this sheet of this set, as on its answer form; absent in sets of earlier versions.'),
          learner: orNull('string', 'Name of the learner.'),
          form: text('The answer form, from the folder of the manifest.'),
          units: { enum: ['inch', 'mm'], description: 'Of the sheet.' },
          values: {
            type: 'object',
            description: 'What was drawn: values of the job by their path.',
            additionalProperties: { type: 'string' },
          },
          job: text('The whole job (YAML), with its lathe and its tools.'),
          blanks: { type: 'array', description: 'In the order of the paper.', items: blank },
          shop: {
            type: 'object',
            description: 'What a replay needs: lathe, setup and operations. Lengths in picometers.',
          },
        },
        required: ['sheet', 'learner', 'form', 'units', 'values', 'job', 'blanks', 'shop'],
        additionalProperties: false,
      },
    },
  },
  required: ['manifest', 'title', 'teaches', 'learners'],
  additionalProperties: false,
})

const blank = {
  type: 'object',
  properties: {
    id: text('As in the answer form.'),
    number: number('As on paper.'),
    outOf: number('Marks.'),
    asks: text('What is asked.'),
    facts: {
      type: 'object',
      description: 'What the answer is worked out from. Lengths in picometers, angles in degrees.',
    },
    right: {
      description: 'What is right: picometers of reading or of length, degrees, rpm; or words.',
      anyOf: [{ type: 'number' }, { type: 'string' }, { type: 'array', items: { type: 'string' } }],
    },
    tolerance: number('Either way, in the unit of right.'),
    key: text('What is right, as it is printed.'),
    within: text('The tolerance in words.'),
    working: text('How it is worked out.'),
    follows: {
      type: 'array',
      description: 'From which earlier answers it follows: value x factor + plus.',
      items: {
        type: 'object',
        properties: { id: text('Of the earlier blank.'), factor: number('Times.'), plus: number('Added.') },
        required: ['id', 'factor', 'plus'],
        additionalProperties: false,
      },
    },
    move: {
      type: ['object', 'null'],
      description: 'The move of an operation that the answer turns: feature and index.',
    },
    choices: { type: 'array', description: 'What may be chosen.', items: { type: 'string' } },
  },
  required: [
    'id',
    'number',
    'outOf',
    'asks',
    'facts',
    'right',
    'tolerance',
    'key',
    'within',
    'working',
    'follows',
    'move',
  ],
  additionalProperties: false,
}
