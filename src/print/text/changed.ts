import { words } from '../../phrase/words.ts'
import type { Change, Changed, ChangedFeature, ChangedStep } from '../../sheet/sheet.ts'
import type { Units } from '../../units/length.ts'
import { COLUMNS, plain, wrap } from './columns.ts'

/** What changed since the sheet that was kept, before anything else on the sheet. */
export const changedBlock = (changed: Changed | undefined, units: Units, width: number = COLUMNS): string[] =>
  changed === undefined
    ? []
    : [
        '',
        '='.repeat(width),
        ...wrap('CHANGED SINCE THE SHEET THAT WAS KEPT (then -> now)', width),
        '='.repeat(width),
        ...(isNothing(changed) ? wrap('Nothing: every step, reading and size is as it was.', width) : []),
        ...changedLines(changed, units).flatMap((line) => hangingIndent(line, width)),
        ...(changed.facts.length > 0 && changed.features.length === 0
          ? wrap('No step, reading or size is another one.', width)
          : []),
      ]

export const isNothing = ({ facts, features }: Changed): boolean => facts.length === 0 && features.length === 0

/** One line each, not wrapped: facts, then by feature its steps and sizes. */
export const changedLines = ({ facts, features }: Changed, units: Units): string[] => [
  ...facts.map((fact) => factLine(fact, units)),
  ...features.flatMap((feature) => featureLines(feature, units)),
]

const featureLines = (feature: ChangedFeature, units: Units): string[] => {
  const name = feature.name.toUpperCase()
  if (feature.fate === 'came') return [`${name}: is new`]
  if (feature.fate === 'went') return [`${name}: is no longer on the sheet`]
  return [
    `${name}:`,
    ...feature.facts.map((fact) => `  ${factLine(fact, units)}`),
    ...feature.steps.map((step) => `  ${stepLine(step, units)}`),
    ...feature.sizes.map((size) => `  ${factLine(size, units)}`),
  ]
}

const factLine = ({ what, before, now }: Change, units: Units): string => {
  if (before === null && now === null) return what
  return `${what}: ${before === null ? 'none' : words(before, units)} -> ${now === null ? 'none' : words(now, units)}`
}

const stepLine = (step: ChangedStep, units: Units): string => {
  const { fate, thing, what, before, now } = step
  const plural = Math.max(step.numbers.length, step.were.length) > 1 ? 'steps' : 'step'
  if (fate === 'came') return `${plural} ${step.numbers.join(', ')} is new: ${thing} ${what}`
  if (fate === 'went') return `${plural} ${step.were.join(', ')} then is gone: ${thing} ${what}`
  const moved = step.numbers.some((number, i) => number !== step.were[i])
  const numbers = `${plural} ${step.numbers.join(', ')}${moved ? ` (then ${step.were.join(', ')})` : ''}`
  if (before === null) return `${numbers} ${thing} ${what}: ${now === null ? 'gone' : words(now, units)}`
  return `${numbers} ${thing} ${[what, words(before, units)].filter((part) => part !== '').join(' ')} -> ${now === null ? 'gone' : words(now, units)}`
}

/** Wrapped, with the following lines indented further. */
const hangingIndent = (line: string, width: number): string[] => {
  const indent = /^ */.exec(line)![0]
  const [first, ...rest] = wrap(plain(line), width - indent.length - 4)
  return [`${indent}${first}`, ...rest.map((more) => `${indent}    ${more}`)]
}
