import { length } from '../../phrase/figure.ts'
import { number, words } from '../../phrase/words.ts'
import { type Sheet, saysOf } from '../../sheet/sheet.ts'

/** The drawing of the part in words. */
export const partDesc = (sheet: Sheet): string => {
  const of = (value: number): string => number(length('stock', value, sheet.units), sheet.units)
  const steps = sheet.part.steps.map(
    ({ name, measured, from, to }) =>
      `${name}: diameter ${of(measured)}, from ${of(from)} to ${of(to)} from the free end`,
  )
  const held = saysOf(sheet.heading, 'held').map((each) => words(each, sheet.units))
  const features = sheet.features.flatMap((feature) => {
    if (feature.status !== 'planned') return []
    const near = feature.proof.lines.find(({ id }) => id === 'near')
    const place = near === undefined ? '' : `, near edge ${number(near.planned, sheet.units)} from the free end`
    return [`feature ${feature.index + 1}, ${feature.name}${place}`]
  })
  return `${[
    'Headstock to the left, free end to the right',
    ...held.map((each) => `held: ${each}`),
    ...steps,
    ...features,
  ].join('. ')}.`
}
