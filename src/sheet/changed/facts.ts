import { decimals, figure } from '../../phrase/figure.ts'
import type { FigureUnit, Phrase } from '../../phrase/phrase.ts'
import type { Units } from '../../units/length.ts'
import type { Change } from '../sheet.ts'
import { type Data, dataIn, isData, listIn, numberIn, sameData, textIn } from './data.ts'

/**
 * Every value under a key that has changed, with its path in words: "cross-feed backlash", "pilot measured diameter".
 */
export const factsIn = (path: string, before: unknown, now: unknown, kept: Data, today: Data, own = ''): Change[] => {
  if (sameData(before, now)) return []
  const [old, fresh] = [byName(before), byName(now)]
  // The name of a step says nothing about its values: only their own key does.
  const named = old !== before || fresh !== now
  if (isData(old) && isData(fresh))
    return [...new Set([...Object.keys(old), ...Object.keys(fresh)])].flatMap((key) =>
      // The units of one dial are shown with its values; only a change of them is a fact of its own.
      factsIn(
        named ? besides(path, key) : joined(path, key),
        old[key],
        fresh[key],
        unitsUnder(old, kept),
        unitsUnder(fresh, today),
        named ? '' : key,
      ),
    )
  const [shownBefore, shownNow] = [shownValue(own, before, kept), shownValue(own, now, today)]
  if (shownBefore !== null && shownNow !== null && sameData(shownBefore, shownNow)) return []
  return [{ what: path, before: shownBefore, now: shownNow }]
}

/** Lists of things with names are compared by name. */
const byName = (value: unknown): unknown => {
  const items = listIn(value)
  if (items.length === 0 || !items.every((item) => isData(item) && typeof item.name === 'string')) return value
  return Object.fromEntries(items.map((item) => [textIn(dataIn(item).name), item]))
}

const unitsUnder = (data: Data, sheet: Data): Data =>
  data.units === 'inch' || data.units === 'mm' ? { units: data.units } : sheet

/** Keys that only group others are not printed. */
const SILENT: ReadonlySet<string> = new Set(['lathe', 'part', 'steps', 'refusal'])

const joined = (path: string, key: string): string => besides(path, SILENT.has(key) ? '' : inWords(key))

const besides = (path: string, more: string): string =>
  [SILENT.has(path) ? '' : path, more].filter((part) => part !== '').join(' ')

/** crossFeed is the cross-feed; perTurn, per turn. Names of steps are kept. */
const inWords = (key: string): string =>
  key === 'crossFeed'
    ? 'cross-feed'
    : key === 'surface'
      ? 'cut on'
      : key.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)

const shownValue = (key: string, value: unknown, sheet: Data): Phrase | null => {
  if (value === undefined || value === null) return null
  const number = numberIn(value)
  if (number !== null) return [measured(key, number, unitsOf(sheet))]
  if (Array.isArray(value))
    return value.flatMap((item, i) => [...(i === 0 ? [] : [', ']), ...(shownValue(key, item, sheet) ?? [])])
  if (isData(value)) return ['another one']
  return [typeof value === 'string' ? value : value === true ? 'yes' : 'no']
}

/** Values that are no length, by their key. */
const measured = (key: string, value: number, units: Units) => {
  const other: FigureUnit | null = /angle|rake/i.test(key)
    ? 'deg'
    : /rpm|speeds/i.test(key)
      ? 'rpm'
      : /readTo/.test(key)
        ? 'mark'
        : null
  if (other === 'mark') return figure('dial', value, 'mark', decimals(value, 0, 4))
  return other === null ? lengthShown(value, units) : figure(other === 'rpm' ? 'speed' : 'angle', value, other)
}

/** A length of the sheet with the decimals that a shop writes, more if they are needed. */
export const lengthShown = (value: number, units: Units, most = 5) =>
  figure('dial', value, units, decimals(value, units === 'inch' ? 3 : 2, most))

export const unitsOf = (sheet: Data): Units => (sheet.units === 'mm' ? 'mm' : 'inch')
