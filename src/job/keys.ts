import * as z from 'zod/mini'
import { defaults, measures } from '../units/measure-schema.ts'
import { SCHEMAS, type SchemaName } from './json-schema.ts'
import { type AnySchema, choicesOf, isOptional, type Options, shapeOf, unwrap, wordsOf } from './schema-walk.ts'

/** One key that a file may have, as its schema describes it. */
export type Key = {
  /**
   * Every place where it is allowed, such as features.leave; a key that is allowed in several places is still one key.
   */
  readonly paths: readonly string[]
  /** The kinds of feature or shapes of tool that have it, such as "radius concave"; empty if all have it. */
  readonly only: readonly string[]
  readonly says: string
  /** The words it accepts, if it accepts nothing else. */
  readonly words: readonly string[]
  readonly required: boolean
  /** What applies if it is left out, as the end of a sentence. */
  readonly byDefault: string | null
  readonly example: unknown
}

/** Used in a path for a name that the file chooses. */
export const FREE_NAME = '<name>'

type Place = { readonly path: readonly string[]; readonly kind: string; readonly among: number }
type Found = {
  readonly paths: Set<string>
  readonly kinds: Set<string>
  readonly among: number
  readonly facts: KeyFacts
}
type KeyFacts = Omit<Key, 'paths' | 'only'>

/** Every key of a file, in the order of its schema: the schemas are walked, so that no other list is needed. */
export const keysOf = (name: SchemaName): Key[] => keysIn(SCHEMAS[name])

/** The same of any schema that is written like them. */
export const keysIn = (schema: AnySchema): Key[] => {
  const found = new Map<AnySchema, Found>()
  walk(schema, { path: [], kind: '', among: 0 }, (schema, { path, kind, among }, facts) => {
    const key = found.get(schema) ?? { paths: new Set(), kinds: new Set(), among, facts: facts() }
    key.paths.add(path.join('.'))
    key.kinds.add(kind)
    found.set(schema, key)
  })
  return [...found.values()].map(({ paths, kinds, among, facts }) => ({
    ...facts,
    paths: [...paths],
    only: kinds.size < among ? [...kinds] : [],
  }))
}

type Note = (schema: AnySchema, place: Place, facts: () => KeyFacts) => void

const walk = (asked: AnySchema, place: Place, note: Note, known: readonly string[] = []): void => {
  const schema = unwrap(asked)
  const def = schema._zod.def as unknown as Partial<Options> & { type: string; element: AnySchema }
  if (measures.has(schema)) return
  if (def.type === 'array') walk(def.element, place, note)
  if (def.type === 'union' && def.discriminator !== undefined) walkKinds(schema, place, note, known)
  else if (def.type === 'union') for (const option of def.options ?? []) walk(option, place, note)
  if (def.type !== 'object') return
  const { shape, others } = shapeOf(schema)
  for (const [key, inner] of [...Object.entries(shape), ...(others ? [[FREE_NAME, others] as const] : [])]) {
    if (known.includes(key)) continue
    const at = { ...place, path: [...place.path, key] }
    note(inner, at, () => factsOf(key, inner))
    walk(inner, at, note)
  }
}

/** The word that chooses a kind is one key for all kinds; then the keys of each kind follow. */
const walkKinds = (union: AnySchema, place: Place, note: Note, known: readonly string[]): void => {
  const { options, discriminator = '' } = union._zod.def as unknown as Options
  const among = place.among || leavesOf(union).length
  const path = [...place.path, discriminator]
  for (const kind of leavesOf(union)) {
    const label = [place.kind, kind].filter(Boolean).join(' ')
    note(wordSchema(union, discriminator), { path, kind: label, among }, () => chooser(union))
  }
  for (const option of options) {
    const kind = [place.kind, ...wordsOf(option, discriminator)].filter(Boolean).join(' ')
    walk(option, { ...place, kind, among }, note, [...known, discriminator])
  }
}

/** Every last kind below a union: groove, radius concave, radius corner, v-groove. */
const leavesOf = (union: AnySchema): string[] => {
  const { options, discriminator } = union._zod.def as unknown as Options
  if (discriminator === undefined) return ['']
  return options.flatMap((option) =>
    leavesOf(option).map((leaf) => [...wordsOf(option, discriminator), leaf].filter(Boolean).join(' ')),
  )
}

const factsOf = (key: string, asked: AnySchema): KeyFacts => {
  const schema = unwrap(asked)
  const { description = '', examples } = z.globalRegistry.get(schema) ?? {}
  return {
    says: description,
    words: schema._zod.def.type === 'enum' ? choicesOf(schema) : [],
    required: !isOptional(asked) && key !== FREE_NAME,
    byDefault: defaults.get(asked)?.says ?? null,
    example: (examples as unknown[] | undefined)?.[0],
  }
}

const chooser = (union: AnySchema): KeyFacts => {
  const { options, discriminator = '' } = union._zod.def as unknown as Options
  const words = options.flatMap((option) => wordsOf(option, discriminator))
  const choices = options.map((option) => {
    const says = z.globalRegistry.get(wordSchema(option, discriminator))?.description ?? ''
    return `${wordsOf(option, discriminator).join('')}, ${says.charAt(0).toLowerCase()}${says.slice(1, -1)}`
  })
  return { says: `Which it is: ${choices.join('; ')}.`, words, required: true, byDefault: null, example: words[0] }
}

/** The schema of the word that chooses an option. */
const wordSchema = (option: AnySchema, discriminator: string): AnySchema => {
  const { options } = option._zod.def as unknown as Partial<Options>
  return options ? wordSchema(options[0]!, discriminator) : shapeOf(option).shape[discriminator]!
}
