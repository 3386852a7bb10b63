import type fc from 'fast-check'
import type { Drawn, RandomJob } from './drawn.ts'
import type { Units } from './numbers.ts'
import { drawFeature } from './random-features.ts'
import { lathe, stock } from './shops.ts'
import type { Tape } from './tape.ts'
import { readTape, tapes } from './tape.ts'

/** Random jobs with everything inline: mostly ones that a lathe can cut, some that it cannot. */
export const jobs: fc.Arbitrary<RandomJob> = tapes.map((numbers) => jobFrom(readTape(numbers)))

export function jobFrom(tape: Tape): RandomJob {
  const units: Units = tape.chance(30) ? 'mm' : 'inch'
  const part = stock(tape, units)
  const machine = lathe(tape, units)
  const room = Math.max(1, Math.floor(part.usable / (units === 'inch' ? 0.7 : 18)))
  const count = Math.min(room, tape.pick([1, 1, 2, 2, 3]))
  const drawn = slots(part.usable, count).map(([from, to], at) => drawFeature(tape, { units, part, from, to, at }))
  const features: Drawn[] = drawn.map((one) => one.drawn)
  const tools = drawn.flatMap((one) => one.tool)
  const text = [
    'title: Hand press, spare spindle',
    `units: ${units}`,
    `work: ${tape.pick(['one-off', 'repeat'])}`,
    ...part.lines,
    ...machine.lines,
    ...(tools.length > 0 ? ['tools:', ...tools] : ['tools: {}']),
    'features:',
    ...drawn.flatMap((one) => one.lines),
    ...cutting(tape, units),
    '',
  ].join('\n')
  return { text, units, features }
}

/** Each feature gets its own stretch of the part, so that few of them run into each other. */
function slots(usable: number, count: number): [number, number][] {
  const each = usable / count
  return Array.from({ length: count }, (_, at) => [each * at, each * (at + 1)])
}

function cutting(tape: Tape, units: Units): string[] {
  const unit = units === 'inch' ? 1 : 25.4
  const size = (thousandths: number): string => ((thousandths / 1000) * unit).toFixed(3)
  const lines = [
    ...(tape.chance(20) ? [`  leave: ${size(tape.int(4, 15))}`] : []),
    ...(tape.chance(20) ? [`  leave-sides: ${size(tape.int(2, 5))}`] : []),
    ...(tape.chance(25) ? [`  infeed: ${size(tape.int(20, 60))}`] : []),
    ...(tape.chance(20) ? [`  clear: ${size(tape.int(20, 60))}`] : []),
  ]
  return lines.length > 0 ? ['cutting:', ...lines] : []
}
