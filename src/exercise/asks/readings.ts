import { travelAt } from '../../dials/travel.ts'
import { readable, type Scale } from '../../lathe/lathe.ts'
import type { Move } from '../../moves/operation.ts'
import { readingFigure } from '../../phrase/dial.ts'
import { length } from '../../phrase/figure.ts'
import type { Figure, Phrase } from '../../phrase/phrase.ts'
import { say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { scaleOf } from '../../plan/scale.ts'
import type { SheetStep } from '../../sheet/sheet.ts'
import { type Length, perUnit } from '../../units/length.ts'
import type { Follows, ReadingFacts } from '../blank.ts'
import { solve } from '../solve.ts'
import { type Ask, cutsOf, type Made, type Planned, type Scene } from './ask.ts'
import { onDial } from './on-dial.ts'

/** Every reading at which a slide stops to cut. */
export const readings: Ask = {
  says: 'the readings at which the dials stop to cut',
  make: (scene) =>
    cutsOf(scene).flatMap(({ feature, index, steps }) => {
      const made: Made[] = []
      for (const [i, step] of steps.entries()) {
        const one = readingBlank(scene, feature, index, i, step, made)
        if (one !== null) made.push(one)
      }
      return made
    }),
}

/** Moves whose reading comes from the drawing. Where a slide backs out to is a matter of choice. */
const asked = ({ action, slide, count }: Move): boolean =>
  typeof count === 'number' &&
  count !== 0 &&
  ((slide === 'cross-feed' && action === 'feed-in' && count > 0) ||
    (slide !== 'cross-feed' && (action === 'shift' || action === 'feed-across' || action === 'return')))

/** What roughing leaves on walls that get a plunge of their own does not stand on the paper: nobody can know its places. */
const leavesOnWall = ({ operation: { moves, walls } }: Planned, i: number): boolean => {
  const stop = moves.findIndex(({ action }) => action === 'measure')
  return walls === 'plunged' && moves[i]!.slide !== 'cross-feed' && i < stop
}

const readingBlank = (
  scene: Scene,
  feature: Planned,
  index: number,
  i: number,
  step: SheetStep,
  before: readonly Made[],
): Made | null => {
  const { number } = step
  const move = feature.operation.moves[i]!
  const scale = move.slide === undefined ? null : scaleOf(scene.plan, move.slide)
  if (!asked(move) || scale === null || leavesOnWall(feature, i)) return null
  const right = move.count! * readable(scale)
  const facts = factsOf(scene, feature, i, scale, toldDepth(step) ?? 0)
  // Where more goes into a reading than the sheet tells, it is not asked.
  if (solve(facts) !== right) return null
  return {
    id: `${number}.reading`,
    asks: words(say`step ${number}, ${move.slide!} to`, scene.plan.units),
    facts,
    ...onDial(scale, right, scene.plan.units),
    working: words(working(facts, right), scene.plan.units),
    follows: followsOf(facts, right, before),
    move: { feature: index, index: i },
    place: { step: number, part: 'reading' },
  }
}

const factsOf = ({ plan }: Scene, feature: Planned, i: number, scale: Scale, told: Length): ReadingFacts => {
  const { moves, angle, dimensions } = feature.operation
  const move = moves[i]!
  const deep = move.slide === 'cross-feed'
  const compound = move.slide === 'compound' ? angle : 0
  const own = travelAt(scale, move.count!)
  const roughed = moves
    .slice(0, i)
    .findLast(({ slide, purpose, count }) => slide === move.slide && purpose === 'rough' && typeof count === 'number')
  return {
    sort: 'reading',
    slide: move.slide!,
    scale,
    axis: deep ? 'deep' : 'along',
    travel: deep ? told : own * Math.cos((compound * Math.PI) / 180),
    angle: compound,
    tool: feature.edge.width,
    width: dimensions.find(({ id }) => id === 'width')?.aim ?? null,
    rough: move.purpose === 'finish' && roughed !== undefined ? travelAt(scale, roughed.count!) : null,
    correction: null,
    units: plan.units,
  }
}

/** As the sheet tells it beside the step, pm; null where it does not. */
const toldDepth = ({ effect }: SheetStep): Length | null => {
  const told = effect.find((part): part is Figure => typeof part !== 'string' && part.role === 'depth')
  return told === undefined || (told.unit !== 'inch' && told.unit !== 'mm') ? null : told.value * perUnit(told.unit)
}

const working = ({ travel, axis, scale, angle, units }: ReadingFacts, right: number): Phrase => [
  length(axis === 'deep' ? 'depth' : 'along', travel, units),
  axis === 'deep' ? ' deep' : ' along the work',
  ...(angle === 0 ? [] : [' by the slant of the compound']),
  scale.reads === 'diameter' ? ', twice that on a dial that reads diameter: ' : ': ',
  readingFigure(scale, right),
]

/** From any earlier reading of the same slide: as far from it as the sheet is. */
const followsOf = ({ slide }: ReadingFacts, right: number, before: readonly Made[]): readonly Follows[] =>
  before.flatMap(({ id, facts, right: earlier }) =>
    facts.sort === 'reading' && facts.slide === slide ? [{ id, factor: 1, plus: right - (earlier as number) }] : [],
  )
