/** The part of the schema that only a sheet printed with --since has. */
export const changedSchema = () => ({
  description: 'Only with --since: what is another thing than on the sheet that was kept.',
  ...object({
    facts: list(change('lathe, part, or a warning of the whole job')),
    features: list(
      object({
        name: text('Name of the feature.'),
        fate: { enum: ['stayed', 'came', 'went'], description: 'On both sheets, or only on one.' },
        facts: list(change('tool, speed, drawing or a warning')),
        steps: list(step()),
        sizes: list(change('a finished size: planned, its worst case, and whether it holds')),
      }),
    ),
  }),
})

const step = () => {
  const one = change('what the hand does')
  return {
    ...one,
    ...object({
      fate: { enum: ['changed', 'came', 'went'] },
      numbers: list({ type: 'integer' }, "Today's steps that change in this way."),
      were: list({ type: 'integer' }, 'Their numbers on the sheet that was kept.'),
      thing: text('The slide or thing that the hand goes to.'),
      ...one.properties,
    }),
  }
}

const change = (what: string) =>
  object({ what: text(what), before: nullable('As it was said or shown.'), now: nullable('As it is said or shown.') })

type Schema = Readonly<Record<string, unknown>>
const object = (properties: Schema) => ({ type: 'object', properties, required: Object.keys(properties) })
const list = (items: Schema, description?: string) => ({
  type: 'array',
  items,
  ...(description === undefined ? {} : { description }),
})
const text = (description: string) => ({ type: 'string', description })
const nullable = (description: string) => ({ anyOf: [text(description), { type: 'null' }] })
