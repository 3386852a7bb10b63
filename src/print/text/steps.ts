import type { Action } from '../../moves/operation.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { heldWords, number, words } from '../../phrase/words.ts'
import type { FoldedPlace } from '../../sheet/places.ts'
import type { Group, SheetStep } from '../../sheet/sheet.ts'
import type { SupervisedCheck } from '../../sheet/supervised.ts'
import type { Units } from '../../units/length.ts'
import type { Again } from './again.ts'
import { COLUMNS, plain, wrap } from './columns.ts'
import { supervisedLines } from './supervised.ts'

/** How steps are printed. `told`: what was explained for an earlier feature and is not explained again; it grows. */
export type Style = {
  readonly units: Units
  readonly places?: readonly FoldedPlace[]
  readonly width?: number
  readonly told?: Set<string>
  /** Boxes that stand before some of the steps. */
  readonly checks?: readonly SupervisedCheck[]
  /** The steps of the feature before: a set-up that stays as it was is one line. */
  readonly before?: { readonly name: string; readonly steps: readonly SheetStep[] }
}

/** Where the words of a step stand. */
type Layout = {
  readonly units: Units
  readonly width: number
  readonly digits: number
  readonly column: number
  readonly told: Set<string>
}

/** The column of the effect if the words before it leave room; it never runs into them. */
const EFFECT = 52
const THING = 11
/** Narrower than this, the words of a step go on below its thing. */
const NARROW = 66

/**
 * Numbered lines under small headings: number, the slide or thing, the action, and what it does to the work. A place of
 * a stepped form is one line.
 */
export const stepLines = (steps: readonly SheetStep[], style: Style): string[] => {
  const { units, places = [], width = COLUMNS, told = new Set(), checks = [], before } = style
  const stays = staying(steps, before?.steps ?? [], units)
  const own = new Map(places.map((place) => [place.from, place]))
  const folded = steps.flatMap((step) => own.get(step.number) ?? [])
  const digits = digitsOf(steps, [...folded, ...(stays === null ? [] : [stays])])
  const layout = { units, width, digits, column: digits + 2 + (width < NARROW ? 2 : THING), told }
  let group: Group | null = null
  let done = 0
  return steps.flatMap((step) => {
    if (step.number <= done) return []
    const place = own.get(step.number)
    const boxes = checks.filter(({ before: at }) => at >= step.number && at <= (place?.to ?? step.number))
    const heading = [
      ...(step.group === group ? [] : [`${' '.repeat(digits + 2)}-- ${step.group} --`]),
      ...boxes.flatMap((check) => supervisedLines(check, units, digits + 2, width)),
    ]
    group = step.group
    if (stays !== null && step.number === stays.from) {
      done = stays.to
      return [
        ...heading,
        ...headed(`${stays.from}-${stays.to}`, 'AS BEFORE', [stayWords(stays, before?.name ?? '')], layout),
      ]
    }
    const was = swungAlready(step, before?.steps ?? [], units)
    if (was !== undefined)
      return [
        ...heading,
        ...headed(String(step.number), step.thing, [`left as at step ${was}: see that it is tight`], layout),
      ]
    if (place === undefined) {
      const next = steps.find(({ number }) => number === step.number + 1)
      // What is ticked or signed between the two stays between them.
      const apart = checks.some(({ before: at }) => at === next?.number)
      const pair = next === undefined || apart ? undefined : pairFrom(step, next, layout)
      done = pair?.number ?? done
      return [...heading, ...(pair === undefined ? lines(step, layout) : pairLines(step, pair, layout))]
    }
    done = place.to
    const within = steps.filter(({ number }) => number >= place.from && number <= place.to)
    return [
      ...heading,
      ...(place === folded.find(({ kind }) => kind === 'station') ? legend(layout) : []),
      ...placeLines(place, within, layout),
    ]
  })
}

/** Two steps of the hand that always follow each other are told one by one the first time, and on one line after that. */
const PAIRS: ReadonlyMap<Action, Action> = new Map([
  ['lock', 'zero'],
  ['stop', 'back-out'],
  ['unlock', 'deburr'],
])

const pairFrom = (step: SheetStep, next: SheetStep, { told }: Layout): SheetStep | undefined => {
  if (PAIRS.get(step.action) !== next.action) return undefined
  const key = `pair ${step.action}`
  if (told.has(key)) return next
  told.add(key)
  return undefined
}

const pairLines = (step: SheetStep, next: SheetStep, layout: Layout): string[] => [
  ...headed(
    numbers({ from: step.number, to: next.number }),
    step.thing,
    [
      ...(step.short ?? step.does),
      ...(next.thing === step.thing ? ['; '] : [': ', `${next.thing} `]),
      ...(next.short ?? next.does),
    ],
    layout,
  ),
  ...[step, next].flatMap((one) => moreOf(one, layout)).flatMap((text) => under(text, layout)),
]

type Range = { readonly from: number; readonly to: number }

/** Compound, tool and speed, as many of them as follow each other and are left as they are. */
type Staying = Range & { readonly things: readonly string[]; readonly as: Range }
const SET: ReadonlySet<string> = new Set(['swing', 'fit-tool', 'set-speed'])

const staying = (steps: readonly SheetStep[], before: readonly SheetStep[], units: Units): Staying | null => {
  const pairs = steps.flatMap((step) => {
    const was = before.find(({ action }) => action === step.action)
    return SET.has(step.action) && was !== undefined && words(was.does, units) === words(step.does, units)
      ? [{ step, was }]
      : []
  })
  const run = pairs.filter(({ step }, i) => step.number - i === (pairs[0]?.step.number ?? 0))
  if (run.length < 2) return null
  return {
    from: run[0]!.step.number,
    to: run.at(-1)!.step.number,
    things: run.map(({ step }) => step.thing.toLowerCase()),
    as: { from: run[0]!.was.number, to: run.at(-1)!.was.number },
  }
}

/** The step of the feature before by which the compound was set as it is to be: set anew by its marks it would only be less true. */
const swungAlready = (step: SheetStep, before: readonly SheetStep[], units: Units): number | undefined =>
  step.action !== 'swing'
    ? undefined
    : before.find(({ action, does }) => action === 'swing' && words(does, units) === words(step.does, units))?.number

const digitsOf = (steps: readonly SheetStep[], folded: readonly Range[]): number =>
  Math.max(3, ...steps.map((step) => String(step.number).length), ...folded.map((one) => numbers(one).length))

const stayWords = ({ things, as }: Staying, name: string): string =>
  `${things.join(' and ')} as for "${name}", steps ${as.from}\u00a0to\u00a0${as.to}: see that they are`

const lines = (step: SheetStep, layout: Layout): string[] => {
  const effect = plain(words(step.effect, layout.units))
  return [
    ...withEffect(
      headed(String(step.number), step.thing, [...(step.first ?? []), ...step.does], layout),
      effect,
      layout,
    ),
    ...moreOf(step, layout).flatMap((text) => under(text, layout)),
  ]
}

/** The number, the thing and what to do with it. */
const headed = (number: string, thing: string, does: Phrase, layout: Omit<Layout, 'told'>): string[] => {
  const { units, width, digits, column } = layout
  const head = `${number.padStart(digits)}  `
  const text = heldWords(does, units)
  if (width < NARROW) {
    return wrap(`${thing} ${text}`, width - column).map((line, i) =>
      i === 0 ? head + line : ' '.repeat(column) + line,
    )
  }
  // Two steps on one line may have a longer number than any one of them.
  const longer = Math.max(0, number.length - digits)
  return wrap(text, width - column - longer).map(
    (line, i) => (i === 0 ? head + thing.padEnd(THING) : ' '.repeat(column)) + line,
  )
}

/** The steps of a feature that is cut as the one before it, on one line, and what is another thing in them. */
export const againLines = ({ like, from, to, first, last, differs }: Again, units: Units, width: number): string[] => {
  const digits = Math.max(3, numbers({ from, to }).length)
  const layout = { units, width, digits, column: digits + 2 + (width < NARROW ? 2 : THING) }
  const once = `as "${like.name}", set up as it is: steps ${first}\u00a0to\u00a0${last} once more, but`
  return [
    ...headed(numbers({ from, to }), 'AGAIN', [once], layout),
    ...differs.flatMap(({ step, thing, says }) => under(`step ${step}, ${thing}: ${says.join('; ')}`, layout)),
  ]
}

/** What is said besides begins under the thing, a little further in: so most of it is one line. */
const under = (text: string, { width, digits }: Pick<Layout, 'width' | 'digits'>): string[] =>
  wrap(text, width - digits - 4).map((line) => ' '.repeat(digits + 4) + line)

/** What is told each time: which lines are scribed, and that the power is off. */
const ALWAYS: ReadonlySet<string> = new Set(['layout', 'touch-off'])

/**
 * Sizes expected are one paragraph. What is explained of a step of the set-up, and what holds for every stop, is told once on a sheet; the first time each
 * on a line of its own.
 */
const moreOf = (step: SheetStep, { units, told }: Layout): string[] => {
  const { group, more, expected = [] } = step
  // What each is taken with is told once for a feature, unless it is another thing the next time.
  const ways = expected.map(({ id, by }) => (by === undefined ? null : `${step.feature} ${id} ${words(by, units)}`))
  const alike = ways.every((way) => way === null || told.has(way)) && ways.some((way) => way !== null)
  for (const way of ways) if (way !== null) told.add(way)
  // A size stays on the line of its name.
  const sizes = expected.map(({ label, size, by }) =>
    [
      `${label} ${number(size, units)}`.replaceAll(' ', '\u00a0'),
      ...(by === undefined || alike ? [] : [`(${words(by, units).replaceAll(' ', '\u00a0')})`]),
    ].join(' '),
  )
  const rest = more.slice(expected.length)
  const fresh = rest.filter((phrase) => {
    const key = keyOf(step, phrase, units)
    if (key === null) return true
    const known = told.has(key)
    told.add(key)
    return !known
  })
  const says = fresh.map((phrase) => heldWords(phrase, units))
  if (group !== 'set up')
    return [...(sizes.length > 0 ? [`expected${alike ? ', taken as before' : ''}: ${sizes.join(', ')}`] : []), ...says]
  const again = step.action === 'fit-tool' && says.length < rest.length
  return again && says.length > 0 ? [says.join('; ')] : says
}

/** Of the set-up everything may be told once, at a given speed; of a stop only what has no number. */
const keyOf = (step: SheetStep, phrase: Phrase, units: Units): string | null => {
  const { group, action, does } = step
  if (ALWAYS.has(action)) return null
  const text = words(phrase, units)
  if (action === 'set-speed') return `${action} ${words(does, units)} ${text}`
  if (group === 'set up') return `${action} ${text}`
  return action === 'measure' && phrase.every((part) => typeof part === 'string') ? `${action} ${text}` : null
}

const withEffect = (lines: readonly string[], effect: string, { width, column }: Layout): string[] => {
  if (effect === '') return [...lines]
  const last = lines.at(-1) ?? ''
  const start = [EFFECT, last.length + 2, width - effect.length].find(
    (from) => from >= last.length + 2 && from + effect.length <= width,
  )
  if (start !== undefined) return [...lines.slice(0, -1), last.padEnd(start) + effect]
  return [
    ...lines,
    ...wrap(effect, width - column - 2).map(
      (line) => ' '.repeat(Math.max(column + 2, Math.min(EFFECT, width - line.length))) + line,
    ),
  ]
}

const numbers = ({ from, to }: Range): string => `${from}-${to}`

/** Printed once, before the first place. */
const legend = ({ width, digits }: Layout): string[] =>
  wrap(
    'a line for each place: COMPOUND toward the headstock to it, CROSS-FEED in, CROSS-FEED OUT',
    width - digits - 2,
  ).map((line) => ' '.repeat(digits + 2) + line)

/** The effect is printed only if it has room: the readings show the depth already. */
const placeLines = (place: FoldedPlace, steps: readonly SheetStep[], layout: Layout): string[] => {
  const { units, width } = layout
  const does = headed(numbers(place), place.thing, place.does, layout)
  const effect = plain(words(place.effect, units))
  const last = does.at(-1) ?? ''
  const room = width - effect.length - 2 >= last.length
  const lines = room ? [...does.slice(0, -1), last.padEnd(width - effect.length) + effect] : does
  return [...lines, ...steps.flatMap((step) => step.more).flatMap((phrase) => under(heldWords(phrase, units), layout))]
}
