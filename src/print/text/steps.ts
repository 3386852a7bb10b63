import type { Group, SheetStep } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { words } from '../phrase.ts'
import { COLUMNS, plain, wrap } from './columns.ts'

/** Where the effect stands when the words before it leave room; it never runs into them. */
const EFFECT = 52
const THING = 11

/** Numbered lines under small headings: number, the slide or thing, what the hand does, and what that does to the work. */
export const stepLines = (steps: readonly SheetStep[], units: Units): string[] => {
  const digits = Math.max(3, ...steps.map((step) => String(step.number).length))
  let group: Group | null = null
  return steps.flatMap((step) => {
    const heading = step.group === group ? [] : ['', `${' '.repeat(digits + 2)}-- ${step.group} --`]
    group = step.group
    return [...heading, ...lines(step, digits, units)]
  })
}

const lines = (step: SheetStep, digits: number, units: Units): string[] => {
  const indent = digits + 2
  const column = indent + THING
  const does = wrap(words(step.does, units), COLUMNS - column)
  const effect = plain(words(step.effect, units))
  const head = `${String(step.number).padStart(digits)}  ${step.thing.padEnd(THING)}`
  const told = does.map((line, i) => (i === 0 ? head : ' '.repeat(column)) + line)
  const more = step.more.flatMap((phrase) =>
    wrap(words(phrase, units), COLUMNS - column - 2).map((line) => ' '.repeat(column + 2) + line),
  )
  return [...withEffect(told, effect, column), ...more]
}

const withEffect = (told: readonly string[], effect: string, column: number): string[] => {
  if (effect === '') return [...told]
  const last = told.at(-1) ?? ''
  const start = Math.max(EFFECT, last.length + 2)
  if (start + effect.length <= COLUMNS) return [...told.slice(0, -1), last.padEnd(start) + effect]
  return [
    ...told,
    ...wrap(effect, COLUMNS - column - 2).map(
      (line) => ' '.repeat(Math.max(column + 2, Math.min(EFFECT, COLUMNS - line.length))) + line,
    ),
  ]
}
