import { words } from '../../phrase/words.ts'
import type { About, Sheet, SheetFeature } from '../../sheet/sheet.ts'
import { type Child, type Markup, tag } from '../markup.ts'
import { framed, type Picture } from '../svg/picture.ts'
import { everyReading, readingsOf } from '../svg/readings.ts'
import { hasWrongSide, swivelPicture } from '../svg/swivel.ts'
import { dialOf } from './dials.ts'
import { facts, sentence, told } from './phrases.ts'
import { type Beside, stepList } from './steps.ts'

type Planned = Extract<SheetFeature, { status: 'planned' }>

/** What a feature is cut with and from stands before its steps; what that was worked out from stands at the back. */
export const AT_THE_BACK: ReadonlySet<About> = new Set(['cross-feed', 'compound', 'carriage'])

/** A feature with its form, its steps and its dials. */
export const featureSection = (sheet: Sheet, feature: SheetFeature, pictures: readonly Picture[]): Markup => {
  const of =
    sheet.features.length > 1 ? tag('span', { class: 'of' }, `${feature.index + 1} of ${sheet.features.length}`) : []
  return tag(
    'section',
    { class: 'feature', id: `feature-${feature.index + 1}` },
    tag('h2', {}, tag('span', {}, `${feature.kind}: ${feature.name}`), of),
    ...(feature.status === 'refused' ? refusal(sheet, feature) : planned(sheet, feature, pictures)),
  )
}

const planned = (sheet: Sheet, feature: Planned, pictures: readonly Picture[]): Child[] => {
  const { units } = sheet
  const own = pictures.filter((picture) => picture.feature === feature.index)
  const front = feature.heading.filter(({ about }) => !AT_THE_BACK.has(about))
  return [
    tag(
      'div',
      { class: 'look' },
      ...own.filter(({ kind }) => kind === 'form' || kind === 'tool').map(figure),
      ...facts(
        front.map(({ about, label, says }) => [
          label,
          (about === 'speed' ? says.slice(0, 1) : says).map((each) => told(each, units)),
        ]),
      ),
    ),
    ...feature.warnings.map((each) => warning(words(each, units))),
    ...(feature.gains ?? []).map(({ holds, says }) =>
      tag(
        'p',
        { class: 'note' },
        tag('strong', {}, holds ? 'In tol. if ' : 'Better if '),
        sentence(words(says, units)),
      ),
    ),
    ...feature.notes.map((each) => tag('p', { class: 'note' }, sentence(words(each, units)))),
    ...stepList(sheet, feature.index, beside(sheet, feature)),
  ]
}

/** Every reading on its face, those that matter on paper too; the swivel scale where there is a wrong side of it. */
const beside = (sheet: Sheet, feature: Planned): Beside => {
  const { index } = feature
  const matter = new Set(readingsOf(sheet, index).map(({ step }) => step.number))
  const swings = sheet.steps.filter((step) => step.feature === index && step.action === 'swing')
  return {
    dials: new Map(
      everyReading(sheet, index).map((one) => {
        const { number } = one.step
        return [number, dialOf(one, matter.has(number), isFolded(sheet, number))]
      }),
    ),
    pictures: new Map(
      hasWrongSide(sheet, feature)
        ? swings.map((step) => [step.number, figure(swivelPicture(sheet, feature, step, false))] as const)
        : [],
    ),
  }
}

/** Whether a line of the list stands for this step and others. */
const isFolded = ({ places = [] }: Sheet, step: number): boolean =>
  places.some(({ from, to }) => from <= step && step <= to)

/** A drawing that is broader than a phone keeps so much of its size that its letters can be read: a narrow page scrolls it. */
export const figure = (picture: Picture): Markup =>
  tag('figure', { class: picture.width > BROAD ? `${picture.kind} broad` : picture.kind, tabindex: 0 }, framed(picture))

/** mm of paper. */
const BROAD = 125

export const warning = (text: string): Markup =>
  tag('p', { class: 'warning' }, tag('strong', {}, 'WARNING '), sentence(text))

const refusal = (
  { units }: Sheet,
  { reason, remedy, warnings }: Extract<SheetFeature, { status: 'refused' }>,
): Child[] => [
  ...facts([
    ['REFUSED', [sentence(words(reason, units)), 'No steps are given: it cannot be cut as asked.']],
    ['Remedy', [sentence(words(remedy, units))]],
  ]),
  ...warnings.map((each) => warning(words(each, units))),
]
