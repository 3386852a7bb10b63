import type { Dial, Sheet, SheetStep } from './sheet-shape.ts'

/** One screw: what its dial shows, as travel in sheet units, and where its slide stands for one amount of lost motion. */
export type Screw = { dial: number; slide: number; lost: number; zeroed: boolean; tight: boolean }

export type SlideName = 'cross-feed' | 'compound' | 'carriage'

export const slides: readonly SlideName[] = ['cross-feed', 'compound', 'carriage']

export function dialOf(sheet: Sheet, slide: SlideName): Dial | null {
  const { crossFeed, compound, carriage } = sheet.lathe
  return slide === 'cross-feed' ? crossFeed : slide === 'compound' ? compound : carriage
}

/** Slide travel, in the sheet's units, that one unit on the dial stands for. */
export function travelPerUnit(sheet: Sheet, dial: Dial): number {
  const units = dial.units === sheet.units ? 1 : dial.units === 'mm' ? 1 / 25.4 : 25.4
  return dial.reads === 'diameter' ? units / 2 : units
}

export function lostMotion(sheet: Sheet, slide: SlideName): number {
  const dial = dialOf(sheet, slide)
  return dial === null || dial.readout ? 0 : (dial.backlash ?? 0) * travelPerUnit(sheet, dial)
}

export function turnTo(screw: Screw, dial: number): void {
  screw.dial = dial
  screw.slide = Math.min(Math.max(screw.slide, dial), dial + screw.lost)
}

/** What is wrong with the reading of a step as such: between marks, or turns and mark that say something else. */
export function readingProblem(sheet: Sheet, step: SheetStep): string | null {
  const dial = step.slide ? dialOf(sheet, step.slide) : null
  if (!dial || step.reading === null || step.reading === undefined) return null
  const marks = step.reading / (dial.graduation * (dial.readTo ?? 1))
  if (Math.abs(marks - Math.round(marks)) > 1e-5) return `reading ${step.reading} is not on a mark of the ${step.slide}`
  if (dial.readout || dial.perTurn === null) return null
  const { turns, mark } = step
  if (turns === null || turns === undefined || mark === null || mark === undefined) {
    return `turns or mark missing for the ${step.slide}`
  }
  const shown = turns * dial.perTurn + mark * dial.graduation
  if (Math.abs(shown - step.reading) > dial.graduation * 1e-4)
    return `${turns} turns and mark ${mark} are not ${step.reading}`
  return mark < 0 || mark * dial.graduation > dial.perTurn - dial.graduation * 1e-6
    ? `mark ${mark} is not on the dial`
    : null
}
