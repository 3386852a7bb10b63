import { heldWords } from '../../phrase/words.ts'
import type { Labeled } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside } from './columns.ts'

export const LABEL = 12

/** Labels joined into one line at the front, under the first of them. */
const JOINED: Readonly<Record<string, string>> = { Held: 'Material', Units: 'Lathe' }
/** Only needed when a question comes up: printed at the back. */
const BACK: ReadonlySet<string> = new Set(['Dials', 'Why'])
/** Only the first phrase is needed to begin; the rest, with the sources, is printed at the back. */
const FIRST_ONLY: ReadonlySet<string> = new Set(['Tool', 'Speed'])
/** Several phrases that are one thing: on one line. */
const ONE_LINE: ReadonlySet<string> = new Set(['Drawn'])

/** What is needed to begin, in as few lines as it fits. */
export const frontOf = (blocks: readonly Labeled[], units: Units): string[] =>
  blocks
    .filter(({ label }) => !BACK.has(label) && JOINED[label] === undefined)
    .flatMap((block) => {
      const more = blocks.filter(({ label }) => JOINED[label] === block.label)
      const says = FIRST_ONLY.has(block.label) ? block.says.slice(0, 1) : block.says
      const texts = [...says, ...more.flatMap((one) => one.says)].map((phrase) => heldWords(phrase, units))
      const oneLine = ONE_LINE.has(block.label) || more.length > 0
      return (oneLine ? [texts.join('; ')] : texts).flatMap((text, i) =>
        beside(i === 0 ? block.label : '', LABEL, text),
      )
    })

/** The rest, with its labels. */
export const backOf = (blocks: readonly Labeled[], units: Units): string[] =>
  blocks.flatMap(({ label, says }) => {
    const rest = BACK.has(label) ? says : FIRST_ONLY.has(label) ? says.slice(1) : []
    return rest.flatMap((phrase, i) => beside(i === 0 ? label : '', LABEL, heldWords(phrase, units)))
  })
