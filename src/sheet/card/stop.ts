import type { Lathe } from '../../lathe/lathe.ts'
import { identify } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { joinedBy, say, stepsNamed, together } from '../../phrase/say.ts'
import type { MetalLeft, SheetStep } from '../sheet.ts'
import { scaleIn } from './parts.ts'
import type { PlannedFeature, Stop } from './types.ts'

/** What is measured at a stop. Limits hold for the finished form: they stand at the last one. */
export const stopOf = (step: SheetStep, { proof }: PlannedFeature, steps: readonly SheetStep[], lathe: Lathe): Stop => {
  const { expected = [], tables = [], metalLeft, more, number } = step
  const limitsOf = (id: string) => proof.lines.find((line) => line.id === id)?.limits ?? null
  return {
    kind: 'stop',
    sizes: expected.map((one) => ({
      ...one,
      limits: step.group === 'end' && one.elsewhere === undefined ? limitsOf(one.id) : null,
    })),
    tables,
    rules: [
      ...(metalLeft === undefined
        ? []
        : [
            identify(
              `card.step.${number}.left`,
              stillToCut(metalLeft, (number) => stepWord(steps, lathe, number)),
            ),
          ]),
      // The lines of the tables are in the tables, those of the sizes in the blanks.
      ...(tables.length > 0 ? [] : more.slice(expected.length, more.length - (metalLeft?.sizes.length ?? 0))),
    ],
  }
}

/** What can be read of the scale of a step. */
const stepWord = (steps: readonly SheetStep[], lathe: Lathe, number: number): string => {
  const slide = steps.find((step) => step.number === number)?.slide ?? 'cross-feed'
  return scaleIn(lathe, slide)?.kind === 'readout' ? 'a step of the readout' : 'a mark'
}

const stillToCut = ({ from, to, sizes }: MetalLeft, stepWord: (step: number) => string): Phrase =>
  say`STILL TO CUT, steps ${from}\u00a0to\u00a0${to} again: ${joinedBy(
    '; ',
    sizes.map((size) => sizeLeft(size, stepWord(size.steps[0] ?? 0))),
  )}`

/** A mark further for every part begun, as the sheet has it in more words. */
const sizeLeft = (
  { measure, when, limit, past, steps, perStep, reading }: MetalLeft['sizes'][number],
  by: string,
): Phrase => {
  const which = stepsNamed(steps)
  const way = measure !== 'width' ? 'deeper' : reading < 0 ? 'further back' : 'further'
  const lost: Phrase = past === null ? [] : [` (${when === 'under' ? 'over' : 'under'} `, past, ': scrap)']
  return together([
    WHAT[measure],
    ` ${when} `,
    limit,
    ': ',
    which,
    ` ${by} ${way} for each `,
    perStep,
    ' or part',
    lost,
  ])
}

const WHAT: Readonly<Record<MetalLeft['sizes'][number]['measure'], string>> = {
  bottomDiameter: 'bottom diameter',
  outsideLessBottom: 'outside less bottom',
  width: 'width',
}
