import { list, nullable, number, object, type Schema, text } from './schema-words.ts'

export const part = (): Schema =>
  object({
    material: text('Material of the work.'),
    held: text('chuck, collet, between centers, or chuck and center.'),
    overhang: number('How far the work sticks out of the chuck.'),
    steps: list(
      object({
        name: text('Name of the step.'),
        diameter: number('Diameter as drawn.'),
        measuredDiameter: number('Diameter as measured; the same as drawn where the job gives none.'),
        from: number('Distance of its tailstock-side end from the free end.'),
        to: number('Distance of its headstock-side end from the free end.'),
      }),
      'Steps of the part, from the free end toward the headstock.',
    ),
  })

export const lathe = (): Schema =>
  object({
    name: text('As the lathe file gives it.'),
    crossFeed: scale('Positive is in.'),
    compound: object(
      {
        ...scaleFields(),
        travel: nullable(number('Greatest less smallest reading that the slide allows.')),
        scaleZero: { enum: ['parallel', 'square'], description: 'What 0 on the swivel scale means.' },
      },
      'Positive is forward.',
    ),
    carriage: nullable(carriage()),
    spindleSpeeds: list(number('rpm'), 'Ascending.'),
  })

/** A dial, a readout, or an indicator that bears on it: a readout with a range. */
const carriage = (): Schema => {
  const fields = object(scaleFields(), 'Positive is toward the headstock.')
  return {
    ...fields,
    properties: {
      ...scaleFields(),
      indicator: { const: true, description: 'Only where a dial indicator bears on the carriage.' },
      range: number('How far the plunger of the indicator follows.'),
    },
  }
}

const scale = (description: string): Schema => object(scaleFields(), description)

const scaleFields = () => ({
  units: { enum: ['inch', 'mm'], description: 'Units the scale is marked in.' },
  graduation: number('One mark, or the resolution of a readout, in the units of the scale.'),
  perTurn: nullable(number('Reading for one turn; null for a readout.')),
  reads: { enum: ['depth', 'diameter'], description: 'depth: slide travel. diameter: twice the slide travel.' },
  backlash: number('Stated lost motion as counted on this scale, in its own sense; 0 for a readout.'),
  readTo: number('The part of a mark that is judged by eye.'),
  readout: { type: 'boolean', description: 'A digital readout: no turns, no lost motion.' },
})
