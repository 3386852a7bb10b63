import { heldWords } from '../../phrase/words.ts'
import type { Sheet } from '../../sheet/sheet.ts'
import { beside, ruled } from './columns.ts'
import { backOf, LABEL, restOf } from './front.ts'

/**
 * What the front left out: how dials are counted, why, what the tool is besides, and where the speed comes from. What
 * is the same for several features is told once, behind their names.
 */
export const details = (sheet: Sheet, width: number): string[] => {
  const { units } = sheet
  const several = sheet.features.length > 1
  const all = sheet.features.flatMap((feature) =>
    feature.status === 'refused'
      ? []
      : feature.heading.flatMap((line) => {
          const says = restOf(line).map((phrase) => heldWords(phrase, units))
          return says.length === 0 ? [] : [{ label: line.label, says, name: feature.name }]
        }),
  )
  const by = new Map<string, typeof all>()
  for (const one of all) {
    const key = JSON.stringify([one.label, one.says])
    by.set(key, [...(by.get(key) ?? []), one])
  }
  const told = [...by.values()]
  const lines = [
    ...backOf(
      sheet.heading.filter(({ about }) => about !== 'sources'),
      units,
      width,
    ),
    // Which comes after which stands at the front.
    ...(sheet.orderReasons.length < 2 ? [] : beside('Order', LABEL, sheet.orderReasons.slice(1).join(' '), width)),
    ...told.flatMap((same) => {
      const { label, says } = same[0]!
      const names = several ? `${same.map(({ name }) => name).join(', ')}: ` : ''
      return says.flatMap((say, i) => beside(i === 0 ? label : '', LABEL, i === 0 ? names + say : say, width))
    }),
  ]
  // What the others point to comes last.
  lines.push(
    ...backOf(
      sheet.heading.filter(({ about }) => about === 'sources'),
      units,
      width,
    ),
  )
  return lines.length === 0 ? [] : ['', ...ruled('DETAILS', '', width), ...lines]
}
