import type { Scale } from '../../lathe/lathe.ts'
import type { Slide } from '../../moves/operation.ts'
import type { Sheet, SheetStep } from '../../sheet/sheet.ts'
import { chosen } from './passes.ts'

/** A reading that gets a face of its own. */
export type Shown = {
  readonly step: SheetStep
  readonly scale: Scale
  readonly reading: number
  /** The way that the hand turns to get there: the way that the numbers rise, or back. */
  readonly back: boolean
  /** Turned by whole turns to make room for the hands, or back from there: a face shows nothing of it. */
  readonly wholeTurns: boolean
}

/** The readings that are finished at, the one that roughing stops at, and those past zero: so many of each at the most, eight in all. */
const MOST = { finish: 4, stop: 1, past: 3 } as const

export const readingsOf = (sheet: Sheet, feature: number): Shown[] => {
  const all = everyReading(sheet, feature)
  const finish = all.filter(({ step, back }) => step.group === 'finish' && !back)
  const stop = all.filter(
    ({ step, back }) => step.group === 'rough' && step.action === 'feed-in' && !back && step.slide === 'cross-feed',
  )
  const past = all.filter(({ reading, wholeTurns }) => reading < 0 && !wholeTurns)
  const picked = new Set([
    ...chosen(once(finish), MOST.finish),
    ...stop.slice(-MOST.stop),
    ...once(past).slice(0, MOST.past),
  ])
  return all.filter((one) => picked.has(one))
}

/** Every step that a dial or a readout is turned for. */
export const everyReading = (sheet: Sheet, feature: number): Shown[] =>
  sheet.steps.filter((step) => step.feature === feature).flatMap((step, i, steps) => shown(sheet, steps, step, i))

const shown = (sheet: Sheet, steps: readonly SheetStep[], step: SheetStep, i: number): Shown[] => {
  const { reading, slide, action } = step
  const scale = slide === null ? null : scaleOf(sheet, slide)
  if (reading === null || scale === null || slide === null || action === 'zero') return []
  const before = steps.slice(0, i).findLast((other) => other.slide === slide && other.reading !== null)
  const wholeTurns = step.purpose === 'clear-to-measure' || step.purpose === 'come-back'
  // What remains of a feature begins in the middle of it: from where the hands had room the dial comes forward.
  const back = before === undefined ? reading < 0 && step.purpose !== 'come-back' : reading < before.reading!
  return [{ step, scale, reading, back, wholeTurns }]
}

/** The same reading come to the same way is one face. */
const once = (all: readonly Shown[]): Shown[] =>
  all.filter((one, i) => all.findIndex((other) => keyOf(other) === keyOf(one)) === i)

const keyOf = ({ step, reading, back }: Shown): string => `${step.slide} ${reading} ${back}`

const scaleOf = ({ lathe }: Sheet, slide: Slide): Scale | null =>
  slide === 'cross-feed' ? lathe.crossFeed : slide === 'compound' ? lathe.compound.scale : lathe.carriage
