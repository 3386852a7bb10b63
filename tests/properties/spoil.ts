import { bruteForce } from '../brute/brute-force.ts'
import { formProblems } from '../brute/expected.ts'
import type { EdgePoint, Sheet, SheetStep } from '../brute/sheet-shape.ts'
import type { RandomJob } from './drawn.ts'

/** What the brute force and the drawing have against a sheet that was made worse on purpose. */
export function foundOut(job: RandomJob, sheet: Sheet): string[] {
  const brute = bruteForce(sheet)
  const forms = brute.features.flatMap((feature) => {
    const drawn = job.features.find((one) => one.name === feature.name)
    return drawn === undefined ? [] : formProblems(sheet, feature, drawn)
  })
  return [...brute.problems, ...forms]
}

/**
 * The same sheet with every infeed of the cross-feed of its last feature three marks deeper, as from a zero set three marks off; the words go, so that
 * only the cut can tell. One infeed will not do: high on a fillet, or at the face of a corner, three marks of a fine dial may cut nothing that is held.
 */
export function tooDeep(sheet: Sheet): Sheet | null {
  const infeed = (step: SheetStep): boolean => step.action === 'feed-in' && step.slide === 'cross-feed'
  const feature = sheet.steps.findLast(infeed)?.feature
  if (feature === undefined) return null
  const { graduation, perTurn } = sheet.lathe.crossFeed
  const deeper = (step: SheetStep): SheetStep => {
    const reading = step.reading! + 3 * graduation
    const turns = perTurn === null ? null : Math.floor(reading / perTurn + 1e-9)
    const mark = perTurn === null ? null : (reading - turns! * perTurn) / graduation
    return { ...step, reading, turns, mark }
  }
  return silent({
    ...sheet,
    steps: sheet.steps.map((step) => (infeed(step) && step.feature === feature ? deeper(step) : step)),
  })
}

/** The same sheet without the steps that take up a compound's lost motion, where there is any to take up. */
export function withoutTakeUps(sheet: Sheet): Sheet | null {
  const drop = (step: SheetStep): boolean => step.action === 'take-up' && step.slide === 'compound'
  if (!sheet.steps.some(drop) || !(sheet.lathe.compound.backlash > 0)) return null
  // A touch-off is made on the slide that is set to zero next, and takes up that slide's lost motion itself.
  const touched = sheet.steps.some((step, at) => {
    const next = sheet.steps[at + 1]
    return step.action === 'touch-off' && next?.action === 'zero' && next.slide === 'compound'
  })
  return touched ? null : silent({ ...sheet, steps: sheet.steps.filter((step) => !drop(step)) })
}

const other: Record<EdgePoint, EdgePoint | null> = {
  'tailstock-corner': 'headstock-corner',
  'headstock-corner': 'tailstock-corner',
  'nose-tailstock-corner': 'nose-headstock-corner',
  'nose-headstock-corner': 'nose-tailstock-corner',
  tip: null,
}

/** The same sheet with the other corner of its last tool named for the line or the face; a tip in the middle has no other. */
export function wrongCorner(sheet: Sheet): Sheet | null {
  const at = sheet.features.findLastIndex(({ placing }) => placing !== undefined && other[placing.point] !== null)
  const edge = sheet.features[at]?.edge
  // The two corners of a keen point are one, and short of a face for a touch of the compound either will do.
  if (!edge || edge.nose === 0 || 'beside' in sheet.features[at]!.placing!.against) return null
  const features = sheet.features.map((feature, index) => {
    const { placing } = feature
    return index === at ? { ...feature, placing: { ...placing!, point: other[placing!.point]! } } : feature
  })
  return silent({ ...sheet, features })
}

function silent(sheet: Sheet): Sheet {
  const steps = sheet.steps.map((step) => {
    const { say: _, ...rest } = step
    return rest
  })
  return { ...sheet, steps }
}
