import type { HideWord } from '../words.ts'
import type { Ask } from './ask.ts'
import { bottomDiameter } from './bottom-diameter.ts'
import { caution } from './caution.ts'
import { corrections } from './corrections.ts'
import { depth } from './depth.ts'
import { drill } from './drill.ts'
import { form } from './form.ts'
import { grinding } from './grinding.ts'
import { mistake } from './mistake.ts'
import { moves } from './moves.ts'
import { order, setUp } from './order.ts'
import { pin } from './pin.ts'
import { readings } from './readings.ts'
import { refusal } from './refusal.ts'
import { rpm } from './rpm.ts'
import { shift } from './shift.ts'
import { marks, turns } from './turns-and-marks.ts'

/** Every word of `hide`. */
export const ASKS: Readonly<Record<HideWord, Ask>> = {
  moves,
  readings,
  turns,
  marks,
  shift,
  'bottom-diameter': bottomDiameter,
  depth,
  form,
  pin,
  rpm,
  corrections,
  drill,
  order,
  'set-up': setUp,
  grinding,
  caution,
  mistake,
  refusal,
}
