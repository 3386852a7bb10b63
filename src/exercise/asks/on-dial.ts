import { readable, type Scale } from '../../lathe/lathe.ts'
import { shownOn } from '../../phrase/dial.ts'
import { words } from '../../phrase/words.ts'
import type { Length, Units } from '../../units/length.ts'
import type { Made } from './ask.ts'

/** A reading of a dial as the right answer: half a mark either way is right too. `right`: pm of the dial's own travel as it shows it. */
export const onDial = (
  scale: Scale,
  right: Length,
  units: Units,
): Pick<Made, 'right' | 'tolerance' | 'key' | 'within'> => ({
  right,
  tolerance: readable(scale) / 2,
  key: words(shownOn(scale, right / readable(scale)), units),
  within: 'half a mark, or what replays within the limits',
})
