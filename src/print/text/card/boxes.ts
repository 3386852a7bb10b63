import { heldWords } from '../../../phrase/words.ts'
import type { Block, Box } from '../../../sheet/card/types.ts'
import type { Units } from '../../../units/length.ts'
import { beside, plain } from '../columns.ts'

const GAP = 2
const LABEL = 8

/** Under each other in two columns; closer, where that saves a line. */
export const boxLines = ({ boxes }: Extract<Block, { kind: 'boxes' }>, units: Units, width: number): string[] => {
  const each = boxes.map((box) => lineOf(box, units, width))
  const [aligned, close] = [packed(each, width, true), packed(each, width, false)]
  return close.length < aligned.length ? close : aligned
}

const packed = (each: readonly (readonly string[])[], width: number, aligned: boolean): string[] => {
  const lines: string[] = []
  let open = false
  for (const [first = '', ...more] of each) {
    const last = open ? (lines.at(-1) ?? '') : ''
    const half = aligned && last.length + GAP <= width / 2 && width / 2 + first.length <= width
    const start = half ? width / 2 : last.length + GAP
    if (!open || more.length > 0 || start + first.length > width) lines.push(first, ...more)
    else lines[lines.length - 1] = last.padEnd(start) + first
    open = more.length === 0
  }
  return lines
}

const lineOf = ({ step, steps, thing, does }: Box, units: Units, width: number): string[] => {
  const label = `${(steps === undefined ? String(step) : steps.join('-')).padStart(3)} [ ] `
  return beside(label, Math.max(LABEL, label.length), `${thing} ${heldWords(does, units)}`, width)
}

/** Short things one after the other, none of them broken unless it is longer than a line. */
export const flowed = (texts: readonly string[], width: number): string[] => {
  const lines: string[] = []
  for (const text of texts) {
    const last = lines.at(-1)
    const shown = plain(text)
    if (last !== undefined && last.length + GAP + shown.length <= width)
      lines[lines.length - 1] = `${last}${' '.repeat(GAP)}${shown}`
    else lines.push(...beside('', 0, text, width))
  }
  return lines
}
