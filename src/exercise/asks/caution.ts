import type { Phrase } from '../../phrase/phrase.ts'
import { say } from '../../phrase/say.ts'
import { words } from '../../phrase/words.ts'
import { beforeStart } from '../../sheet/cautions.ts'
import type { SheetStep } from '../../sheet/sheet.ts'
import { shuffledList } from '../shuffle.ts'
import { type Ask, cutsOf, type Made } from './ask.ts'

/** A step, and the caution that it calls for before any other. Common practice, no source. */
const cautionsOf = (held: string): readonly (readonly [SheetStep['action'], string])[] => [
  ['fit-tool', 'the bit out no more than it must, and on center'],
  ['align', 'the edge close to the work, not touching; the cross-feed out until then'],
  ['lock', 'look at the line again: locking may have moved it'],
  ['touch-off', 'power off and in neutral; turn the work by hand to feel the touch'],
  ['start', `${beforeStart(held)}, and stand clear`],
  ['measure', 'the spindle must stand still before hands or instruments come near'],
  ['deburr', 'the tool run well away; a fine file or a stone by hand, no rag and no sleeve near the work'],
]
const ASKED = 4
const LETTERS = 'ABCDEFG'

/** Which caution a step calls for. */
export const caution: Ask = {
  says: 'the caution that a step calls for',
  make: (scene) =>
    cutsOf(scene)
      .slice(0, 1)
      .flatMap(({ steps }): Made[] => {
        const { seed, plan } = scene
        const cautions = cautionsOf(plan.part.held)
        const shown = shuffledList(cautions, `${seed}/cautions`)
        const choices = shown.map(([, text], i) => `${LETTERS[i]}  ${text}`)
        return shuffledList(cautions, `${seed}/steps`).flatMap(([action, text], _, all): Made[] => {
          const step = steps.find((one) => one.action === action)
          if (step === undefined || all.slice(0, ASKED).every(([one]) => one !== action)) return []
          const right = LETTERS[shown.findIndex(([one]) => one === action)]!
          return [
            {
              id: `${step.number}.caution`,
              asks: words(say`the caution of ${step.thing} ${step.action}`, plan.units),
              facts: { sort: 'choice', units: plan.units },
              right,
              tolerance: 0,
              key: right,
              within: 'that letter',
              working: text,
              follows: [],
              move: null,
              place: {
                question: words(
                  say`Which caution comes before all at step ${step.number}, ${step.thing} ${withoutColon(step.does)}?`,
                  plan.units,
                ),
              },
              choices,
            },
          ]
        })
      }),
}

const withoutColon = (phrase: Phrase): Phrase =>
  phrase.map((part) => (typeof part === 'string' ? part.replace(/:$/, '') : part))
