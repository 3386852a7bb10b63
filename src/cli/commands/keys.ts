import { CODES, type Code } from '../../diagnostics/codes.ts'
import { suggest } from '../../diagnostics/suggest.ts'
import { exerciseSchema } from '../../exercise/schema.ts'
import type { SchemaName } from '../../job/json-schema.ts'
import { FREE_NAME, type Key, keysIn, keysOf } from '../../job/keys.ts'
import { type Io, UsageError } from '../io.ts'
import { keysText } from '../keys-text.ts'

export type KeysName = SchemaName | 'exercise'

/** Of every sort of file that a person writes. */
export const keysFor = (kind: KeysName): readonly Key[] => (kind === 'exercise' ? keysIn(exerciseSchema) : keysOf(kind))

/** Every key that a file may have, or those of a name and those below it. */
export const keysCommand = (kind: KeysName | 'codes', name: string | undefined, io: Io): number => {
  if (kind === 'codes') return codesCommand(name, io)
  const all = keysFor(kind)
  const keys = name === undefined ? all : keysNamed(all, name)
  if (keys.length === 0) throw new UsageError(unknown(kind, name ?? '', all))
  io.stdout.write(keysText(keys))
  return 0
}

/** Every code of a problem with its meaning, in columns; or that of one. */
const codesCommand = (name: string | undefined, io: Io): number => {
  const codes = (Object.keys(CODES) as Code[]).filter((code) => name === undefined || code === name)
  if (codes.length === 0)
    throw new UsageError(`there is no code ${JSON.stringify(name)}: groovewright keys codes lists them all`)
  io.stdout.write(codes.map((code) => `${code.padEnd(26)}${CODES[code]}\n`).join(''))
  return 0
}

/** `accuracy` is every key of that name and all below it; `features.width` only that of a feature. */
const keysNamed = (keys: readonly Key[], name: string): Key[] => {
  const wanted = name.split('.')
  return keys.filter(({ paths }) => paths.some((path) => holds(path.split('.'), wanted)))
}

/** The wanted names follow each other in the path; a name that the file chooses may be left out of them. */
const holds = (path: readonly string[], wanted: readonly string[]): boolean =>
  [path, path.filter((each) => each !== FREE_NAME)].some((names) =>
    names.some((_, start) => wanted.every((want, index) => names[start + index] === want)),
  )

const withoutFree = (path: string): string => path.replaceAll(`${FREE_NAME}.`, '')

const KINDS: readonly KeysName[] = ['lathe', 'toolbox', 'job', 'exercise']

const unknown = (kind: KeysName, name: string, keys: readonly Key[]): string => {
  const elsewhere = KINDS.find((other) => keysNamed(keysFor(other), name).length > 0)
  const names = keys.flatMap(({ paths }) => paths.flatMap((path) => [path, withoutFree(path), path.split('.').at(-1)!]))
  const meant = suggest(name, names)
  const hint = elsewhere
    ? `see groovewright keys ${elsewhere} ${name}`
    : meant
      ? `did you mean "${meant}"?`
      : `groovewright keys ${kind} lists them all`
  return `${kind === 'exercise' ? 'an' : 'a'} ${kind} has no key ${JSON.stringify(name)}: ${hint}`
}
