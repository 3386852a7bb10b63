/** As much of JSON Schema as ours have. */
export type Node = {
  readonly type?: string
  readonly description?: string
  readonly const?: unknown
  readonly properties?: Readonly<Record<string, Node>>
  readonly additionalProperties?: Node | false
  readonly required?: readonly string[]
  readonly items?: Node
  readonly oneOf?: readonly Node[]
  readonly anyOf?: readonly Node[]
}

/** A mapping somewhere in a file: the keys it may have, and a file with a given mapping at that place. */
export type Site = {
  readonly where: string
  readonly properties: Readonly<Record<string, Node>>
  /** The words that choose this option: kind, shape. */
  readonly constants: Readonly<Record<string, unknown>>
  readonly open: boolean
  readonly required: readonly string[]
  readonly wrap: (mapping: object) => unknown
}

export const sitesOf = (node: Node, where = '', wrap: Site['wrap'] = (mapping) => mapping): Site[] => {
  const { properties = {}, additionalProperties: others, items, required = [], oneOf = [], anyOf = [] } = node
  const constants = Object.fromEntries(
    Object.entries(properties).flatMap(([key, { const: value }]) => (value === undefined ? [] : [[key, value]])),
  )
  const kind = Object.values(constants).join(' ')
  const under = (key: string, child: Node): Site[] =>
    sitesOf(child, `${where}/${kind}${kind ? '.' : ''}${key}`, (mapping) => wrap({ ...constants, [key]: mapping }))
  return [
    ...(node.properties ? [{ where: `${where} ${kind}`, properties, constants, open: !!others, required, wrap }] : []),
    ...Object.entries(properties).flatMap(([key, child]) => under(key, child)),
    ...(others ? under('one', others) : []),
    ...(items ? sitesOf(items, `${where}[]`, (mapping) => wrap([mapping])) : []),
    ...[...oneOf, ...anyOf].flatMap((option) => sitesOf(option, where, wrap)),
  ]
}

/** A lathe or a toolbox with something in it, beside the key that is looked at, that shows what it is. */
export const recognizable = (name: string, file: unknown, key?: string): unknown => {
  if (name === 'job') return file
  if (name === 'toolbox') return { neck: { shape: 'square' }, ...(file as object) }
  return { [key === 'compound' ? 'carriage' : 'compound']: {}, ...(file as object) }
}
