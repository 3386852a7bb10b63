import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import { biteOf, type StairCuts } from '../moves/cuts.ts'
import { awayToMeasure } from './away.ts'
import { besideEdge, startClear } from './begin.ts'
import { countFor, findableBehindZero, pastCount } from './dial.ts'
import { layersOf, peckIn, peckSteps } from './pecks.ts'
import { dialMove, handMove, newProgram, stopAway } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { rangeRefusal, setUpClear, travelRefusal } from './set-up.ts'
import { type Side, sideOf, sideTo } from './side.ts'
import { swung } from './steps-refusals.ts'
import { mostSteps, stopsWithin } from './stops.ts'

/** Roughed in steps: each place in as deep as it may, in pecks; a deep slot is widened before it goes deeper. */
export function sequenceStairs(request: Request, cuts: StairCuts): Sequenced {
  const side = sideOf(request)
  if (side.angle !== 0) return swung()
  const program = newProgram(request.origin)
  const { crossFeed } = request.lathe
  // The far places may be a mark nearer, the near ones a mark further in: the depth follows the place that the dial has.
  const places = [...new Set(cuts.places.map((place) => countFor(side.scale, place, 'lower')))]
  const backOut = backOutCount(request, side, cuts)
  setUpClear(program, request, backOut, side.slide === 'carriage' ? side.scale : null)
  startClear(program, request, side, backOut, places[0]!)
  const runs = places.map((place) => runsOf(request, side, cuts, place))
  for (let layer = 0; layer < Math.max(...runs.map(({ length }) => length)); layer++)
    places.forEach((place, i) => {
      const counts = runs[i]![layer] ?? []
      if (counts.length === 0) return
      const contact = runs[i]![layer - 1]?.at(-1) ?? 0
      sideTo(program, side, place)
      peckIn(program, counts, { contact, most: peckSteps(cuts.peck, crossFeed), backOut }, 'rough')
      dialMove(program, 'back-out', 'cross-feed', backOut, 'clear')
    })
  stopAway(program, crossFeed, backOut, awayToMeasure(crossFeed))
  handMove(program, 'unlock', { slide: 'carriage' })
  // The next tool is brought to these lines: a file would take them away.
  handMove(program, 'deburr', { purpose: 'burr' })
  return travelRefusal(request, program) ?? rangeRefusal(request, program) ?? { ok: true, moves: program.moves }
}

/** Readings to stop at, in layers. */
function runsOf({ lathe }: Request, side: Side, cuts: StairCuts, place: number): number[][] {
  const { crossFeed } = lathe
  const step = stepTravel(crossFeed)
  const depth = cuts.depthAt(travelAt(side.scale, place))
  const target = Math.floor(depth / step + 1e-6)
  if (target <= 0) return []
  const passes = { contact: 0, most: mostSteps(biteOf(cuts.infeed, cuts.peck), step), finish: null }
  return layersOf(stopsWithin([target], passes), 0, cuts.layer === null ? null : cuts.layer / step)
}

function backOutCount(request: Request, { scale }: Side, cuts: StairCuts): number {
  const { lathe, edge } = request
  const lowest = travelAt(scale, Math.min(0, pastCount(scale, Math.min(0, countFor(scale, cuts.first, 'lower')))))
  const from = lowest + edge.from - lostTravel(scale)
  const to = Math.max(0, cuts.last) + edge.to + besideEdge(request, { slide: 'compound', scale, angle: 0 })
  const need = request.heightOver(from, to) + request.clear + lostTravel(lathe.crossFeed)
  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))
}
