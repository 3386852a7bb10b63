import type { Sheet } from '../../sheet/sheet.ts'
import { beside, ruled } from './columns.ts'
import { backOf, LABEL } from './front.ts'

/**
 * What the front left out: how dials are counted, why, what the tool is besides, and where the speed comes from. What
 * is the same for several features is told once, after their names.
 */
export const details = (sheet: Sheet, width: number): string[] => {
  const { units } = sheet
  const by = new Map<string, string[]>()
  for (const feature of sheet.features) {
    if (feature.status === 'refused') continue
    for (const line of feature.heading) {
      const text = backOf([line], units, width).join('\n')
      if (text !== '') by.set(text, [...(by.get(text) ?? []), feature.name])
    }
  }
  const several = sheet.features.length > 1
  const lines = [
    ...backOf(sheet.heading, units, width),
    ...[...by].flatMap(([text, names]) => [
      ...(several ? beside('For', LABEL, names.join(', '), width) : []),
      ...text.split('\n'),
    ]),
  ]
  return lines.length === 0 ? [] : ['', ...ruled('DETAILS', '', width), ...lines]
}
