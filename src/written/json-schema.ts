import { ACTION_NAMES, KEY_NAMES, KEYS, type Key, PURPOSE_NAMES, SLIDES } from './keys.ts'

/** What a list of moves in YAML may contain, as JSON Schema (draft 7), for editors. */
export const movesSchema = (): object => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  properties: {
    moves: {
      description: 'the moves of the hand, in order',
      type: 'array',
      minItems: 1,
      items: {
        type: 'object',
        properties: Object.fromEntries(KEY_NAMES.map((key) => [key, { description: KEYS[key], ...TYPES[key] }])),
        required: ['action'],
        additionalProperties: false,
      },
    },
  },
  required: ['moves'],
  additionalProperties: false,
})

const number = (...examples: (string | number)[]) => ({ type: ['number', 'string'], examples })

const TYPES: Readonly<Record<Key, object>> = {
  feature: { type: ['string', 'number'] },
  action: { type: 'string', enum: ACTION_NAMES },
  slide: { type: 'string', enum: SLIDES },
  reading: number(0.052, -0.05, '1/16'),
  turns: number(0, -1),
  mark: number(50),
  'at-least': number(11),
  place: number(1.125, '1 1/8'),
  why: { type: 'string', enum: PURPOSE_NAMES },
  note: { type: ['string', 'number'] },
}
