import type { Sheet, SheetFeature, SheetStep } from '../brute/sheet-shape.ts'
import type { Drawn } from './drawn.ts'
import type { Trait } from './traits.ts'
import { TRAITS } from './traits.ts'

/** Every sort of feature that the random jobs are to hold: a sort that is no longer drawn, or always refused, would be proved by nothing. */
export const SORTS = [
  'groove in one place',
  'groove in several places',
  'groove with fillets stepped along',
  'concave in one place',
  'concave stepped along',
  'corner by its own tool',
  'corner stepped with a round tool',
  'corner stepped with a square tool',
  'V plunged',
  'V fed down its flank',
  'compound swung',
  'in by pecks',
  'a plunge for each wall',
  'fed in by the compound',
  'cross-feed with coarse marks',
  'along by the carriage dial',
  'along by an indicator',
  'along to the lines',
  'tool with a sloping face',
  ...TRAITS,
] as const

export type Sort = (typeof SORTS)[number]

/** What sorts a planned feature is of: one by its form, and more by how it is cut. */
export function sortsOf(sheet: Sheet, index: number, drawn: Drawn, traits: readonly Trait[]): Sort[] {
  const feature = sheet.features[index]!
  const steps = sheet.steps.filter((step) => step.feature === index)
  const angle = feature.compoundAngle ?? 0
  const inByCompound = steps.some(({ action, slide }) => action === 'feed-in' && slide === 'compound')
  const { graduation, readTo, units } = sheet.lathe.crossFeed
  const more: [boolean, Sort][] = [
    [angle !== 0, 'compound swung'],
    [steps.some(({ purpose }) => purpose === 'clear-chip'), 'in by pecks'],
    [plungesWalls(steps), 'a plunge for each wall'],
    [inByCompound, 'fed in by the compound'],
    [graduation * readTo >= (units === 'inch' ? 0.002 : 0.05), 'cross-feed with coarse marks'],
    [feature.edge?.face !== undefined, 'tool with a sloping face'],
  ]
  const held = more.flatMap(([is, sort]) => (is ? [sort] : []))
  return [formOf(feature, drawn, steps), ...held, ...carriageSorts(sheet, steps), ...traits, ...(drawn.traits ?? [])]
}

/** The tool goes on to another place between two plunges of the finish, and neither is swept from the other's wall. */
function plungesWalls(steps: readonly SheetStep[]): boolean {
  const finishes = steps.filter(({ action, purpose }) => action === 'feed-in' && purpose === 'finish')
  return finishes.length === 2 && finishes[0]!.reading === finishes[1]!.reading
}

function formOf(feature: SheetFeature, drawn: Drawn, steps: readonly SheetStep[]): Sort {
  const edge = feature.edge!
  if (drawn.kind === 'vee') {
    const flank = steps.some(({ action, slide }) => action === 'feed-in' && slide === 'compound')
    return flank ? 'V fed down its flank' : 'V plunged'
  }
  if (drawn.kind === 'corner') {
    if (edge.shape === 'corner') return 'corner by its own tool'
    return edge.shape === 'square' ? 'corner stepped with a square tool' : 'corner stepped with a round tool'
  }
  const stepped = placesOf(steps) > 1
  if (drawn.kind === 'concave') return stepped ? 'concave stepped along' : 'concave in one place'
  if (drawn.corner !== null && (edge.radius ?? 0) < drawn.corner.low) return 'groove with fillets stepped along'
  return stepped ? 'groove in several places' : 'groove in one place'
}

/** At how many places along the work the tool is fed in. */
function placesOf(steps: readonly SheetStep[]): number {
  const places = new Set<string>()
  let [compound, carriage] = [0, 0]
  for (const { action, slide, reading, placeFromEnd } of steps) {
    if (slide === 'compound' && typeof reading === 'number') compound = reading
    if (slide === 'carriage') carriage = placeFromEnd ?? reading ?? carriage
    if (action === 'feed-in' && slide === 'cross-feed') places.add(`${compound} ${carriage}`)
  }
  return places.size
}

function carriageSorts(sheet: Sheet, steps: readonly SheetStep[]): Sort[] {
  const moved = steps.filter(({ slide }) => slide === 'carriage')
  if (moved.some(({ placeFromEnd }) => placeFromEnd !== undefined)) return ['along to the lines']
  if (!moved.some(({ reading, action }) => action !== 'zero' && typeof reading === 'number')) return []
  return [sheet.lathe.carriage?.readout ? 'along by an indicator' : 'along by the carriage dial']
}
