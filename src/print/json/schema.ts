import { DIAL_ACTIONS } from './actions.ts'
import { changedSchema } from './changed-schema.ts'
import { corrections, metalLeft, widthCorrections } from './corrections-schema.ts'
import { planned, refused } from './feature-schema.ts'
import { FORMAT } from './print.ts'
import { list, nullable, number, object, type Schema, text } from './schema-words.ts'
import { lathe, part } from './shop-schema.ts'
/** The JSON Schema (draft-7) of the sheet as data. Fields may be added to the format, so none are forbidden. */
export const sheetSchema = (): Schema => {
  const always = everySheet()
  return {
    ...always,
    properties: {
      ...(always.properties as Schema),
      continues: continues(),
      slips: slips(),
      supervised: supervised(),
      changed: changedSchema(),
    },
  }
}

const continues = (): Schema =>
  object(
    {
      from: {
        enum: ['job', 'reading', 'kept sheet'],
        description:
          'The moves before the stop: as the job plans them now, so but roughed to a reading that was given, or those of a sheet that was kept.',
      },
      roughedAt: nullable(number('Reading of the last roughing pass, in the units and the sense of its dial.')),
    },
    'Only of what remains (finish).',
  )

const everySheet = (): Schema => ({
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Sheet of dial moves',
  description:
    "A proven sheet: enough to replay every move without the job. Lengths are in `units`; a reading is in the units and the sense (depth or diameter) of its own scale. z is the distance from the free end toward the headstock, and z = zero.fromEnd + K + C cos θ for the tool's reference point, with K and C the travels of carriage and compound and θ the compound angle.",
  ...object({
    format: { const: FORMAT, description: 'Name and version of this format.' },
    title: text('What the job makes.'),
    drawingNumber: nullable(text('As the job gives it.')),
    identity: nullable(
      text(
        'Names what the sheet has the hand do: the same for the same moves on the same dials. Of what remains: the sheet it goes on from, null where its name is not known.',
      ),
    ),
    units: { enum: ['inch', 'mm'], description: 'Units of all lengths that are not on a scale of their own.' },
    part: part(),
    lathe: lathe(),
    cautions: list(text('A caution of every sheet.')),
    decision: {
      enum: ['prove', 'simple'],
      description:
        'What an inspection accepts: what is proved with the uncertainty of the instrument, or what reads inside the limits.',
    },
    orderReasons: list(text('Why the features are done in this order.')),
    features: list({ oneOf: [planned(), refused()] }, 'In the order in which they are done.'),
    steps: list(step(), 'Every move of the hand, in order, numbered from 1 through the whole sheet.'),
    warnings: list(warning()),
  }),
})

const HAND_ACTIONS = [
  'layout',
  'fit-tool',
  'swing',
  'set-speed',
  'start',
  'stop',
  'align',
  'touch-off',
  'lock',
  'unlock',
  'measure',
  'deburr',
]

/** Moves by hand have no slide and no reading; `purpose` is present if the words need it. */
const step = (): Schema => ({
  ...object({
    number: { type: 'integer', minimum: 1, description: 'As printed.' },
    feature: { type: 'integer', minimum: 0, description: 'Index into features.' },
    action: { enum: [...DIAL_ACTIONS, ...HAND_ACTIONS], description: 'What the hand does.' },
    slide: { enum: ['cross-feed', 'compound', 'carriage'], description: 'Only on a move of a slide.' },
    reading: nullable(
      number(
        "Absolute, from the dial's zero; null for a take-up before there is a zero, and where the carriage is moved by eye.",
      ),
    ),
    turns: nullable({ type: 'integer', description: 'Whole turns from zero, rounded down; null on a readout.' }),
    mark: nullable(number('Marks past those turns; null on a readout.')),
    atLeast: number('Only of a take-up before its dial has a zero: how far forward at the least, as its dial reads.'),
    placeFromEnd: number(
      "Only where the carriage is moved by eye, so that its reading is null: where the tool's reference point comes to stand, from the free end.",
    ),
    purpose: text('Why the move is made.'),
    group: { enum: ['set up', 'rough', 'measure', 'finish', 'end'], description: 'Part of the work it belongs to.' },
    thing: text('The slide or the thing that is moved.'),
    does: text('What is done with it, in words.'),
    lines: list(text('A line.'), 'Only where no slide is moved: the lines under the step, without its tables.'),
    say: text('The step in words, as the text sheet has it.'),
    corrections: corrections(),
    widthCorrections: widthCorrections(),
    metalLeft: metalLeft(),
  }),
  required: ['number', 'feature', 'action', 'group', 'thing', 'does', 'say'],
})

const slips = (): Schema =>
  list(
    object({
      feature: { type: 'integer', minimum: 0, description: 'Index into features.' },
      lines: list(
        object({
          shows: text('How it shows when the part is measured.'),
          mistake: text('The single mistake that was replayed.'),
        }),
      ),
      signs: list(text('A sign of a mistake that no replay can show, and what it comes from.')),
    }),
    'Only where the card of slips was asked for.',
  )

const supervised = (): Schema =>
  list(
    object({
      feature: { type: 'integer', minimum: 0, description: 'Index into features.' },
      before: { type: 'integer', minimum: 1, description: 'The number of the step that waits for it.' },
      kind: {
        enum: ['dry-run', 'before-power', 'at-stop', 'before-finish'],
        description: 'What the learner does, or what the instructor signs.',
      },
      say: text('In words.'),
    }),
    'Only where a sheet for learners was asked for.',
  )

const warning = (): Schema =>
  object({
    feature: nullable({ type: 'integer', minimum: 0, description: 'Index into features; null = the whole job.' }),
    code: text('Stable name of the warning.'),
    say: text('The warning.'),
  })
