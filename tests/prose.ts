import type { Prose } from '../src/phrase/phrase.ts'
import { plain } from '../src/phrase/words.ts'
import type { Units } from '../src/units/length.ts'

/** Prose as it is read, for a test that asks for its words. */
export const told = (prose: Prose | undefined, units: Units = 'inch'): string => plain(prose ?? '', units)
export const allTold = (all: readonly Prose[], units: Units = 'inch'): string =>
  all.map((one) => told(one, units)).join(' ')
