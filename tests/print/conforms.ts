type Schema = Readonly<Record<string, unknown>>

/** The problems of a value under the part of JSON Schema draft-7 that our schema uses. */
export const problems = (schema: Schema, value: unknown, path = '$'): string[] => {
  const found: string[] = []
  if ('const' in schema && schema.const !== value) found.push(`${path}: not ${String(schema.const)}`)
  if (Array.isArray(schema.enum) && !schema.enum.includes(value)) found.push(`${path}: ${String(value)} is not listed`)
  if (typeof schema.type === 'string' && !isType(schema.type, value)) return [...found, `${path}: no ${schema.type}`]
  if (typeof schema.minimum === 'number' && (value as number) < schema.minimum)
    found.push(`${path}: below ${schema.minimum}`)
  for (const key of ['anyOf', 'oneOf'] as const) {
    const choices = schema[key] as readonly Schema[] | undefined
    const fits = choices?.filter((choice) => problems(choice, value, path).length === 0).length
    if (fits !== undefined && (fits === 0 || (key === 'oneOf' && fits !== 1))) found.push(`${path}: ${fits} of ${key}`)
  }
  if (Array.isArray(value) && schema.items !== undefined) {
    for (const [i, item] of value.entries()) found.push(...problems(schema.items as Schema, item, `${path}[${i}]`))
  }
  if (isType('object', value)) found.push(...objectProblems(schema, value as Record<string, unknown>, path))
  return found
}

const objectProblems = (schema: Schema, value: Record<string, unknown>, path: string): string[] => {
  const required = (schema.required ?? []) as readonly string[]
  const properties = (schema.properties ?? {}) as Readonly<Record<string, Schema>>
  const missing = required.filter((key) => !(key in value)).map((key) => `${path}.${key}: missing`)
  const rest = schema.additionalProperties as Schema | undefined
  const inside = Object.entries(value).flatMap(([key, each]) => {
    const of = properties[key] ?? rest
    return of === undefined ? [] : problems(of, each, `${path}.${key}`)
  })
  return [...missing, ...inside]
}

const isType = (type: string, value: unknown): boolean => {
  switch (type) {
    case 'null':
      return value === null
    case 'array':
      return Array.isArray(value)
    case 'object':
      return typeof value === 'object' && value !== null && !Array.isArray(value)
    case 'integer':
      return Number.isInteger(value)
    default:
      return typeof value === type
  }
}

/** Keys of a value that its schema does not describe, as if it forbade them all. Of several choices the one that fits counts. */
export const strangers = (schema: Schema, value: unknown, path = '$'): string[] => {
  const choices = (schema.anyOf ?? schema.oneOf) as readonly Schema[] | undefined
  const fits = choices?.find((choice) => problems(choice, value).length === 0)
  if (choices !== undefined) return fits === undefined ? [`${path}: nothing fits`] : strangers(fits, value, path)
  if (Array.isArray(value))
    return value.flatMap((item, i) => strangers((schema.items ?? {}) as Schema, item, `${path}[${i}]`))
  if (!isType('object', value)) return []
  const properties = (schema.properties ?? {}) as Readonly<Record<string, Schema>>
  const rest = schema.additionalProperties as Schema | undefined
  return Object.entries(value as Record<string, unknown>).flatMap(([key, each]) => {
    const of = properties[key] ?? rest
    return of === undefined ? [`${path}.${key}`] : strangers(of, each, `${path}.${key}`)
  })
}
