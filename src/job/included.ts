import { latheFileSchema } from '../lathe/schema.ts'
import type { SourceFile } from '../source/source.ts'
import { jobSchema, toolSchema } from './schema.ts'
import { type AnySchema, shapeOf } from './schema-walk.ts'

/** What a file names by a path. */
export type Included = 'lathe' | 'toolbox' | 'job'

/**
 * Whether a file is at least an attempt at what it is named as: it has a key of one, or nothing at all. One that is not
 * is anybody's file: it is named in a message and never quoted, because a job may come from somebody who may not read
 * what its reader may.
 */
export const isAttempt = ({ text }: SourceFile, at: Included): boolean => NOTHING.test(text) || KEYS[at].test(text)

const NOTHING = /^\s*(?:\{\s*\}\s*)?$/

/** Keys that anybody's file may have; units count only with the word that they have here. */
const ANYBODYS: readonly string[] = ['name', 'title', 'work', 'units']

/** At the beginning of a line or of an entry in braces; that they are broken otherwise does not matter. */
const patternOf = (keys: readonly string[]): RegExp => {
  const own = keys.filter((key) => !ANYBODYS.includes(key))
  const words = own.map((key) => key.replaceAll('-', '-?').replace(/s$/, 's?')).join('|')
  return new RegExp(
    `(?:^|[{,])[ \\t]*["']?(?:(?:${words})["']?[ \\t]*:|units["']?[ \\t]*:[ \\t]*["']?(?:inch|mm)\\b)`,
    'im',
  )
}

const keysOf = (schema: AnySchema): string[] => Object.keys(shapeOf(schema).shape)

const KEYS: Readonly<Record<Included, RegExp>> = {
  lathe: patternOf(keysOf(latheFileSchema)),
  toolbox: patternOf([...new Set(toolSchema._zod.def.options.flatMap(keysOf))]),
  job: patternOf(keysOf(jobSchema)),
}

export const notAttempt = (file: string, at: Included): { message: string; hint: string } => ({
  message: `${file} is no ${at === 'lathe' ? 'lathe file' : at}: nothing of it is read`,
  hint: `${HAS[at]}; groovewright new ${at} prints one to start from`,
})

const HAS: Readonly<Record<Included, string>> = {
  lathe: 'a lathe file has cross-feed:, compound: and spindle-speeds:',
  toolbox: 'a toolbox has a name for each tool, and below it its shape:',
  job: 'a job has part:, lathe: and features:',
}
