import type { Phrase } from '../phrase/phrase.ts'
import type { Sheet, SheetFeature, SheetStep } from '../sheet/sheet.ts'
import { blankFigure } from './blank-figure.ts'
import type { Placed } from './blanks.ts'
import { cautionsIn } from './cautions.ts'
import { type Open, openHeading, openWarning } from './open-heading.ts'
import { openSteps } from './open-steps.ts'
import type { Outline } from './outline.ts'
import type { HideWord } from './words.ts'

/** What a learner gets, for every printer: nothing in it can tell an answer. */
export type Worksheet = {
  /** Its number in the set, with as many figures as the last. */
  readonly sheet: string
  readonly learner: string | null
  readonly title: string
  readonly teaches: string
  readonly job: string
  readonly units: Sheet['units']
  readonly cautions: readonly string[]
  readonly heading: readonly { readonly label: string; readonly says: readonly Phrase[] }[]
  readonly features: readonly OpenFeature[]
  readonly steps: readonly SheetStep[]
  readonly questions: readonly { readonly number: number; readonly says: Phrase; readonly choices: readonly string[] }[]
  readonly blanks: readonly {
    readonly id: string
    readonly number: number
    readonly outOf: number
    readonly asks: string
  }[]
  readonly outOf: number
}

export type OpenFeature = {
  readonly name: string
  readonly kind: string
  readonly index: number
  readonly outline: Outline
  readonly heading: readonly { readonly label: string; readonly says: readonly Phrase[] }[]
  readonly drawn: readonly Phrase[]
  readonly warnings: readonly Phrase[]
}

export type Who = Pick<Worksheet, 'sheet' | 'learner' | 'title' | 'teaches'>

/** The sheet with its answers left open. Only what is named here is taken over: what is not, cannot leak. */
export const worksheetOf = (
  who: Who,
  sheet: Sheet,
  blanks: readonly Placed[],
  hide: readonly HideWord[],
  outlines: readonly Outline[],
): Worksheet => {
  const open: Open = new Set(hide)
  return {
    ...who,
    job: sheet.title,
    units: sheet.units,
    cautions: [...sheet.cautions, ...cautionsIn()],
    heading: sheet.heading.map(({ label, says }) => ({ label, says })),
    features: sheet.features.map((feature) => openFeature(feature, open, outlines[feature.index] ?? 'square')),
    steps: stepsFor(sheet, blanks, open),
    ...asked(blanks),
  }
}

/** A sheet of a choice among jobs, which stand in its first question. */
export const worksheetAmong = (
  who: Who,
  units: Sheet['units'],
  blanks: readonly Placed[],
  cautions: readonly string[],
): Worksheet => ({
  ...who,
  job: 'a choice among jobs',
  units,
  cautions,
  heading: [],
  features: [],
  steps: [],
  ...asked(blanks),
})

const asked = (blanks: readonly Placed[]): Pick<Worksheet, 'questions' | 'blanks' | 'outOf'> => ({
  questions: blanks.flatMap(({ number, place, choices = [] }, i) =>
    'question' in place
      ? [
          {
            number,
            says: [`${place.question} `, blankFigure(null)],
            choices: sameAs(choices, blanks[i - 1]) ? [] : choices,
          },
        ]
      : [],
  ),
  blanks: blanks.map(({ id, number, outOf, asks }) => ({ id, number, outOf, asks })),
  outOf: blanks.reduce((sum, { outOf }) => sum + outOf, 0),
})

/** What may be chosen stands once, under the first question that chooses among it. */
const sameAs = (choices: readonly string[], before: Placed | undefined): boolean =>
  choices.length > 0 && before?.choices?.join('\n') === choices.join('\n')

/** Where the steps are the answer, or have nothing to do with the question, they are not printed. */
const NO_STEPS = ['order', 'set-up', 'grinding', 'caution', 'drill'] as const
const WITH_STEPS = ['readings', 'turns', 'marks', 'shift'] as const

const stepsFor = (sheet: Sheet, blanks: readonly Placed[], open: Open): readonly SheetStep[] => {
  if (NO_STEPS.some((word) => open.has(word))) return []
  if (open.has('mistake')) return sheet.steps
  // What is written by the learner begins where the set-up ends.
  if (open.has('moves')) return openSteps(sheet, blanks, open).filter(({ group }) => group === 'set up')
  return WITH_STEPS.some((word) => open.has(word)) ? openSteps(sheet, blanks, open) : []
}

const openFeature = (feature: SheetFeature, open: Open, outline: Outline): OpenFeature => {
  const { name, kind, index, warnings } = feature
  const heading = feature.status === 'planned' ? openHeading(feature.heading, open) : []
  const drawn = feature.status === 'planned' ? (feature.heading.find(({ about }) => about === 'drawn')?.says ?? []) : []
  return { name, kind, index, outline, heading, drawn, warnings: warnings.map(openWarning) }
}
