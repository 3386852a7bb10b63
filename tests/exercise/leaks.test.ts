import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bareSheetFor, compilePlain } from '../../src/compile.ts'
import type { Scene } from '../../src/exercise/asks/ask.ts'
import { blanksOf, type Placed } from '../../src/exercise/blanks.ts'
import { answerForm } from '../../src/exercise/form.ts'
import { outlineOf } from '../../src/exercise/outline.ts'
import { readExercise } from '../../src/exercise/read.ts'
import { at, flow } from '../../src/exercise/tree.ts'
import { worksheetOf } from '../../src/exercise/worksheet.ts'
import type { Role } from '../../src/phrase/phrase.ts'
import { classFormatsOf, classPrinterOf } from '../../src/print/registry.ts'
import type { Sheet } from '../../src/sheet/sheet.ts'
import { fromDisk } from '../print/examples.ts'

const FOLDER = 'examples/exercises'
/** Of a mistake the sheet itself tells the answer, to who reads it well; of a choice among jobs the jobs do. */
const files = readdirSync(FOLDER).filter((name) => !/impossible|mistake/.test(name))

/** What each word hides: figures by their role, wherever they stand. */
const HIDDEN: Readonly<Record<string, readonly Role[]>> = {
  moves: ['reading', 'mark', 'turns', 'along', 'undersize', 'depth'],
  readings: ['reading', 'mark', 'turns'],
  turns: ['reading', 'mark', 'turns'],
  marks: ['reading', 'mark', 'turns'],
  shift: ['along', 'undersize'],
  'bottom-diameter': ['diameter'],
  depth: ['depth', 'diameter'],
  form: ['depth', 'diameter'],
  rpm: ['speed'],
  pin: ['planned', 'expected'],
  corrections: ['depth', 'diameter'],
}

type Build = typeof worksheetOf

const printed = async (
  build: Build,
  sheet: Sheet,
  blanks: readonly Placed[],
  scene: Scene,
  hide: Parameters<Build>[3],
): Promise<string> => {
  const who = { sheet: '01', learner: 'Ann', title: 'An exercise', teaches: 'something' }
  const worksheet = build(who, sheet, blanks, hide, scene.plan.features.map(outlineOf))
  const formats = await Promise.all(classFormatsOf('worksheet').map((format) => classPrinterOf('worksheet', format)))
  return [...formats.map((print) => print(worksheet)), answerForm(worksheet)].join('\n')
}

/** The sheet with another value in every figure of these roles, and in every plain reading. */
const otherFigures = (part: unknown, roles: ReadonlySet<string>): unknown => {
  if (Array.isArray(part)) return part.map((one) => otherFigures(one, roles))
  if (typeof part !== 'object' || part === null) return part
  const changed = Object.entries(part).map(([key, one]): [string, unknown] => {
    // A dial goes onto the zero that was set: that is no answer.
    const isReading = key === 'reading' || key === 'turns' || key === 'mark'
    if (isReading && typeof one === 'number' && one !== 0) return [key, one + 7]
    return [key, otherFigures(one, roles)]
  })
  const made = Object.fromEntries(changed)
  return 'role' in part && 'digits' in part && roles.has(String(part.role))
    ? { ...made, value: Number(made.value) + 1 }
    : made
}

const otherAnswers = (blanks: readonly Placed[]): Placed[] =>
  blanks.map((blank) => ({
    ...blank,
    right: Array.isArray(blank.right) ? [...blank.right].reverse() : 1,
    key: 'another',
    working: 'another',
  }))

const sceneOf = (file: string): { scene: Scene; hide: Parameters<Build>[3] } => {
  const { exercise } = readExercise(`${FOLDER}/${file}`, fromDisk)
  const tree = exercise!.bases[0]!.space.element(0)
  if (!tree.ok) throw new Error(tree.message)
  const { plan } = compilePlain('job', () => ({ ok: true, file: 'job', bytes: flow(tree.value) }))
  const scene: Scene = {
    plan: plan!,
    sheet: bareSheetFor(plan!),
    tolerance: null,
    gives: (feature, key) => at(tree.value, `features.${feature}.${key}`) !== null,
    sheetOf: bareSheetFor,
    seed: 'leaks',
    hides: new Set(exercise!.hide),
  }
  return { scene, hide: exercise!.hide }
}

/** Whether a learner's files change with what is hidden. */
const leaks = async (file: string, build: Build): Promise<boolean> => {
  const { scene, hide } = sceneOf(file)
  const blanks = blanksOf(scene, hide)
  const roles = new Set(hide.flatMap((word) => HIDDEN[word] ?? []))
  const other = otherFigures(scene.sheet, roles) as Sheet
  const [one, two] = [
    await printed(build, scene.sheet, blanks, scene, hide),
    await printed(build, other, otherAnswers(blanks), scene, hide),
  ]
  return one !== two
}

describe('what is hidden', () => {
  it.each(files)('is in no byte of a learner’s files: %s', async (file) => {
    expect(await leaks(file, worksheetOf)).toBe(false)
  })

  const leaky: readonly [string, Build][] = [
    [
      'prints the steps as they are',
      (who, sheet, ...rest) => ({ ...worksheetOf(who, sheet, ...rest), steps: sheet.steps }),
    ],
    [
      'keeps a reading in the data of a step',
      (who, sheet, ...rest) => {
        const made = worksheetOf(who, sheet, ...rest)
        return {
          ...made,
          steps: made.steps.map((step, i) => ({ ...step, thing: `${step.thing} ${sheet.steps[i]!.reading ?? ''}` })),
        }
      },
    ],
    [
      'tells how much the tool is under its groove',
      (who, sheet, blanks, hide, outlines) =>
        worksheetOf(
          who,
          sheet,
          blanks,
          hide.filter((word) => word !== 'shift'),
          outlines,
        ),
    ],
    [
      'puts the key beside the question',
      (who, sheet, blanks, ...rest) => {
        const made = worksheetOf(who, sheet, blanks, ...rest)
        return {
          ...made,
          blanks: made.blanks.map((blank, i) => ({ ...blank, asks: `${blank.asks} ${blanks[i]!.key}` })),
        }
      },
    ],
  ]
  it.each(leaky)('is found where a sheet %s', async (_, build) => {
    expect(await leaks('03-undersize-tool.yaml', build)).toBe(true)
  })
})

it('no question about a correction tells a reading that is asked elsewhere', () => {
  let asked = 0
  for (const file of files) {
    const { scene, hide } = sceneOf(file)
    const blanks = blanksOf(scene, hide)
    const readings = blanks.filter(({ id }) => id.endsWith('.reading')).map(({ key }) => key)
    for (const { id, place } of blanks) {
      if (readings.length === 0 || !id.includes('.correction-') || !('question' in place)) continue
      asked++
      const told = place.question.match(/\d+ turns? and \d+|\d*\.?\d+/g) ?? []
      const step = /step (\d+)/.exec(place.question)?.[1]
      expect([file, readings.filter((key) => told.filter((one) => one !== step).includes(key))]).toEqual([file, []])
    }
  }
  expect(asked).toBeGreaterThan(1)
})
