import { MM } from './length.ts'
import { readIn, splitUnit } from './parse-length.ts'
import { type Parsed, refused } from './parsed.ts'

/**
 * `0.093 ±3`: whole numbers without a unit are often thousandths, or hundredths of a mm. Nobody draws a groove to a
 * whole inch, nor to whole millimeters as large as the size itself. Common practice, no source. Null if there is
 * nothing to ask.
 */
export function ofWhatUnit(nominal: string, deviations: readonly string[], meant: 'mm' | 'in'): Parsed<never> | null {
  const split = splitUnit(nominal)
  const read = split.ok ? readIn(split.value.number, 'mm', 'mm', nominal) : split
  const most = Math.max(...deviations.map((each) => (isWhole(each) ? sizeOf(each) : 0)))
  if (most === 0 || !read.ok) return null
  const size = Math.abs(read.value) / MM
  if (meant === 'mm' && (size === 0 || most < size)) return null
  const written = (texts: readonly string[]): string => `${texts.length === 1 ? '±' : ''}${texts.join(' ')}`
  const divided = (per: number): string =>
    written(deviations.map((each) => (isWhole(each) ? `${/^[+-]/.exec(each)?.[0] ?? ''}${sizeOf(each) / per}` : each)))
  // If the deviation has a unit and the size is a whole number, the size needs a unit too.
  const named = meant === 'in' && mayBeThou(nominal, deviations) ? `${nominal} in` : nominal
  const thou = deviations.every(isWhole)
    ? `write its unit too: ${named} ${written(deviations)} thou, or in inches `
    : 'write it in inches: '
  const per = size > most / 100 ? 100 : 1000
  return refused(
    `${written(deviations)} of what unit? in ${meant === 'mm' ? 'millimeters' : 'inches'} it is ${INSTEAD[meant]}`,
    meant === 'in'
      ? `${thou}${nominal} ${divided(1000)}`
      : `write it in mm: ${nominal} ${divided(per)} for ${per === 100 ? 'hundredths' : 'thousandths'}`,
  )
}

const isWhole = (deviation: string): boolean => /^[+-]? ?\d{1,6}$/.test(deviation)
const sizeOf = (deviation: string): number => Number(deviation.replace(/[+-] ?/, ''))

const INSTEAD = { in: 'an inch or more', mm: 'as much as the size itself' } as const

/**
 * `12 ±1 thou`: a bare whole number larger than its tolerance may mean thousandths as well as inches; `0.500 ±5 thou`
 * and `1 ±5 thou` do not.
 */
export const mayBeThou = (nominal: string, deviations: readonly string[]): boolean => {
  if (!/^\d+$/.test(nominal) && !(/^\d+\.\d*$/.test(nominal) && Number(nominal) >= 10)) return false
  const sizes = deviations.map((each) => Math.abs(Number.parseFloat(each.replace(/^([+-]) /, '$1'))))
  return sizes.every((size) => Number(nominal) > size)
}
