import type { Drawn } from './drawn.ts'
import type { Units, Written } from './numbers.ts'
import { classed, written } from './numbers.ts'
import type { Bar, Stock } from './shops.ts'
import { sloping } from './sloping.ts'
import type { Tape } from './tape.ts'
import type { Trait } from './traits.ts'

export type Slot = { units: Units; part: Stock; from: number; to: number; at: number; cusp: number | null }
export type DrawnFeature = { drawn: Drawn; lines: string[]; tool: string[] }

const names = ['Runout groove', 'Snap groove', 'Cord groove'] as const

export function drawFeature(tape: Tape, slot: Slot): DrawnFeature {
  const kind = tape.pick(['groove', 'groove', 'concave', 'vee', 'vee', 'corner'] as const)
  if (kind === 'groove') return groove(tape, slot)
  if (kind === 'concave') return concave(tape, slot)
  return kind === 'vee' ? vee(tape, slot) : corner(tape, slot)
}

function groove(tape: Tape, slot: Slot): DrawnFeature {
  const unit = unitOf(slot)
  const shoulder = shoulderIn(slot)
  const neck = shoulder !== null && tape.chance(70)
  const bar = neck ? shoulder.bar : barIn(slot)
  const traits: Trait[] = []
  const width = sizeOf(tape, slot, (tape.int(60, 320) / 1000) * unit, 'H13', traits)
  const depth = written(tape, slot.units, Math.min((tape.int(20, 140) / 1000) * unit, bar.measured * 0.4), 'sometimes')
  const low = tape.chance(35)
  const bottom = low
    ? sizeOf(tape, slot, bar.measured - 2 * depth.value, 'h11', traits)
    : written(tape, slot.units, bar.measured - 2 * depth.value)
  const place = neck
    ? { lines: [`    from: ${shoulder.next.name}`, '    far: 0'], near: shoulder.next.from - width.value }
    : placed(tape, slot, bar, width.value, traits)
  const fillets = filletsIn(tape, slot, Math.min(width.value / 2, depth.value))
  const cusp = cuspIn(tape, slot)
  const made = tool(tape, 'square', slot, {
    full: width.value,
    smaller: (share) => `width: ${num(width.value * share)}${fillets.tool(width.value * share)}`,
    deep: depth.value + (neck ? (shoulder.next.measured - bar.measured) / 2 : 0),
    traits,
  })
  return {
    drawn: {
      ...common(slot, bar, traits),
      kind: 'groove',
      near: place.near,
      width: width.value,
      widest: width.high,
      depth: low ? (bar.measured - bottom.value) / 2 : depth.value,
      corner: fillets.corner,
      cusp: cusp ?? slot.cusp,
    },
    lines: [
      ...opening(slot, 'groove'),
      ...place.lines,
      `    width: ${width.text}`,
      low ? `    bottom-diameter: ${bottom.text}` : `    depth: ${depth.text}`,
      ...fillets.lines,
      ...(fillets.corner === null && tape.chance(50) ? ['    walls: plunged'] : []),
      ...made.use,
      ...own(tape, slot, cusp),
    ],
    tool: made.lines,
  }
}

/** A size with limits: in a metric job now and then by its class. */
function sizeOf(tape: Tape, slot: Slot, about: number, kind: 'h11' | 'H13', traits: Trait[]): Written {
  if (slot.units === 'inch' || !tape.chance(25)) return written(tape, slot.units, about, 'sometimes')
  traits.push(`class ${kind}`)
  return classed(about, kind)
}

/** A size that now and then has limits, the same to both sides. */
function limited(tape: Tape, slot: Slot, about: number, trait: Trait, traits: Trait[]): Written {
  const size = written(tape, slot.units, about, 'even')
  if (size.high > size.low) traits.push(trait)
  return size
}

/** Now and then a feature has settings of its own. */
function own(tape: Tape, slot: Slot, cusp: number | null = null): string[] {
  const unit = unitOf(slot)
  const settings = [
    ...(tape.chance(12) ? [`      compound: { angle: ${tape.pick([0, 5.7333, 20, -10, 84])} }`] : []),
    ...(tape.chance(10) ? [`      overlap: ${num(tape.int(5, 40) * 0.001 * unit)}`] : []),
    ...(tape.chance(10) ? [`      infeed: ${num(tape.int(10, 40) * 0.001 * unit)}`] : []),
    ...(cusp === null ? [] : [`      cusp: ${cusp}`]),
    ...(tape.chance(20) ? [`      side-feed: ${tape.pick(['carriage', 'carriage', 'lines'])}`] : []),
  ]
  return settings.length > 0 ? ['    cutting:', ...settings] : []
}

/** Now and then a drawing says how round the corners of a groove's floor are, and the tool has these corners, sharper ones, or sharp ones. */
function filletsIn(tape: Tape, slot: Slot, room: number) {
  if (!tape.chance(35)) return { corner: null, lines: [], tool: () => '' }
  const radius = written(tape, slot.units, room * (tape.int(15, 110) / 100), 'sometimes')
  const most = tape.chance(25)
  const share = tape.pick([0, 0, 0.3, 0.5, 0.8, 1, 1.2])
  const { value } = radius
  const text = most ? `${num(value)} max` : radius.text
  return {
    corner: { aim: value, low: most ? 0 : Math.min(radius.low, value - 0.0001 * unitOf(slot)) },
    lines: value > 0 ? [`    corner-radius: ${text}`] : [],
    tool: (width: number) => `, corner-radius: ${num(Math.min(value * share, width * 0.45))}`,
  }
}

/** The tallest ridge that the job allows where a form is stepped along. */
const cuspIn = (tape: Tape, slot: Slot): number | null =>
  tape.chance(25) ? Number(num(tape.int(4, 40) * 0.0001 * unitOf(slot))) : null

function concave(tape: Tape, slot: Slot): DrawnFeature {
  const unit = unitOf(slot)
  const bar = barIn(slot)
  const traits: Trait[] = []
  const radius = limited(tape, slot, (tape.int(50, 220) / 1000) * unit, 'limits on a radius', traits)
  const byWidth = tape.chance(50)
  const width = written(tape, slot.units, radius.value * (tape.int(70, 195) / 100))
  const given = written(tape, slot.units, radius.value * (tape.int(25, 100) / 100))
  const half = Math.min(width.value / 2, radius.value)
  const depth = byWidth ? radius.value - Math.sqrt(radius.value ** 2 - half ** 2) : given.value
  const center = limited(tape, slot, middle(slot, bar), 'limits on a place', traits)
  const face = sloping(tape, bar.measured, depth)
  const cusp = cuspIn(tape, slot)
  const made = tool(tape, 'round', slot, {
    full: radius.value,
    smaller: (share) => `radius: ${num(face.radius(radius.value) * share)}${face.keys}`,
    deep: depth,
    traits,
  })
  return {
    drawn: {
      ...common(slot, bar, traits),
      kind: 'concave',
      center: center.value,
      radius: radius.value,
      depth,
      low: radius.low,
      high: radius.high,
      chord: byWidth ? 2 * half : null,
      cusp: cusp ?? slot.cusp,
    },
    lines: [
      ...opening(slot, 'radius'),
      '    shape: concave',
      `    radius: ${radius.text}`,
      byWidth ? `    width: ${width.text}` : `    depth: ${given.text}`,
      `    center: ${center.text}`,
      ...made.use,
      ...own(tape, slot, cusp),
    ],
    tool: made.lines,
  }
}

function corner(tape: Tape, slot: Slot): DrawnFeature {
  const shoulder = shoulderIn(slot)
  const atStep = slot.at > 0 && shoulder !== null
  if (slot.at > 0 && !atStep) return groove(tape, slot)
  const bar = atStep ? shoulder.next : slot.part.bars[0]!
  const room = atStep ? ((shoulder.next.measured - shoulder.bar.measured) / 2) * 0.8 : 0.3 * unitOf(slot)
  const about = Math.max(0.03 * unitOf(slot), room * (tape.int(20, 95) / 100))
  const traits: Trait[] = []
  const radius = limited(tape, slot, about, 'limits on a corner', traits)
  const shape = tape.pick(['corner', 'corner', 'round', 'square'] as const)
  const size = shape === 'square' ? 'width' : 'radius'
  const cusp = cuspIn(tape, slot)
  const made = tool(tape, shape, slot, {
    full: radius.value,
    smaller: (share) => `${size}: ${num(radius.value * (shape === 'corner' && share > 0.5 ? 1 : share))}`,
    deep: radius.value * 2.2,
    traits,
  })
  return {
    drawn: {
      ...common(slot, bar, traits),
      kind: 'corner',
      start: bar.from,
      radius: radius.value,
      cusp: cusp ?? slot.cusp,
    },
    lines: [
      ...opening(slot, 'radius'),
      '    shape: corner',
      `    corner-of: ${atStep ? bar.name : 'end'}`,
      `    radius: ${radius.text}`,
      ...made.use,
      ...(cusp === null ? [] : [`    cutting: { cusp: ${cusp} }`]),
    ],
    tool: made.lines,
  }
}

function vee(tape: Tape, slot: Slot): DrawnFeature {
  const bar = barIn(slot)
  const unit = unitOf(slot)
  const angle = tape.pick([29, 34, 38, 40, 60, 75, 82.5, 90, 110])
  const slope = Math.tan((angle * Math.PI) / 360)
  const drawnTraits: Trait[] = []
  const root = limited(tape, slot, (tape.int(15, 120) / 1000) * unit, 'limits on the root of a V', drawnTraits)
  const down = Math.min((tape.int(40, 260) / 1000) * unit, bar.measured * 0.4)
  const deep = limited(tape, slot, down, 'limits on the depth of a V', drawnTraits)
  const at = tape.chance(15) ? Number((bar.nominal - deep.value * 0.6).toFixed(2)) : bar.nominal
  const beyond = (bar.nominal - at) * slope
  const across = root.value + 2 * deep.value * slope - beyond
  const wide = limited(tape, slot, across, 'limits on the width of a V', drawnTraits)
  const given = tape.pick(['width depth', 'width root', 'depth root', 'width alone', 'bottom root'] as const)
  const bottom = written(tape, slot.units, bar.measured - 2 * deep.value)
  const form = veeForm(given, slope, { root, deep, wide, bottom, at, beyond }, bar)
  const traits = drawnTraits.filter((trait) => givenBy[given].some((word) => trait.includes(word)))
  if (at !== bar.nominal && given.startsWith('width')) traits.push('width-at')
  const place = placed(tape, slot, bar, form.width, traits)
  const nose = form.root > 0 ? form.root : 0.012 * unit
  const face = sloping(tape, bar.measured, form.depth - (bar.nominal - bar.measured) / 2)
  const made = tool(tape, 'vee', slot, {
    full: nose,
    smaller: (share) => `angle: ${num(face.angle(angle))}, nose: ${num(nose * share)}${face.keys}`,
    deep: form.depth,
    traits,
  })
  const method = tape.chance(30) ? ['    method: flank-feed'] : []
  const within = given.startsWith('width') && tape.chance(30) ? tape.pick([' ±0.5', ' ±1', ' deg ±1 deg']) : ''
  const degrees = within === '' ? 0 : within.includes('0.5') ? 0.5 : 1
  if (within !== '') traits.push('limits on the angle of a V')
  const lines = [`    angle: ${angle}${within}`, ...form.lines, ...method]
  return {
    drawn: {
      ...common(slot, bar, traits),
      kind: 'vee',
      near: place.near,
      slope,
      within: degrees,
      byRoot: given === 'width root',
      ...form,
    },
    lines: [...opening(slot, 'v-groove'), ...lines, ...place.lines, ...made.use, ...own(tape, slot)],
    tool: made.lines,
  }
}

/** Which of the sizes a V is given by. */
const givenBy = {
  'width depth': ['width', 'depth'],
  'width root': ['width', 'root'],
  'depth root': ['depth', 'root'],
  'width alone': ['width'],
  'bottom root': ['root'],
} as const

/** `at`: the diameter on which the width is given; at the surface it is wider by `beyond`. */
type VeeSizes = { root: Written; deep: Written; wide: Written; bottom: Written; at: number; beyond: number }
type VeeForm = { width: number; depth: number; root: number; holds: 'width' | 'depth' | 'both'; lines: string[] }

function veeForm(given: keyof typeof givenBy, slope: number, sizes: VeeSizes, bar: Bar): VeeForm {
  const { root, deep, wide, bottom, at, beyond } = sizes
  const lines = {
    width: beyond === 0 ? `    width: ${wide.text}` : `    width: ${wide.text}\n    width-at: ${at}`,
    depth: `    depth: ${deep.text}`,
    root: `    root: ${root.text}`,
    bottom: `    bottom-diameter: ${bottom.text}`,
  }
  const low = (bar.nominal - bottom.value) / 2
  const w = wide.value + beyond
  const byDepth = (depth: number): number => root.value + 2 * depth * slope
  if (given === 'width alone') return { width: w, depth: w / 2 / slope, root: 0, holds: 'width', lines: [lines.width] }
  if (given === 'width depth') {
    return {
      width: w,
      depth: deep.value,
      root: w - 2 * deep.value * slope,
      holds: 'both',
      lines: [lines.width, lines.depth],
    }
  }
  if (given === 'width root') {
    const depth = (w - root.value) / 2 / slope
    return { width: w, depth, root: root.value, holds: 'both', lines: [lines.width, lines.root] }
  }
  if (given === 'depth root') {
    return {
      width: byDepth(deep.value),
      depth: deep.value,
      root: root.value,
      holds: 'both',
      lines: [lines.depth, lines.root],
    }
  }
  return { width: byDepth(low), depth: low, root: root.value, holds: 'both', lines: [lines.bottom, lines.root] }
}

type Wish = { full: number; smaller: (share: number) => string; deep: number; traits: Trait[] }

/** The tool on the shelf: of the right size, smaller, now and then too large or too short, or none at all. */
function tool(tape: Tape, shape: string, slot: Slot, wish: Wish): { use: string[]; lines: string[] } {
  const choice = tape.int(0, 19)
  if (choice < 5) return { use: [], lines: [] }
  const share = choice < 10 ? 1 : choice < 18 ? tape.int(40, 95) / 100 : choice === 18 ? 1.2 : 1
  const reach = wish.deep * (choice === 19 ? 0.8 : 1.15) + 0.03 * unitOf(slot)
  const name = `bit-${slot.at + 1}`
  const edge = shape === 'square' ? wish.full * 1.2 : shape === 'round' ? wish.full * 2.4 : 1
  const across = (tape.pick([0.25, 0.3125, 0.375]) as number) * unitOf(slot)
  const blank = tape.chance(40) && edge < across ? `, blank: ${num(across)}` : ''
  const offset =
    blank !== '' && tape.chance(40) ? `, edge-offset: ${num((across - edge) * tape.pick([0, 0.3, 1]))}` : ''
  const bit = tape.chance(15) ? ', bit: carbide' : ''
  if (offset !== '') wish.traits.push('edge-offset')
  if (bit !== '') wish.traits.push('carbide')
  return {
    use: [`    tool: ${name}`],
    lines: [`  ${name}: { shape: ${shape}, ${wish.smaller(share)}, reach: ${num(reach)}${blank}${offset}${bit} }`],
  }
}

function placed(tape: Tape, slot: Slot, bar: Bar, width: number, traits: Trait[]): { lines: string[]; near: number } {
  const relative = tape.chance(40)
  const base = relative ? bar.from : 0
  const from = relative ? [`    from: ${bar.name}`] : []
  const how = tape.pick(['near', 'far', 'center'] as const)
  const shift = how === 'near' ? 0 : how === 'far' ? width : width / 2
  const at = limited(tape, slot, middle(slot, bar) - width / 2 + shift - base, 'limits on a place', traits)
  return { lines: [...from, `    ${how}: ${at.text}`], near: base + at.value - shift }
}

function opening(slot: Slot, kind: string): string[] {
  return [`  - kind: ${kind}`, `    name: ${names[slot.at]}`]
}

function common(
  slot: Slot,
  bar: Bar,
  traits: readonly Trait[],
): {
  name: string
  nominal: number
  measured: number
  cusp: number | null
  side: 'compound'
  traits: readonly Trait[]
} {
  return { name: names[slot.at]!, nominal: bar.nominal, measured: bar.measured, cusp: null, side: 'compound', traits }
}

/** The diameter that has most of the slot, and the middle of what they share. */
function barIn(slot: Slot): Bar {
  const shared = (bar: Bar): number => Math.min(bar.to, slot.to) - Math.max(bar.from, slot.from)
  return slot.part.bars.reduce((best, bar) => (shared(bar) > shared(best) ? bar : best))
}

function middle(slot: Slot, bar: Bar): number {
  return (Math.max(bar.from, slot.from) + Math.min(bar.to, slot.to)) / 2
}

/** A diameter in this slot that runs into a larger one. */
function shoulderIn(slot: Slot): { bar: Bar; next: Bar } | null {
  const { bars } = slot.part
  for (let i = 0; i + 1 < bars.length; i++) {
    const [bar, next] = [bars[i]!, bars[i + 1]!]
    if (next.measured > bar.measured && next.from > slot.from && next.from < slot.to) return { bar, next }
  }
  return null
}

function unitOf(slot: Slot): number {
  return slot.units === 'inch' ? 1 : 25.4
}

function num(value: number): string {
  return String(Math.round(value * 10_000) / 10_000)
}
