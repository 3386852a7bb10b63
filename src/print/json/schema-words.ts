export type Schema = Readonly<Record<string, unknown>>

/** An object with all its keys required, except those named. */
export const object = (properties: Schema, description?: string, sometimes: readonly string[] = []): Schema => ({
  type: 'object',
  ...(description === undefined ? {} : { description }),
  properties,
  required: Object.keys(properties).filter((key) => !sometimes.includes(key)),
})
export const list = (items: Schema, description?: string): Schema => ({
  type: 'array',
  items,
  ...(description === undefined ? {} : { description }),
})
export const text = (description: string): Schema => ({ type: 'string', description })
export const number = (description: string): Schema => ({ type: 'number', description })
export const nullable = (schema: Schema): Schema => ({ anyOf: [schema, { type: 'null' }] })
/** Lowest and highest. */
export const range = (description: string): Schema => ({
  type: 'array',
  items: { type: 'number' },
  minItems: 2,
  maxItems: 2,
  description,
})
