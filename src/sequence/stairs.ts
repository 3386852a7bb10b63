import { lostTravel, stepTravel, travelAt } from '../dials/travel.ts'
import { biteOf, type StairCuts } from '../moves/cuts.ts'
import type { Length } from '../units/length.ts'
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
  const slots: Slot[] = []
  const contacts = places.map((place) => {
    const from = travelAt(side.scale, place)
    const to = from + cuts.nose.width
    const contact = cuts.layer === null ? metalFrom(slots, from, to) : 0
    slots.push({ from, to, depth: cuts.depthAt(from), run: cuts.nose.run })
    return contact / stepTravel(crossFeed)
  })
  const runs = places.map((place, i) => runsOf(request, side, cuts, place, contacts[i]!))
  for (let layer = 0; layer < Math.max(...runs.map(({ length }) => length)); layer++)
    places.forEach((place, i) => {
      const counts = runs[i]![layer] ?? []
      if (counts.length === 0) return
      const contact = runs[i]![layer - 1]?.at(-1) ?? contacts[i]!
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

/** What is cut already, along the work: its level floor, and flanks that run aside by `run` of the height. */
type Slot = { readonly from: Length; readonly to: Length; readonly depth: Length; readonly run: number }

/**
 * How deep the metal under a nose begins at the highest. Its flanks meet nothing before it does: they are no less steep than those of the slots beside them.
 */
function metalFrom(slots: readonly Slot[], from: Length, to: Length): Length {
  const ends = [from, to, ...slots.flatMap((slot) => [slot.from, slot.to])]
  const ridges = slots.flatMap((left) => slots.filter(({ from }) => from > left.to).map((right) => ridge(left, right)))
  const sorted = [...new Set([...ends, ...ridges])].filter((z) => z >= from && z <= to).toSorted((a, b) => a - b)
  const middles = sorted.slice(1).map((end, i) => (sorted[i]! + end) / 2)
  return Math.min(...[...sorted, ...middles].map((z) => Math.max(0, ...slots.map((slot) => cutAt(slot, z)))))
}

const cutAt = ({ from, to, depth, run }: Slot, z: Length): Length => {
  const aside = Math.max(from - z, z - to)
  if (aside <= 0) return depth
  return run === 0 ? 0 : depth - aside / run
}

/** Where the flanks of two slots meet. */
const ridge = (left: Slot, right: Slot): Length => (left.to + right.from + (left.depth - right.depth) * left.run) / 2

/** Readings to stop at, in layers. */
function runsOf({ lathe }: Request, side: Side, cuts: StairCuts, place: number, contact: number): number[][] {
  const { crossFeed } = lathe
  const step = stepTravel(crossFeed)
  const depth = cuts.depthAt(travelAt(side.scale, place))
  const target = Math.floor(depth / step + 1e-6)
  if (target <= 0) return []
  const passes = { contact, most: mostSteps(biteOf(cuts.infeed, cuts.peck), step), finish: null }
  return layersOf(stopsWithin([target], passes), 0, cuts.layer === null ? null : cuts.layer / step)
}

function backOutCount(request: Request, { scale }: Side, cuts: StairCuts): number {
  const { lathe, edge } = request
  const lowest = travelAt(scale, Math.min(0, pastCount(scale, Math.min(0, countFor(scale, cuts.first, 'lower')))))
  const from = lowest + edge.from - lostTravel(scale)
  const to = Math.max(0, cuts.last) + edge.to + besideEdge(request, { slide: 'compound', scale, angle: 0 })
  const need = request.heightOver(from, to) + request.clear + edge.deepest + lostTravel(lathe.crossFeed)
  return findableBehindZero(lathe.crossFeed, Math.max(need, stepTravel(lathe.crossFeed)))
}
