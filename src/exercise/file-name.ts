/** Bytes of a name, so that it fits with its number and ending on any disk. */
const MOST = 60

/**
 * The number and what can stand in a file name of a name: letters and figures of any writing. The number keeps two
 * alike apart, also where a disk takes capitals and small letters for the same.
 */
export const fileName = (sheet: string, learner: string | null): string => {
  if (learner === null) return sheet
  let made = ''
  for (const sign of learner
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}\p{M}]+/gu, '-')
    .replace(/^-+|-+$/g, '')) {
    if (new TextEncoder().encode(made + sign).length > MOST) break
    made += sign
  }
  return made === '' ? sheet : `${sheet}-${made}`
}
