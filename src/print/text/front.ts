import type { Phrase } from '../../phrase/phrase.ts'
import { heldWords } from '../../phrase/words.ts'
import type { About, HeadingLine, Sheet } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { beside, COLUMNS } from './columns.ts'

export const LABEL = 12

/** Labels joined into one line at the front, under the first of them. */
const JOINED: Readonly<Partial<Record<About, About>>> = { held: 'material', units: 'lathe', surface: 'drawn' }
/** What a joined line begins with, in place of its label. */
const LEADS: Readonly<Partial<Record<About, string>>> = { surface: 'on ' }
/** Only needed when a question comes up: printed at the back. */
const BACK: ReadonlySet<About> = new Set(['dials', 'why', 'sources'])
/** Only the first phrase is needed to begin; the rest, with the sources, is printed at the back. */
const FIRST_ONLY: ReadonlySet<About> = new Set(['tool', 'speed'])
/** Several phrases that are one thing: on one line. */
const ONE_LINE: ReadonlySet<About> = new Set(['drawn'])
/** How the slides are: told once, if it is the same for every feature. */
const SLIDES: readonly About[] = ['cross-feed', 'compound', 'carriage']

/** What is needed to begin, in as few lines as it fits. */
export const frontOf = (blocks: readonly HeadingLine[], units: Units, width: number = COLUMNS): string[] =>
  blocks
    .filter(({ about }) => !BACK.has(about) && JOINED[about] === undefined)
    .flatMap((block) => {
      const more = blocks.filter(({ about }) => JOINED[about] === block.about)
      const says = FIRST_ONLY.has(block.about) ? block.says.slice(0, 1) : block.says
      const texts = [
        ...says.map((phrase) => heldWords(phrase, units)),
        ...more.flatMap((one) => one.says.map((phrase) => `${LEADS[one.about] ?? ''}${heldWords(phrase, units)}`)),
      ]
      const oneLine = ONE_LINE.has(block.about) || more.length > 0
      return (oneLine ? [texts.join('; ')] : texts).flatMap((text, i) =>
        beside(i === 0 ? block.label : '', LABEL, text, width),
      )
    })

/** What is printed at the back. */
export const restOf = ({ about, says }: HeadingLine): readonly Phrase[] =>
  BACK.has(about) ? says : FIRST_ONLY.has(about) ? says.slice(1) : []

/** The rest, with its labels. */
export const backOf = (blocks: readonly HeadingLine[], units: Units, width: number = COLUMNS): string[] =>
  blocks.flatMap((block) =>
    restOf(block).flatMap((phrase, i) => beside(i === 0 ? block.label : '', LABEL, heldWords(phrase, units), width)),
  )

/** The slides of a sheet if all its features have them alike, and there are several; otherwise none. */
export const commonSlides = ({ features, units }: Sheet): HeadingLine[] => {
  const planned = features.flatMap((feature) => (feature.status === 'planned' ? [feature] : []))
  const [first, ...others] = planned
  if (first === undefined || others.length === 0) return []
  const same = first.heading.filter(
    (line) =>
      SLIDES.includes(line.about) &&
      others.every(({ heading }) => heading.some((one) => one.about === line.about && alike(one, line, units))),
  )
  return same
}

const alike = (one: HeadingLine, two: HeadingLine, units: Units): boolean =>
  JSON.stringify(one.says.map((phrase) => heldWords(phrase, units))) ===
  JSON.stringify(two.says.map((phrase) => heldWords(phrase, units)))
