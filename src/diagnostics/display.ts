/** How source text looks in a terminal cell by cell, so that a caret is under the right character. */

/** One character as shown: what is printed for it, and how many cells it takes. */
export type Cell = { readonly shown: string; readonly width: number; readonly start: number; readonly end: number }

const TAB = '    '
// Control and format characters (among them all that turn the direction of writing), lone surrogates, and everything
// that would break the line.
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u
const COMBINING = /\p{M}/u
// East Asian wide and full-width blocks, and pictographs: close enough to UAX #11 for a caret.
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}]/u

/** Splits a line into cells; `start` and `end` are UTF-16 offsets into the line. */
export function toCells(line: string): Cell[] {
  const cells: Cell[] = []
  let start = 0
  for (const character of line) {
    const end = start + character.length
    const shown = show(character)
    cells.push({ shown, width: widthOf(character, shown), start, end })
    start = end
  }
  return cells
}

/** Text that cannot move a cursor, switch direction or break a line when printed. */
export const printable = (text: string): string => Array.from(text, show).join('')

const show = (character: string): string => {
  if (character === '\t') return TAB
  return UNPRINTABLE.test(character) ? '\ufffd' : character
}

const widthOf = (character: string, shown: string): number => {
  if (character === '\t') return TAB.length
  if (COMBINING.test(shown)) return 0
  return WIDE.test(shown) ? 2 : 1
}
