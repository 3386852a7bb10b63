import { words } from '../../phrase/words.ts'
import type { Group, SheetStep } from '../../sheet/sheet.ts'
import { shuffledList } from '../shuffle.ts'
import { type Ask, cutsOf, type Made, type Scene } from './ask.ts'

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/** The steps from the first cut to the last, in lines, shuffled. */
export const order: Ask = {
  says: 'the order of the steps that cut; they are shuffled',
  make: (scene) => shuffledSteps(scene, 'order', (group) => group !== 'set up' && group !== 'end', together),
}

/** The steps of the set-up, shuffled. */
export const setUp: Ask = {
  says: 'the order of the steps of the set-up; they are shuffled',
  make: (scene) =>
    shuffledSteps(
      scene,
      'set-up',
      (group) => group === 'set up',
      (steps) => steps.map((step) => [step]),
    ),
}

type Lines = (steps: readonly SheetStep[]) => readonly (readonly SheetStep[])[]

/** A cut and its back-out are one line; so is all that is done at a stop. */
const together: Lines = (steps) => {
  const lines: SheetStep[][] = []
  for (const step of steps) {
    const before = lines.at(-1)?.at(-1)
    const joins =
      before !== undefined &&
      ((before.action === 'feed-in' && step.action === 'back-out') ||
        (before.group === 'measure' && step.group === 'measure') ||
        (before.action === 'go-past' && step.action === 'return'))
    if (joins) lines.at(-1)!.push(step)
    else lines.push([step])
  }
  return lines
}

const shuffledSteps = (scene: Scene, id: string, wanted: (group: Group) => boolean, linesOf: Lines): Made[] =>
  cutsOf(scene).flatMap(({ feature, index, steps }): Made[] => {
    const first = steps[0]?.number ?? 0
    const lines = linesOf(steps.filter(({ group }) => wanted(group)))
    if (lines.length < 3 || lines.length > LETTERS.length) return []
    const drawn = shuffledList([...lines.keys()], `${scene.seed}/${id}/${index}`)
    const letter = (line: number): string => LETTERS[drawn.indexOf(line)]!
    const right = [...lines.keys()].map(letter)
    return [
      {
        id: `${index + 1}.${id}`,
        outOf: 4,
        asks: `${id === 'order' ? 'order of the steps' : 'order of the set-up'} of ${feature.name}`,
        facts: {
          sort: 'order',
          feature: index,
          lines: Object.fromEntries(lines.map((line, i) => [letter(i), line.map(({ number }) => number - first)])),
          units: scene.plan.units,
        },
        right,
        tolerance: 0,
        key: right.join(' '),
        within: 'or any order that proves',
        working: 'as the sheet has it',
        follows: [],
        move: null,
        place: { question: `Put the lines in order (letters) for "${feature.name}":` },
        choices: drawn.map(
          (line, i) => `${LETTERS[i]}  ${lines[line]!.map((step) => wordsOf(step, scene)).join('; ')}`,
        ),
      },
    ]
  })

const wordsOf = ({ thing, does }: SheetStep, { plan }: Scene): string =>
  `${thing} ${words(does, plan.units).replace(/:$/, '')}`
