import { SHAPE_WORDS } from '../../sheet/grind/shapes.ts'
import { grindSchema } from './grind-schema.ts'
import { list, nullable, number, object, type Schema, text } from './schema-words.ts'
import { setUpSchema } from './set-up.ts'

const kind = (): Schema =>
  text(
    'groove, radius or v-groove; roughing: steps that another tool opens a form up in, before its own tool finishes it.',
  )

export const planned = (): Schema => {
  const always = object({
    name: text('Name of the feature.'),
    kind: kind(),
    tool: text('Name in the toolbox, or of the tool to be ground.'),
    status: { const: 'planned', description: 'Planned, and proven by replay.' },
    why: nullable(text('What the feature is for.')),
    drawn: list(text('One dimension as drawn.')),
    edge: edge(),
    compoundAngle: number('Degrees from parallel with the ways.'),
    surface: number('Measured diameter on which the feature is cut.'),
    spindle: object({
      rpm: number('Speed of the lathe to set.'),
      wanted: number('Speed by the formula, after the factor.'),
      cuttingSpeed: number('Before the factor.'),
      speedUnits: { enum: ['ft/min', 'm/min'] },
      factor: number('For the long contact of a form tool.'),
      source: text('Where the cutting speed comes from.'),
      tooFast: { type: 'boolean', description: 'No speed of the lathe is low enough: do not form at this speed.' },
    }),
    ...setUpSchema(),
    notes: list(text('What to know of this feature.')),
    proof: text('What was replayed.'),
    finished: { type: 'object', additionalProperties: finished(), description: 'By dimension; angles are in degrees.' },
    inspection: list(inspected(), 'What to measure on the finished feature, and with what; a table to fill in.'),
  })
  return {
    ...always,
    properties: { ...(always.properties as Schema), gains: list(gain(), GAINS), grind: grindSchema() },
  }
}

const GAINS = 'Only where a size may not hold: the same job with something done otherwise, planned and replayed.'

const gain = (): Schema =>
  object({
    change: list(text('Stable name of the change.')),
    set: list(text('Keys of the job or of the lathe file that plan it so.')),
    say: text('In words, as the text sheet has it.'),
    holds: { type: 'boolean', description: 'Every size of the feature holds then.' },
    finished: {
      type: 'object',
      description: 'The sizes that may not hold, with the change made.',
      additionalProperties: object({
        planned: number('What the moves cut then.'),
        low: number('Worst case, all errors together.'),
        high: number('Worst case, all errors together.'),
        rss: number('Half-width by root sum square.'),
        verdict: { enum: ['holds', 'may not hold'] },
        spare: nullable(number('Least distance to a limit; negative where it still may not hold.')),
      }),
    },
  })

const edge = (): Schema => {
  const always = measuredEdge()
  return { ...always, properties: { ...(always.properties as Schema), face: face() } }
}

const face = (): Schema =>
  object(
    {
      angle: nullable(number('Included angle of a V as gauged on its face, degrees.')),
      radius: nullable(
        number('Radius as gauged on the face: of a round end, a hollow, or the corners of a square edge.'),
      ),
      leg: number(
        'Only of a hollow whose quarter was stretched: its leg that goes down the work, along the face; then the edge is (radius·(1 − cos t), leg·sin t) on the face.',
      ),
      floor: number('Radius of the work at the tip of the face when the form is finished.'),
    },
    'Only where the face slopes and that changes the edge: what was gauged on the face. A point L back on it is √((floor + L cos γ)² + (L sin γ)²) − floor above the tip, γ = rakeInUse; the replay follows it within 20 nm. The angle and the radius beside this are what the edge then shows in the work, between its bottom and the surface.',
    ['leg'],
  )

const measuredEdge = (): Schema =>
  object({
    shape: { enum: Object.keys(SHAPE_WORDS) },
    width: nullable(number('Of a square edge, or the edge width of a round one.')),
    nose: nullable(number('Flat at the nose of a V.')),
    angle: nullable(number('Included angle in degrees.')),
    radius: nullable(number('Of a round or corner edge.')),
    reach: number('How far the ground edge reaches back.'),
    blank: nullable(number('Width of the blank.')),
    edgeOffset: nullable(number("From the blank's tailstock-side face to the edge; null = in its middle.")),
    rakeInUse: number('Degrees: ground, and the tilt of the holder.'),
    measured: { type: 'boolean', description: 'false: still to be ground.' },
    undersize: nullable(number('How much the tool is under the drawing.')),
  })

const finished = (): Schema => {
  const always = finishedAlways()
  return { ...always, properties: { ...(always.properties as Schema), measured: measuredAtStop() } }
}

const measuredAtStop = (): Schema =>
  object(
    {
      low: number('Worst case, all errors together.'),
      high: number('Worst case, all errors together.'),
      rss: number('Half-width by root sum square.'),
      largestCause: text('The largest single cause of error.'),
      better: { type: 'boolean', description: 'Its worst case is less than without measuring.' },
    },
    'Only where the sheet corrects it: measured and corrected at the stop. Verdict and spare are of this.',
  )

const finishedAlways = (): Schema =>
  object({
    planned: number('What the moves cut.'),
    low: number('Worst case, all errors together, cut without measuring.'),
    high: number('Worst case, all errors together, cut without measuring.'),
    rss: number('Half-width by root sum square.'),
    limits: nullable({
      type: 'array',
      items: { type: 'number' },
      minItems: 2,
      maxItems: 2,
      description: 'Of the drawing.',
    }),
    verdict: { enum: ['holds', 'may not hold', 'no limits given'] },
    spare: nullable(number('Least distance to a limit; negative where it may not hold.')),
    largestCause: text('The largest single cause of error.'),
    remedy: nullable(text('What would make it hold.')),
  })

const inspected = (): Schema =>
  object({
    id: text('Stable name, unique in its feature.'),
    label: text('As the text sheet has it.'),
    using: text('With what it is measured, and why with that.'),
    instrument: nullable(
      text(
        'Its key of the lathe file; null where it is judged by eye or by a pair of gauges, and where nothing at hand takes it.',
      ),
    ),
    within: nullable(number('How far its reading may be off, as plus or minus.')),
    planned: number('What the replayed form measures this way; an angle is in degrees.'),
    limits: nullable({
      type: 'array',
      items: { type: 'number' },
      minItems: 2,
      maxItems: 2,
      description: 'Of the drawing, or worked out from them.',
    }),
    decision: nullable(
      object(
        {
          accept: nullable({
            type: 'array',
            items: { type: 'number' },
            minItems: 2,
            maxItems: 2,
            description: 'From and to; null where this instrument proves nothing within the limits.',
          }),
          rejectUnder: number('Rejected below this.'),
          rejectOver: number('Rejected above this; what reads neither is not proved.'),
        },
        'Which readings accept and which reject; null without limits, or without an instrument.',
      ),
    ),
    pin: nullable(number('Diameter of each of the two opposed pins or balls.')),
    pair: nullable(object({ go: number('Enters.'), noGo: number('Does not enter.') }, 'Flat gauges.')),
    measured: nullable(number('Blank, to be filled in.')),
    verdict: nullable(text('Blank, to be filled in.')),
  })

export const refused = (): Schema =>
  object(
    {
      name: text('Name of the feature.'),
      kind: kind(),
      status: { const: 'refused', description: 'Cannot be cut as asked; has no steps.' },
      refusal: object({
        code: text('Stable name of the reason.'),
        reason: text('Why.'),
        remedy: text('What would do.'),
      }),
      tool: text('Name of the tool that the job gives it; left out where it gives none.'),
      edge: edge(),
      grind: grindSchema(),
    },
    undefined,
    ['tool', 'edge', 'grind'],
  )
