import type { Prose } from '../phrase/phrase.ts'
import { about, say } from '../phrase/say.ts'
import type { Code, FeaturePlan } from '../plan/plan.ts'
import type { Length, Units } from '../units/length.ts'
import { offPaper, type Paper } from './paper.ts'
import type { Findings, Taken } from './remaining.ts'
import type { Stop } from './stop.ts'
import { summedError } from './table.ts'
import { summedWidth } from './width-table.ts'
import { shown } from './words.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>
type Doubt = { readonly code: Code; readonly reason: Prose; readonly remedy: Prose }

/**
 * The size differs by more than all stated errors together: most likely somebody misread a turn or a mark. No moves are given for that until the same
 * size was measured again. The limit is the one printed under the table of the sheet, if there is a table.
 */
export const doubtful = (
  units: Units,
  feature: Planned,
  { expected }: Stop,
  { bottom, again }: Taken,
  paper: Paper,
): Doubt | null => {
  if (again === true) return null
  const off = bottom - expected
  const most = summedError(feature.budget, false)
  const table = paper.bottom?.rows.length ? paper.bottom : null
  if (table === null ? Math.abs(off) <= most + SLACK : !offPaper(table, bottom)) return null
  const show = (length: Length) => shown(length, units)
  const limit = table === null ? most : table.most
  return {
    code: 'measure-again',
    reason: say`the bottom measures ${show(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than expected, and all stated errors together explain ${show(limit)}`,
    remedy: 'measure again, and count the turns; if it measures the same, add --measured-again',
  }
}

/** Less than this is a rounding error, pm. */
const SLACK: Length = 1000

/** A size that was measured twice is accepted, with a note. */
export const believed = (units: Units, feature: Planned, { off }: Findings, { again }: Taken): Prose[] => {
  const most = summedError(feature.budget, false)
  if (again !== true || Math.abs(off) <= most + SLACK) return []
  return [
    say`Measured again: the bottom is ${shown(Math.abs(off), units)} ${off > 0 ? 'larger' : 'smaller'} than expected, where all stated errors together explain ${shown(most, units)}. If the roughing stopped at other marks than the sheet has, these steps are wrong.`,
  ]
}

/** The width depends on the tool alone, and a tool can be measured by itself: moves are given, with what to check before them. */
export const otherTool = (
  units: Units,
  feature: Planned,
  { expectedWidth, wider }: Findings,
  { width }: Taken,
): Prose[] => {
  const most = summedWidth(feature.budget)
  const off = width === null || expectedWidth === null || wider === 0 ? 0 : width - expectedWidth
  if (Math.abs(off) <= most + SLACK) return []
  const { edge } = feature
  const size = edge.width ?? edge.radius ?? edge.nose
  const is =
    size === null
      ? ''
      : say`: measure it before you go on, it should be ${about('planned', size + wider, units, DIGITS[units].digits)}`
  return [
    say`The width measures ${shown(Math.abs(off), units)} ${off > 0 ? 'more' : 'less'} than expected, and all stated errors together explain ${shown(most, units)}. The tool is taken to be what the groove says${is}; if it is not, measure the groove again`,
  ]
}

const DIGITS = { inch: { digits: 4 }, mm: { digits: 3 } } as const
