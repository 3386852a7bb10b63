import { travelAt } from '../../dials/travel.ts'
import { readable } from '../../lathe/lathe.ts'
import { readingFigure, shownOn } from '../../phrase/dial.ts'
import { exact, say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import type { SheetStep } from '../../sheet/sheet.ts'
import type { ReadingFacts } from '../blank.ts'
import { shuffledList } from '../shuffle.ts'
import { solve } from '../solve.ts'
import { type Ask, cutsOf, type Made, type Planned, type Scene } from './ask.ts'
import { onDial } from './on-dial.ts'

/** So many measurements are asked about. */
const ASKED = 2

/** The reading to finish at, from what the bottom measures at the stop. */
export const corrections: Ask = {
  says: 'the reading to finish at, from what was measured at the stop',
  make: (scene) => cutsOf(scene).flatMap(({ feature, index, steps }) => ofFeature(scene, feature, index, steps)),
}

/** Words of `hide` that ask for the readings which a question about a correction would otherwise tell. */
const READINGS = ['readings', 'turns', 'marks', 'moves'] as const

const ofFeature = (scene: Scene, feature: Planned, index: number, steps: readonly SheetStep[]): Made[] => {
  const { moves, angle, surface } = feature.operation
  const scale = scene.plan.lathe.crossFeed
  const { units } = scene.plan
  const last = moves.findLast(
    ({ slide, purpose, action }) => slide === 'cross-feed' && purpose === 'finish' && action === 'feed-in',
  )
  const rough = moves.findLast(
    ({ slide, purpose, action }) => slide === 'cross-feed' && purpose === 'rough' && action === 'feed-in',
  )
  const stop = moves.findIndex(({ action, purpose }) => action === 'measure' && purpose === 'expect-rough')
  const expected = feature.trace.at[stop]?.find(({ id }) => id === 'bottomDiameter')?.surely ?? null
  if (last?.count == null || rough?.count == null || expected === null || angle !== 0) return []
  const finish = travelAt(scale, last.count)
  const instead = steps[moves.indexOf(last)]?.number ?? 0
  const open = READINGS.some((word) => scene.hides.has(word))
  const step = travelAt(scale, 1)
  return shuffledList([-3, -2, -1, 1, 2, 3], `${scene.seed}/corrections/${index}`)
    .slice(0, ASKED)
    .map((steps, i): Made => {
      const correction = steps * step
      const measured = expected + 2 * correction
      const facts: ReadingFacts = {
        sort: 'reading',
        slide: 'cross-feed',
        scale,
        axis: 'deep',
        travel: finish + correction,
        angle: 0,
        tool: null,
        width: null,
        rough: travelAt(scale, rough.count!),
        correction,
        units,
      }
      const right = solve(facts) as number
      const show = (value: number) => exact('expected', value, units)
      return {
        id: `${index + 1}.correction-${i + 1}`,
        asks: words(say`reading to finish ${feature.name} at, measurement ${i + 1}`, units),
        facts,
        ...onDial(scale, right, units),
        working: words(
          say`${show(Math.abs(2 * correction))} ${correction > 0 ? 'large' : 'small'} on the diameter, so ${show(Math.abs(correction))} ${correction > 0 ? 'more' : 'less'} in depth: ${readingFigure(scale, right)}`,
          units,
        ),
        follows: open ? [{ id: `${instead}.reading`, factor: 1, plus: right - last.count! * readable(scale) }] : [],
        move: null,
        place: {
          question: words(
            open
              ? say`"${feature.name}": at the stop it measures ${show(Math.abs(2 * correction))} ${correction > 0 ? 'more' : 'less'} at the bottom than it should. In place of the reading of step ${instead}, finish at:`
              : say`"${feature.name}" was roughed to ${shownOn(scale, rough.count!)} and is to finish at ${shownOn(scale, last.count!)}. At the stop ${show(expected)} is expected at the bottom (outside ${show(surface)}); it measures ${show(measured)}. Finish at:`,
            units,
          ),
        },
      }
    })
}
