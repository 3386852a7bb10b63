import { heldWords, words } from '../../phrase/words.ts'
import type { FoldedPlace } from '../../sheet/places.ts'
import type { Group, SheetStep } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { COLUMNS, plain, wrap } from './columns.ts'

/** The column of the effect if the words before it leave room; it never runs into them. */
const EFFECT = 52
const THING = 11

/**
 * Numbered lines under small headings: number, the slide or thing, the action, and what it does to the work. A place of
 * a stepped form is one line.
 */
export const stepLines = (steps: readonly SheetStep[], units: Units, places: readonly FoldedPlace[] = []): string[] => {
  const own = new Map(places.map((place) => [place.from, place]))
  const folded = steps.flatMap((step) => own.get(step.number) ?? [])
  const digits = Math.max(
    3,
    ...steps.map((step) => String(step.number).length),
    ...folded.map((one) => numbers(one).length),
  )
  let group: Group | null = null
  let done = 0
  return steps.flatMap((step) => {
    if (step.number <= done) return []
    const heading = step.group === group ? [] : ['', `${' '.repeat(digits + 2)}-- ${step.group} --`]
    group = step.group
    const place = own.get(step.number)
    if (place === undefined) return [...heading, ...lines(step, digits, units)]
    done = place.to
    const within = steps.filter(({ number }) => number >= place.from && number <= place.to)
    return [
      ...heading,
      ...(place === folded.find(({ kind }) => kind === 'station') ? legend(digits) : []),
      ...placeLines(place, within, digits, units),
    ]
  })
}

const lines = (step: SheetStep, digits: number, units: Units): string[] => {
  const indent = digits + 2
  const column = indent + THING
  const does = wrap(heldWords(step.does, units), COLUMNS - column)
  const effect = plain(words(step.effect, units))
  const head = `${String(step.number).padStart(digits)}  ${step.thing.padEnd(THING)}`
  const lines = does.map((line, i) => (i === 0 ? head : ' '.repeat(column)) + line)
  const more = step.more.flatMap((phrase) =>
    wrap(heldWords(phrase, units), COLUMNS - column - 2).map((line) => ' '.repeat(column + 2) + line),
  )
  return [...withEffect(lines, effect, column), ...more]
}

const withEffect = (lines: readonly string[], effect: string, column: number): string[] => {
  if (effect === '') return [...lines]
  const last = lines.at(-1) ?? ''
  const start = Math.max(EFFECT, last.length + 2)
  if (start + effect.length <= COLUMNS) return [...lines.slice(0, -1), last.padEnd(start) + effect]
  return [
    ...lines,
    ...wrap(effect, COLUMNS - column - 2).map(
      (line) => ' '.repeat(Math.max(column + 2, Math.min(EFFECT, COLUMNS - line.length))) + line,
    ),
  ]
}

const numbers = ({ from, to }: FoldedPlace): string => `${from}-${to}`

/** Printed once, before the first place. */
const legend = (digits: number): string[] =>
  wrap(
    'a line for each place: COMPOUND toward the headstock to it, CROSS-FEED in, CROSS-FEED OUT',
    COLUMNS - digits - 2,
  ).map((line) => ' '.repeat(digits + 2) + line)

/** The effect is printed only if it has room: the readings show the depth already. */
const placeLines = (place: FoldedPlace, steps: readonly SheetStep[], digits: number, units: Units): string[] => {
  const column = digits + 2 + THING
  const head = `${numbers(place).padStart(digits)}  ${place.thing.padEnd(THING)}`
  const does = wrap(heldWords(place.does, units), COLUMNS - column).map(
    (line, i) => (i === 0 ? head : ' '.repeat(column)) + line,
  )
  const effect = plain(words(place.effect, units))
  const room = COLUMNS - effect.length - 2 >= (does.at(-1) ?? '').length
  const lines = room ? [...does.slice(0, -1), (does.at(-1) ?? '').padEnd(COLUMNS - effect.length) + effect] : does
  const more = steps.flatMap((step) => step.more)
  return [
    ...lines,
    ...more.flatMap((phrase) =>
      wrap(heldWords(phrase, units), COLUMNS - column - 2).map((line) => ' '.repeat(column + 2) + line),
    ),
  ]
}
