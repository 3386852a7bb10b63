import type { SourceFile } from '../source/source.ts'

/** What a file names by a path. */
export type Included = 'lathe' | 'toolbox' | 'job'

/**
 * Whether a file is at least an attempt at what it is named as. One that is not is anybody's file: it is named in a
 * message and never quoted, because a job may come from somebody who may not read what its reader may.
 */
export const isAttempt = ({ text }: SourceFile, at: Included): boolean => text.trim() === '' || KEYS[at].test(text)

/** Keys at the beginning of a line or of an entry in braces; that they are broken otherwise does not matter. */
const KEYS: Readonly<Record<Included, RegExp>> = {
  lathe: /(?:^|[{,])[ \t]*["']?(?:cross-?feed|compound|spindle-?speeds?)["']?[ \t]*:/im,
  toolbox: /(?:^|[{,])[ \t]*["']?(?:shape|reach|nose)["']?[ \t]*:/im,
  job: /(?:^|[{,])[ \t]*["']?(?:features?|part|lathe)["']?[ \t]*:/im,
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
