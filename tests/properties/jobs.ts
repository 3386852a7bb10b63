import type fc from 'fast-check'
import type { Drawn, RandomJob } from './drawn.ts'
import type { Units } from './numbers.ts'
import { drawFeature } from './random-features.ts'
import { lathe, stock } from './shops.ts'
import type { Tape } from './tape.ts'
import { readTape, tapes } from './tape.ts'
import type { Trait } from './traits.ts'

/** Random jobs with everything inline: mostly ones that a lathe can cut, some that it cannot. */
export const jobs: fc.Arbitrary<RandomJob> = tapes.map((numbers) => jobFrom(readTape(numbers)))

function jobFrom(tape: Tape): RandomJob {
  const units: Units = tape.chance(30) ? 'mm' : 'inch'
  const part = stock(tape, units)
  const machine = lathe(tape, units)
  const room = Math.max(1, Math.floor(part.usable / (units === 'inch' ? 0.7 : 18)))
  const count = Math.min(room, tape.pick([1, 1, 2, 2, 3]))
  const common = cutting(tape, units)
  const cusp = common.cusp
  const places =
    count > 1 && tape.chance(25)
      ? tape.pick([
          [2, 1, 3],
          [3, 1, 2],
          [1, 3, 2],
        ] as const)
      : null
  const drawn = slots(part.usable, count).map(([from, to], at) =>
    drawFeature(tape, { units, part, from, to, at, cusp }),
  )
  const features: Drawn[] = drawn.map((one) => one.drawn)
  const tools = drawn.flatMap((one) => one.tool)
  const head = ['title: Hand press, spare spindle', `units: ${units}`, `work: ${tape.pick(['one-off', 'repeat'])}`]
  const rest = [
    'features:',
    ...drawn.flatMap((one, at) => [...one.lines, ...orderOf(places, at, count)]),
    ...common.lines,
    '',
  ]
  const shelf = tools.length > 0 ? ['tools:', ...tools] : ['tools: {}']
  const apart = { lathe: tape.chance(12), tools: tools.length > 0 && tape.chance(12) }
  const named = [
    ...(apart.lathe ? ['lathe: shed/lathe.yaml'] : machine.lines),
    ...(apart.tools ? ['tools: shed/tools.yaml'] : shelf),
  ]
  const files = {
    'job.yaml': [...head, ...part.lines, ...named, ...rest].join('\n'),
    'shed/lathe.yaml': `${outdented(machine.lines)}\n`,
    'shed/tools.yaml': `units: ${units}\n${outdented(shelf)}\n`,
  }
  const traits: Trait[] = [
    ...part.traits,
    ...machine.traits,
    ...common.traits,
    ...(places === null ? [] : (['order'] as const)),
    ...(apart.lathe ? (['lathe in a file of its own'] as const) : []),
    ...(apart.tools ? (['tools in a file of their own'] as const) : []),
  ]
  const text = [...head, ...part.lines, ...machine.lines, ...shelf, ...rest].join('\n')
  return { text, units, features, traits, files, errors: machine.errors }
}

/** The keys of a file of its own, without the key that they stand under in the job. */
const outdented = (lines: readonly string[]): string =>
  lines
    .slice(1)
    .map((line) => line.slice(2))
    .join('\n')

/** Places in the order of work: a permutation, cut down to as many features as there are. */
function orderOf(places: readonly number[] | null, at: number, count: number): string[] {
  if (places === null) return []
  const among = places.slice(0, count)
  return [`    order: ${among.filter((other) => other <= among[at]!).length}`]
}

/** Each feature gets its own stretch of the part, so that few of them run into each other. */
function slots(usable: number, count: number): [number, number][] {
  const each = usable / count
  return Array.from({ length: count }, (_, at) => [each * at, each * (at + 1)])
}

/** What holds for every feature that does not say otherwise. */
function cutting(tape: Tape, units: Units): { lines: string[]; cusp: number | null; traits: Trait[] } {
  const unit = units === 'inch' ? 1 : 25.4
  const size = (thousandths: number): string => ((thousandths / 1000) * unit).toFixed(3)
  const factor = tape.chance(15)
  const cusp = tape.chance(8) ? Number(size(tape.int(1, 4))) : null
  const lines = [
    ...(factor ? [`  speed-factor: ${tape.pick([0.25, 0.4, 0.8, 1])}`] : []),
    ...(cusp === null ? [] : [`  cusp: ${cusp}`]),
    ...(tape.chance(8) ? [`  overlap: ${size(tape.int(5, 20))}`] : []),
    ...(tape.chance(20) ? [`  leave: ${size(tape.int(4, 15))}`] : []),
    ...(tape.chance(20) ? [`  leave-sides: ${size(tape.int(2, 5))}`] : []),
    ...(tape.chance(25) ? [`  infeed: ${size(tape.int(20, 60))}`] : []),
    ...(tape.chance(20) ? [`  clear: ${size(tape.int(20, 60))}`] : []),
  ]
  const traits: Trait[] = factor ? ['cutting for the whole job', 'speed-factor'] : ['cutting for the whole job']
  return lines.length > 0 ? { lines: ['cutting:', ...lines], cusp, traits } : { lines, cusp, traits: [] }
}
