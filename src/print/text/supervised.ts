import { heldWords } from '../../phrase/words.ts'
import type { SupervisedCheck } from '../../sheet/supervised.ts'
import type { Units } from '../../units/length.ts'
import { wrap } from './columns.ts'

const BLANK = '______'

/** A box to tick for what the learner does, or one that the instructor signs. */
export const supervisedLines = (
  { kind, says }: SupervisedCheck,
  units: Units,
  indent: number,
  width: number,
): string[] => {
  const text = heldWords(says, units)
  const line = kind === 'dry-run' ? `DRY RUN, ${text}` : `INSTRUCTOR ${BLANK} ${text}`
  return wrap(line, width - indent - 4).map((each, i) => `${' '.repeat(indent)}${i === 0 ? '[ ] ' : '    '}${each}`)
}
