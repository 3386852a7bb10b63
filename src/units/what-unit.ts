import { MM } from './length.ts'
import { readIn, splitUnit } from './parse-length.ts'
import { type Parsed, refused } from './parsed.ts'

/**
 * `0.093 ±3`: whole numbers without a unit are often thousandths, or hundredths of a mm. Nobody draws a groove to a whole inch, nor to
 * whole millimeters that are as much as the size itself. Common practice, no source. Null where there is nothing to ask.
 */
export function ofWhatUnit(nominal: string, deviations: readonly string[], meant: 'mm' | 'in'): Parsed<never> | null {
  const whole = deviations.map((each) => (/^[+-]? ?\d+$/.test(each) ? Number(each.replace(/[+-] ?/, '')) : 0))
  const most = Math.max(...whole)
  const split = splitUnit(nominal)
  const size = split.ok ? readIn(split.value.number, 'mm', 'mm', nominal) : split
  if (most === 0 || !size.ok) return null
  const inUnit = Math.abs(size.value) / MM
  if (meant === 'mm' && (inUnit === 0 || most < inUnit)) return null
  const sign = deviations.length === 1 ? '±' : ''
  const tolerance = `${sign}${deviations.join(' ')}`
  // In a unit of its own beside a whole number the size needs one too.
  const named = meant === 'in' && mayBeThou(nominal, deviations) ? `${nominal} in` : nominal
  const scaled = (per: number): string =>
    `${sign}${deviations.map((each, i) => `${/^[+-]/.exec(each)?.[0] ?? ''}${Number((whole[i]! / per).toFixed(6))}`).join(' ')}`
  const least = inUnit > most / 100 ? 100 : 1000
  const hint =
    meant === 'in'
      ? `write its unit too: ${named} ${tolerance} thou, or in inches ${nominal} ${scaled(1000)}`
      : `write it in mm: ${nominal} ${scaled(least)} for ${least === 100 ? 'hundredths' : 'thousandths'}`
  return refused(
    `${tolerance} of what unit? in ${meant === 'mm' ? 'millimeters' : 'inches'} it is ${INSTEAD[meant]}`,
    hint,
  )
}

const INSTEAD = { in: 'an inch or more', mm: 'as much as the size itself' } as const

/** `12 ±1 thou`: a bare whole number larger than its tolerance is as likely thousandths as inches; `0.500 ±5 thou` and `1 ±5 thou` are not. */
export const mayBeThou = (nominal: string, deviations: readonly string[]): boolean => {
  if (!/^\d+$/.test(nominal) && !(/^\d+\.\d*$/.test(nominal) && Number(nominal) >= 10)) return false
  const sizes = deviations.map((each) => Math.abs(Number.parseFloat(each.replace(/^([+-]) /, '$1'))))
  return sizes.every((size) => Number(nominal) > size)
}
