import { readable, type Scale } from '../lathe/lathe.ts'
import { marksPerTurn } from '../phrase/dial.ts'
import { perUnit } from '../units/length.ts'

export type ReadingRead = { readonly ok: true; readonly count: number } | { readonly ok: false; readonly why: string }

/**
 * A reading as a person writes it: "52", "51 1/2" or "1 turn and 25" as on the sheet, or the value of the dial there,
 * ".103". A bare number may be marks or a reading: it is read as the one that is nearer to the expected one. In
 * readable steps.
 */
export const readingIn = (text: string, scale: Scale, expected: number): ReadingRead => {
  const tidied = text.trim().toLowerCase().replace(/\s+/g, ' ')
  const found = [...(scale.kind === 'dial' ? onDial(tidied, scale) : []), ...asReading(tidied, scale)]
  const counts = found.filter((count) => Math.abs(count - Math.round(count)) < 1e-6).map((count) => Math.round(count))
  if (counts.length === 0)
    return { ok: false, why: `${JSON.stringify(text)} is no reading of this dial; ${hint(scale)}` }
  const nearest = counts.reduce((best, one) => (Math.abs(one - expected) < Math.abs(best - expected) ? one : best))
  return { ok: true, count: nearest }
}

const hint = (scale: Scale): string =>
  scale.kind === 'dial'
    ? 'write it as the sheet does: marks (52 or 51 1/2), 1 turn and 25, or the reading (.103)'
    : 'write what it shows, like .103'

const TURNS = /^(\d+) turns?(?:(?:,| and)? (?:on )?(?:mark )?(.+))?$/

const onDial = (tidied: string, dial: Extract<Scale, { kind: 'dial' }>): number[] => {
  const turned = TURNS.exec(tidied)
  const turns = turned === null ? 0 : Number(turned[1])
  const marks = numberIn(turned === null ? tidied.replace(/^mark /, '') : (turned[2] ?? '0'))
  return marks === null ? [] : [(turns * marksPerTurn(dial) + marks) / dial.readTo]
}

const asReading = (tidied: string, scale: Scale): number[] => {
  const value = numberIn(tidied)
  return value === null ? [] : [(value * perUnit(scale.units)) / readable(scale)]
}

const NUMBER = /^(?:(\d+) )?(\d+)\/(\d+)$|^(\d*\.?\d+|\d+\.)$/

const numberIn = (tidied: string): number | null => {
  const found = NUMBER.exec(tidied)
  if (found === null) return null
  const [, whole, over, under, plain] = found
  if (plain !== undefined) return Number(plain)
  return Number(under) === 0 ? null : Number(whole ?? 0) + Number(over) / Number(under)
}
