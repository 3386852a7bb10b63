import { heldWords } from '../../phrase/words.ts'
import type { About, HeadingLine } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside } from './columns.ts'

export const LABEL = 12

/** Labels joined into one line at the front, under the first of them. */
const JOINED: Readonly<Partial<Record<About, About>>> = { held: 'material', units: 'lathe' }
/** Only needed when a question comes up: printed at the back. */
const BACK: ReadonlySet<About> = new Set(['dials', 'why'])
/** Only the first phrase is needed to begin; the rest, with the sources, is printed at the back. */
const FIRST_ONLY: ReadonlySet<About> = new Set(['tool', 'speed'])
/** Several phrases that are one thing: on one line. */
const ONE_LINE: ReadonlySet<About> = new Set(['drawn'])

/** What is needed to begin, in as few lines as it fits. */
export const frontOf = (blocks: readonly HeadingLine[], units: Units): string[] =>
  blocks
    .filter(({ about }) => !BACK.has(about) && JOINED[about] === undefined)
    .flatMap((block) => {
      const more = blocks.filter(({ about }) => JOINED[about] === block.about)
      const says = FIRST_ONLY.has(block.about) ? block.says.slice(0, 1) : block.says
      const texts = [...says, ...more.flatMap((one) => one.says)].map((phrase) => heldWords(phrase, units))
      const oneLine = ONE_LINE.has(block.about) || more.length > 0
      return (oneLine ? [texts.join('; ')] : texts).flatMap((text, i) =>
        beside(i === 0 ? block.label : '', LABEL, text),
      )
    })

/** The rest, with its labels. */
export const backOf = (blocks: readonly HeadingLine[], units: Units): string[] =>
  blocks.flatMap(({ about, label, says }) => {
    const rest = BACK.has(about) ? says : FIRST_ONLY.has(about) ? says.slice(1) : []
    return rest.flatMap((phrase, i) => beside(i === 0 ? label : '', LABEL, heldWords(phrase, units)))
  })
