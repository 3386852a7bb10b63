import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic, Path } from '../diagnostics/diagnostic.ts'
import { suggest } from '../diagnostics/suggest.ts'
import type { Lathe, Scale } from '../lathe/lathe.ts'
import type { Action, Move, Slide } from '../moves/operation.ts'
import type { SourceFile } from '../source/source.ts'
import { perUnit, type Units } from '../units/length.ts'
import { countOf, numberIn, takeUpOf } from './count.ts'
import { ACTION_NAMES, KEY_NAMES, type Key, PURPOSE_NAMES, SLIDES, sortOf, usualSlide, type WordKey } from './keys.ts'
import type { Shop } from './written.ts'

/** One row while it is read: its words, and how to report what is wrong with them. */
export type Row = {
  readonly path: Path
  readonly lathe: Lathe
  /** The units of a place along the work. */
  readonly units: Units
  readonly written: (key: Key) => string | undefined
  readonly wrong: (key: Key | null, code: Code, message: string, hint: string) => null
}

export function rowOf(
  source: SourceFile,
  index: number,
  { lathe, units = lathe.units }: Pick<Shop, 'lathe' | 'units'>,
  diagnostics: Diagnostic[],
): Row | null {
  const path: Path = ['moves', index]
  const add = (at: Path, code: Code, message: string, hint: string, where: 'key' | 'value' = 'value'): null => {
    diagnostics.push({ code, severity: 'error', origin: { file: source.file, path: at }, at: where, message, hint })
    return null
  }
  const data = (source.data as { moves: readonly unknown[] }).moves[index]
  if (typeof data !== 'object' || data === null || Array.isArray(data))
    return add(
      path,
      'moves-row',
      'a move is missing here',
      'write it like { action: feed-in, slide: cross-feed, reading: 0.052 }',
    )
  for (const name of Object.keys(data)) {
    if ((KEY_NAMES as readonly string[]).includes(name)) {
      const value = (data as Record<string, unknown>)[name]
      if (typeof value === 'object' && value !== null)
        add([...path, name], 'moves-value', `${name} is not a single value`, 'write one word or number')
      continue
    }
    const near = suggest(name, KEY_NAMES)
    add(
      [...path, name],
      'moves-key',
      `"${name}" is nothing that a move has`,
      near === null ? `a move has ${KEY_NAMES.join(', ')}` : `did you mean ${near}?`,
      'key',
    )
  }
  return {
    path,
    lathe,
    units,
    written: (key) => {
      const text = source.scalarSource([...path, key])?.trim()
      return text === undefined || text === '' || (data as Record<string, unknown>)[key] === null ? undefined : text
    },
    wrong: (key, code, message, hint) => add(key === null ? path : [...path, key], code, message, hint),
  }
}

/** The move in a row; null if there is none, which has then been reported. */
export function moveOf(row: Row, file: string): Move | null {
  const action = oneOf(row, 'action', ACTION_NAMES)
  if (action === undefined)
    return row.wrong(
      null,
      'moves-action',
      'the row does not say what is done',
      'give an action, like feed-in or back-out',
    )
  if (action === null) return null
  const purpose = oneOf(row, 'why', PURPOSE_NAMES)
  const slide = slideOf(row, action)
  if (purpose === null || slide === null) return null
  const reading = readingOf(row, action, slide)
  if (reading === null) return null
  return {
    action,
    ...(slide === undefined ? {} : { slide }),
    ...reading,
    ...(purpose === undefined ? {} : { purpose }),
    origin: { file, path: row.path },
  }
}

/** A word from a list; undefined if none is written, null if it is not in the list. */
function oneOf<T extends string>(row: Row, key: WordKey, names: readonly T[]): T | undefined | null {
  const written = row.written(key)
  if (written === undefined) return undefined
  const found = names.find((name) => name === written.toLowerCase())
  if (found !== undefined) return found
  const near = suggest(written, names)
  return row.wrong(
    key,
    `moves-${key}`,
    `"${written}" is no ${WORDS[key]}`,
    near === null ? `one of ${names.join(', ')}` : `did you mean ${near}?`,
  )
}

const WORDS: Readonly<Record<WordKey, string>> = {
  action: 'action that is known',
  slide: 'slide of a lathe',
  why: 'purpose that is known',
}

function slideOf(row: Row, action: Action): Slide | undefined | null {
  const written = oneOf(row, 'slide', SLIDES)
  if (written === null) return null
  if (sortOf(action) === 'hand')
    return written === undefined
      ? undefined
      : row.wrong('slide', 'moves-slide', `${action} turns no slide`, 'leave the slide out')
  const usual = usualSlide(action)
  if (written === undefined && usual === null)
    return row.wrong('action', 'moves-slide', `${action} does not say which slide`, `give slide: ${SLIDES.join(', ')}`)
  if (usual !== null && written !== undefined && written !== usual)
    return row.wrong(
      'slide',
      'moves-slide',
      `${action} is for the ${usual}, not for the ${written}`,
      `write ${usual}, or leave the slide out`,
    )
  return written ?? usual
}

type Reading = Pick<Move, 'count' | 'takeUp' | 'place'>

const READINGS = ['reading', 'turns', 'mark', 'at-least'] as const

function readingOf(row: Row, action: Action, slide: Slide | undefined): Reading | null {
  const given = READINGS.filter((key) => row.written(key) !== undefined)
  if (row.written('place') !== undefined) return placeOf(row, action, slide, given)
  if (action === 'zero' && slide !== undefined) return zeroOf(row, given)
  if (sortOf(action) !== 'dial' || slide === undefined)
    return given.length === 0 ? {} : row.wrong(given[0]!, 'moves-reading', `${action} has no reading`, 'leave it out')
  const scale = scaleOf(row.lathe, slide)
  if (scale === null)
    return row.wrong(
      'slide',
      'moves-no-dial',
      `this lathe has no dial on its ${slide}`,
      'give one in the lathe file, or use the compound',
    )
  if (action === 'take-up' && row.written('reading') === undefined && row.written('turns') === undefined)
    return takeUpOf(row, scale, slide)
  if (row.written('at-least') !== undefined)
    return row.wrong(
      'at-least',
      'moves-reading',
      'only a take-up goes forward by marks',
      'give a reading, from the zero of the dial',
    )
  const count = countOf(row, scale, slide)
  return count === null ? null : { count }
}

/** A place by eye is written instead of a reading, and only for the carriage. */
function placeOf(row: Row, action: Action, slide: Slide | undefined, given: readonly Key[]): Reading | null {
  if (slide !== 'carriage' || !BY_EYE.has(action))
    return row.wrong(
      'place',
      'moves-place',
      `${action} brings nothing to a place by eye`,
      'only a carriage is moved so: move-carriage, or feed-across with slide: carriage',
    )
  if (given.length > 0)
    return row.wrong(given[0]!, 'moves-place', 'the row has a place and a reading too', 'keep one of the two')
  const place = numberIn(row, 'place', perUnit(row.units))
  return place === null ? null : { place: Math.round(place) }
}

const BY_EYE: ReadonlySet<Action> = new Set<Action>(['move-carriage', 'feed-across'])

/** A zero may give the reading of the dial at its place; it can only be 0. */
function zeroOf(row: Row, given: readonly Key[]): Reading | null {
  const other = given.find((key) => key === 'at-least' || !/^[+-]?0*\.?0*$/.test(row.written(key)!))
  if (other === undefined) return { count: 0 }
  return row.wrong(
    other,
    'moves-reading',
    `a zero is 0, not ${row.written(other)}`,
    'turn to the reading first, in a row of its own',
  )
}

const scaleOf = (lathe: Lathe, slide: Slide): Scale | null => {
  if (slide === 'cross-feed') return lathe.crossFeed
  return slide === 'compound' ? lathe.compound.scale : lathe.carriage
}
