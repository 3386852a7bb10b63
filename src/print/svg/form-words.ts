import { words } from '../../phrase/words.ts'
import { saysOf } from '../../sheet/sheet.ts'
import { roughed } from './passes.ts'
import { sizeText } from './sizes.ts'
import type { View } from './view.ts'

/** The picture of a form in words. */
export const formDesc = (view: View): string => {
  const { feature, sheet, drawing } = view
  const drawn = saysOf(feature.heading, 'drawn').map((each) => words(each, sheet.units))
  const sizes = feature.proof.lines
    .filter(({ settled }) => !settled)
    .map((one) => `${one.label} ${sizeText(one, sheet.units)}`)
  const steps = drawing.passes.map(({ step }) => step)
  const rough = roughed(view)
  const tool = saysOf(feature.heading, 'tool').map((each) => words(each, sheet.units))[0]
  return `${[
    `${feature.kind === 'roughing' ? 'Steps that may go no further than is drawn' : 'Wanted'}: ${drawn.join(', ')}`,
    ...(sizes.length === 0 ? [] : [`planned: ${sizes.join('; ')}`]),
    steps.length === 0 ? 'no step takes metal' : `metal is taken by steps ${steps.join(', ')}`,
    ...(rough === null ? [] : [`hatched: what is left after step ${rough.step}, the end of roughing`]),
    ...(tool === undefined ? [] : [`above it the edge of the tool ${tool}, its reference point marked`]),
  ].join('. ')}.`
}
