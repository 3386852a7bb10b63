import type { Figure, Phrase } from '../phrase/phrase.ts'
import type { HeadingLine } from '../sheet/sheet.ts'
import type { HideWord } from './words.ts'

export type Open = ReadonlySet<HideWord>

const isFigure = (part: Phrase[number]): part is Figure => typeof part !== 'string'

/** What is given about a feature: its drawing, its tool, its dials. */
export const openHeading = (
  heading: readonly HeadingLine[],
  open: Open,
): { label: string; says: readonly Phrase[] }[] =>
  heading
    .filter(({ about }) => !open.has('drill') || about === 'cross-feed')
    .filter(({ about }) => about !== 'speed' || !SPEED.some((word) => open.has(word)))
    .map(({ about, label, says }) => ({
      label,
      says:
        about === 'speed'
          ? says.slice(0, 1)
          : says.map((phrase) => (open.has('shift') || open.has('moves') ? withoutUndersize(phrase) : phrase)),
    }))

const SPEED: readonly HideWord[] = ['rpm']

/** "…, .148 wide as measured: .017 under" tells how far the tool is shifted. */
const withoutUndersize = (phrase: Phrase): Phrase => {
  const found = phrase.findIndex((part) => isFigure(part) && part.role === 'undersize')
  return found < 0 ? phrase : phrase.slice(0, found - 1).concat(wordsBefore(phrase[found - 1]))
}

const wordsBefore = (part: Phrase[number] | undefined): Phrase =>
  typeof part === 'string' ? [part.replace(/: $/, '')] : []

/** A warning is always shown; what is worked out in it is left open. */
export const openWarning = (phrase: Phrase): Phrase =>
  phrase.map((part) => (isFigure(part) && part.from === 'answer' ? { ...part, value: Number.NaN, text: '____' } : part))
