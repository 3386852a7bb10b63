import type { Errors } from '../brute/budget.ts'
import type { Units } from './numbers.ts'
import { written } from './numbers.ts'
import type { Tape } from './tape.ts'
import type { Trait } from './traits.ts'

export type Bar = { name: string; nominal: number; measured: number; from: number; to: number }
export type Stock = { lines: string[]; bars: Bar[]; usable: number; traits: Trait[] }
export type LatheText = { lines: string[]; angle: number; traits: Trait[]; errors: Errors }

const barNames = ['spigot', 'barrel', 'collar'] as const
const materials = ['mild steel', 'brass', 'aluminum', 'cast iron'] as const

/** One to three diameters from the free end, growing or shrinking, and how far they stand out of the chuck. */
export function stock(tape: Tape, units: Units): Stock {
  const unit = units === 'inch' ? 1 : 25.4
  const bars: Bar[] = []
  const lines: string[] = []
  const traits: Trait[] = []
  let [from, diameter] = [0, tape.int(60, 240) / 100]
  const count = tape.pick([1, 1, 2, 2, 3])
  for (let i = 0; i < count; i++) {
    const across = written(tape, units, diameter * unit)
    const long = written(tape, units, (tape.int(110, 190) / 100) * unit)
    const off = tape.chance(30) ? tape.pick([-1, -1, 1]) * (units === 'inch' ? 0.0015 : 0.04) : 0
    const measured = Number((across.value + off).toFixed(6))
    if (off > 0) traits.push('measured larger than drawn')
    const extra = off === 0 ? '' : `, measured-diameter: ${measured.toFixed(6)}`
    lines.push(`    - { name: ${barNames[i]}, diameter: ${across.text}, length: ${long.text}${extra} }`)
    bars.push({ name: barNames[i]!, nominal: across.value, measured, from, to: from + long.value })
    from += long.value
    diameter = Math.max(0.5, diameter + (tape.chance(75) ? 1 : -1) * (tape.int(15, 60) / 100))
  }
  const total = bars.at(-1)!.to
  const overhang = Math.floor(total * 100) / 100 - (tape.chance(30) ? 0.2 * unit : 0)
  const held = tape.pick(['chuck', 'chuck', 'collet', 'chuck and center', 'between centers'])
  const dog = held === 'between centers' && tape.chance(50)
  if (held === 'between centers') traits.push(dog ? 'between centers with a dog' : 'between centers')
  // The bars stick out; behind the last of them is what is held.
  if (held === 'chuck' || held === 'collet') {
    const last = bars.at(-1)!
    const whole = last.to - last.from + 0.6 * unit
    lines.push(lines.pop()!.replace(/length: [^,}]*?( ?[,}])/, `length: ${whole.toFixed(4)}$1`))
  }
  const head = [
    'part:',
    `  material: ${tape.pick(materials)}`,
    `  held: ${held}`,
    ...(held === 'between centers' ? [] : [`  overhang: ${overhang.toFixed(3)}`]),
    ...(dog ? [`  dog: ${(0.4 * unit).toFixed(2)}`] : []),
  ]
  return { lines: [...head, '  steps:', ...lines], bars, traits, usable: overhang - 0.5 * unit }
}

const inchDials = [
  ['graduation: 0.001, per-turn: 0.100', 0.001],
  ['graduation: 0.001, per-turn: 0.125', 0.001],
  ['graduation: 0.002, per-turn: 0.200', 0.002],
  ['graduation: 0.0005, per-turn: 0.050', 0.0005],
] as const

const metricDials = [
  ['graduation: 0.02, per-turn: 2', 0.02],
  ['graduation: 0.05, per-turn: 3', 0.05],
  ['graduation: 0.025, per-turn: 1', 0.025],
  ['graduation: 0.01, per-turn: 0.5', 0.01],
] as const

const inchCarriages = [
  'graduation: 0.010, per-turn: 0.800, backlash: 0.030',
  'graduation: 0.001, per-turn: 0.200, backlash: 0.018',
  'indicator: 0.001, range: 1',
  'indicator: 0.0005, range: 0.05',
] as const

const metricCarriages = [
  'graduation: 0.1, per-turn: 20, backlash: 0.6',
  'graduation: 0.02, per-turn: 5, backlash: 0.3',
  'indicator: 0.01, range: 10',
  'indicator: 0.01, range: 1',
] as const

/** A lathe whose dials may be marked in other units than the drawing. */
export function lathe(tape: Tape, jobUnits: Units): LatheText {
  const other: Units = jobUnits === 'inch' ? 'mm' : 'inch'
  const units = tape.chance(25) ? other : jobUnits
  const inch = units === 'inch'
  const unit = inch ? 1 : 25.4
  const dial = (): string => (inch ? tape.pick(inchDials)[0] : tape.pick(metricDials)[0])
  const slack = (): string => ((tape.pick([0, 2, 5, 8, 12, 20, 45]) / 1000) * unit).toFixed(inch ? 3 : 2)
  const traits: Trait[] = []
  const readTo = (): string => {
    const part = tape.chance(25) ? tape.pick(['1/2', '1/2', '1/4', '1/5'] as const) : '1'
    if (part === '1/4' || part === '1/5') traits.push(`marks read to ${part}`)
    return part === '1' ? '' : `, read-to: ${part}`
  }
  const reads = tape.pick(['depth', 'depth', 'diameter'])
  const readout = tape.chance(12)
  const cross = readout ? `readout: ${inch ? '0.0005' : '0.01'}` : `${dial()}, backlash: ${slack()}${readTo()}`
  const angle = tape.chance(60) ? 0 : tape.pick([5.73, 30, -15, 45, 60, 90, 10, -30])
  const travel = (tape.pick([2.5, 3, 2, 3.5, 2.5, 2.25, 0.3]) * unit).toFixed(1)
  const zero = tape.pick(['parallel', 'square'])
  const compound = tape.chance(8)
    ? `readout: ${inch ? '0.0005' : '0.01'}, angle: ${angle}, travel: ${travel}`
    : `${dial()}, backlash: ${slack()}${readTo()}, angle: ${angle}, travel: ${travel}, scale-zero: ${zero}`
  const stated = accuracy(tape, units, jobUnits, traits)
  const carriage = tape.pick(inch ? inchCarriages : metricCarriages)
  const lines = [
    'lathe:',
    '  name: Long shed lathe',
    `  units: ${units}`,
    `  cross-feed: { ${cross}, reads: ${reads} }`,
    `  compound: { ${compound} }`,
    ...(tape.chance(50) ? [`  carriage: { ${carriage} }`] : []),
    `  spindle-speeds: [${tape.chance(10) ? '700, 1100' : '45, 70, 110, 180, 290, 470'}]`,
    ...stated.lines,
  ]
  return { lines, angle, traits, errors: stated.errors }
}

/** Now and then the shop says what it cannot help; in degrees, or in the units of the lathe. The errors are in those of the job. */
function accuracy(tape: Tape, units: Units, jobUnits: Units, traits: Trait[]): { lines: string[]; errors: Errors } {
  const unit = units === 'inch' ? 1 : 25.4
  const inJob = units === jobUnits ? 1 : jobUnits === 'inch' ? 1 / 25.4 : 25.4
  const lines: string[] = []
  const given: Record<string, number> = {}
  if (tape.chance(15)) {
    traits.push('jaw-clearance')
    lines.push(`  jaw-clearance: ${(tape.pick([0.1, 0.25, 0.4]) * unit).toFixed(2)}`)
  }
  const lengths = ['reading', 'touch-off', 'layout', 'tool', 'stock', 'runout'] as const
  const degrees = ['swivel', 'trued', 'tool-angle'] as const
  const keys: string[] = []
  const says = tape.chance(40)
  for (const key of says ? [...lengths, ...degrees] : []) {
    if (!tape.chance(35)) continue
    traits.push(`accuracy: ${key}`)
    const part = tape.int(1, 20)
    const angle = (degrees as readonly string[]).includes(key)
    const text = angle ? String(part / 40) : ((part / 10_000) * (key === 'layout' ? 4 : 1) * unit).toFixed(5)
    keys.push(`${key}: ${text}`)
    given[key] = Number(text) * (angle ? 1 : inJob)
  }
  if (keys.length > 0) lines.push(`  accuracy: { ${keys.join(', ')} }`)
  // What stands in the guide for a shop that says nothing.
  const fine = units === 'inch' ? [0.001, 0.0005] : [0.02, 0.01]
  return {
    lines,
    errors: {
      reading: given.reading ?? null,
      touchOff: given['touch-off'] ?? fine[0]! * inJob,
      tool: given.tool ?? fine[1]! * inJob,
      runout: given.runout ?? 0,
      swivel: given.swivel ?? 0.5,
      trued: given.trued ?? 0.05,
    },
  }
}
