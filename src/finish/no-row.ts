import type { Length } from '../units/length.ts'
import type { Trouble } from './trouble.ts'

/** Why a table has no row for a size, in a few words without a figure. */
export const whyNot = (trouble: Trouble): string => {
  if (trouble.why === 'fault') return BY_FAULT[trouble.fault.kind] ?? 'not every move can be proved then'
  if (trouble.why === 'form') return 'the form would be off'
  return 'no reading comes within the limits'
}

const BY_FAULT: Readonly<Record<string, string>> = {
  'shank-or-obstacle': 'the bit or its blank would hit the work',
  'beyond-travel': 'a slide has not the travel for it',
  'not-clear': 'the tool would not come clear',
  'moved-in-contact': 'the tool would be moved in the work',
  'no-peck': 'too much would be left for one plunge',
  'metal-left': 'metal would be left in the form',
  'outside-form': 'the form would be cut away',
}

/** The sizes that a table leaves out; those that follow each other are one group. */
export const stretches = (
  readings: readonly Length[],
  rows: readonly { readonly measured: Length }[],
): readonly (readonly Length[])[] => {
  const found: Length[][] = []
  let open = false
  for (const reading of readings) {
    const kept = rows.some(({ measured }) => measured === reading)
    if (!kept && open) found.at(-1)!.push(reading)
    else if (!kept) found.push([reading])
    open = !kept
  }
  return found
}
