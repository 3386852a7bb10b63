type Json = unknown
type Schema = Readonly<Record<string, Json>>

/** What a value breaks of a JSON Schema, one line each: the part of draft-7 that the project's schemas use, and a complaint about any other. */
export function breaches(schema: Schema, value: Json, path = '$', root = schema): string[] {
  const unknown = Object.keys(schema).filter((key) => !KNOWN.has(key) && !SILENT.has(key))
  if (unknown.length > 0) return [`${path}: the schema has ${unknown.join(', ')}, which this check does not know`]
  return Object.entries(schema).flatMap(([key, rule]) =>
    SILENT.has(key) ? [] : rules[key]!(rule as never, value, path, root, schema),
  )
}

type Rule = (rule: never, value: Json, path: string, root: Schema, schema: Schema) => string[]

const SILENT = new Set(['$schema', '$id', 'title', 'description', 'examples', 'default', 'definitions', '$defs'])

const isObject = (value: Json): value is Record<string, Json> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const typeOf = (value: Json): string[] => {
  if (value === null) return ['null']
  if (Array.isArray(value)) return ['array']
  return Number.isInteger(value) ? ['integer', 'number'] : [typeof value]
}
const shown = (value: Json): string => JSON.stringify(value)?.slice(0, 60) ?? 'nothing'

const rules: Readonly<Record<string, Rule>> = {
  type: (rule: string | string[], value, path) =>
    typeOf(value).some((type) => [rule].flat().includes(type))
      ? []
      : [`${path}: ${shown(value)} is not ${[rule].flat().join(' or ')}`],
  const: (rule: Json, value, path) => (value === rule ? [] : [`${path}: ${shown(value)} is not ${shown(rule)}`]),
  enum: (rule: Json[], value, path) =>
    rule.includes(value) ? [] : [`${path}: ${shown(value)} is none of ${shown(rule)}`],
  required: (rule: string[], value, path) =>
    isObject(value) ? rule.filter((key) => !(key in value)).map((key) => `${path}: has no ${key}`) : [],
  properties: (rule: Record<string, Schema>, value, path, root) =>
    isObject(value)
      ? Object.entries(rule).flatMap(([key, inner]) =>
          key in value ? breaches(inner, value[key], `${path}.${key}`, root) : [],
        )
      : [],
  additionalProperties: (rule: boolean | Schema, value, path, root, schema) => {
    if (!isObject(value) || rule === true) return []
    const own = Object.keys((schema.properties as object | undefined) ?? {})
    const others = Object.keys(value).filter((key) => !own.includes(key))
    return rule === false
      ? others.map((key) => `${path}: has a key ${key}`)
      : others.flatMap((key) => breaches(rule as Schema, value[key], `${path}.${key}`, root))
  },
  propertyNames: (rule: Schema, value, path, root) =>
    isObject(value) ? Object.keys(value).flatMap((key) => breaches(rule, key, `${path}.${key}`, root)) : [],
  items: (rule: Schema, value, path, root) =>
    Array.isArray(value) ? value.flatMap((one, i) => breaches(rule, one, `${path}[${i}]`, root)) : [],
  minItems: (rule: number, value, path) =>
    Array.isArray(value) && value.length < rule ? [`${path}: has fewer than ${rule}`] : [],
  maxItems: (rule: number, value, path) =>
    Array.isArray(value) && value.length > rule ? [`${path}: has more than ${rule}`] : [],
  minLength: (rule: number, value, path) =>
    typeof value === 'string' && value.length < rule ? [`${path}: is shorter than ${rule}`] : [],
  maxLength: (rule: number, value, path) =>
    typeof value === 'string' && value.length > rule ? [`${path}: is longer than ${rule}`] : [],
  pattern: (rule: string, value, path) =>
    typeof value === 'string' && !new RegExp(rule, 'u').test(value)
      ? [`${path}: ${shown(value)} does not look like ${rule}`]
      : [],
  minimum: (rule: number, value, path) =>
    typeof value === 'number' && value < rule ? [`${path}: ${value} is less than ${rule}`] : [],
  maximum: (rule: number, value, path) =>
    typeof value === 'number' && value > rule ? [`${path}: ${value} is more than ${rule}`] : [],
  exclusiveMinimum: (rule: number, value, path) =>
    typeof value === 'number' && value <= rule ? [`${path}: ${value} is not more than ${rule}`] : [],
  exclusiveMaximum: (rule: number, value, path) =>
    typeof value === 'number' && value >= rule ? [`${path}: ${value} is not less than ${rule}`] : [],
  multipleOf: (rule: number, value, path) =>
    typeof value === 'number' && value % rule !== 0 ? [`${path}: ${value} is no multiple of ${rule}`] : [],
  anyOf: (rule: Schema[], value, path, root) =>
    fitting(rule, value, root) >= 1
      ? []
      : [
          `${path}: ${shown(value)} fits none of ${rule.length}`,
          ...rule.flatMap((one) => breaches(one, value, path, root)),
        ],
  oneOf: (rule: Schema[], value, path, root) =>
    fitting(rule, value, root) === 1
      ? []
      : [
          `${path}: ${shown(value)} fits ${fitting(rule, value, root)} of ${rule.length}`,
          ...rule.flatMap((one) => breaches(one, value, path, root)),
        ],
  allOf: (rule: Schema[], value, path, root) => rule.flatMap((one) => breaches(one, value, path, root)),
  $ref: (rule: string, value, path, root) =>
    breaches(
      rule
        .split('/')
        .slice(1)
        .reduce<Schema>((at, key) => at[key] as Schema, root),
      value,
      path,
      root,
    ),
}

const KNOWN = new Set(Object.keys(rules))

const fitting = (schemas: readonly Schema[], value: Json, root: Schema): number =>
  schemas.filter((one) => breaches(one, value, '$', root).length === 0).length
