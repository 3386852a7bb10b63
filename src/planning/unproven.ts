import type { Refusal } from '../features/draft.ts'
import type { Operation } from '../moves/operation.ts'
import type { Fault, OperationTrace } from '../moves/trace.ts'
import { figure } from '../phrase/figure.ts'
import { about, difference, say } from '../phrase/say.ts'
import { labelOf } from '../plan/labels.ts'
import { formatLength } from '../units/format.ts'
import type { Units } from '../units/length.ts'

/** Why the replay does not prove a plan: a fault, or a finished size outside its limits. Null if it is proved. */
export function unproven(
  units: Units,
  operation: Operation,
  trace: OperationTrace,
  faults: readonly Fault[],
): Refusal | null {
  const outside = outsideLimits(units, operation, trace)
  if (outside !== null && faults.every((fault) => fault.kind === 'metal-left' || fault.kind === 'outside-form'))
    return outside
  const fault = faults[0]
  if (fault === undefined) return outside ?? tooNear(units, operation, trace)
  const by =
    fault.by === null || Math.abs(fault.by) < ARITHMETIC
      ? ''
      : say`, by ${difference('expected', Math.abs(fault.by), units)}`
  const seen = fault.say.replace(/\.$/, '')
  return { code: fault.kind, reason: say`the replay does not prove it: ${seen}${by}`, remedy: REMEDIES[fault.kind] }
}

/** Backed out, the tool must clear the work by what the job asks for, not only just, wherever it goes from there. */
function tooNear(units: Units, { moves, clear = 0 }: Operation, { clearance }: OperationTrace): Refusal | null {
  const near = moves.flatMap(({ action, slide }, index) =>
    slide !== 'cross-feed' || action === 'back-out' ? (clearance[index] ?? []) : [],
  )
  const least = Math.min(...near)
  if (least >= clear - 1000) return null
  const show = (length: number) => about('planned', length, units, units === 'inch' ? 4 : 3)
  return {
    code: 'not-clear',
    reason: say`the replay does not prove it: backed out, the tool clears the work by ${show(least)}, and ${show(clear)} is asked for`,
    remedy: REMEDIES['not-clear'],
  }
}

/** No reading of the dials brings a size inside its limits. */
function outsideLimits(units: Units, operation: Operation, trace: OperationTrace): Refusal | null {
  for (const [i, wanted] of operation.dimensions.entries()) {
    const size = trace.sizes[i]?.surely ?? null
    if (wanted.limits === null || size === null) continue
    const [low, high] = wanted.limits
    const slack = wanted.id === 'angle' ? 1e-9 : 1000
    if (size >= low - slack && size <= high + slack) continue
    const digits = digitsToDistinguish(wanted.id, size, size < low ? low : high, units)
    const show = (value: number) =>
      wanted.id === 'angle'
        ? say`${figure('planned', value, 'count', digits)}°`
        : about('planned', value, units, digits)
    return {
      code: 'no-reading',
      reason: say`no reading of these dials gives a ${labelOf(wanted.id)} within ${show(low)} to ${show(high)}; the nearest gives ${show(size)}`,
      remedy: byCarriageDial(operation)
        ? 'side-feed: compound, an indicator on the carriage (indicator: and range: in the lathe file), or a tool ground closer to size'
        : 'a dial with finer marks, read-to: 1/2, or a tool ground closer to size',
    }
  }
  return null
}

/** Less than a thousandth of a micrometer is rounding error. */
const ARITHMETIC = 1000

/** The usual digits, or as many more as it needs so that a size outside its limit does not print as the limit. */
const digitsToDistinguish = (id: string, size: number, limit: number, units: Units): number => {
  const usual = id === 'angle' ? 2 : units === 'inch' ? 4 : 3
  const distinct = (digits: number): boolean =>
    id === 'angle'
      ? size.toFixed(digits) !== limit.toFixed(digits)
      : formatLength(size, units, { digits }) !== formatLength(limit, units, { digits })
  return Array.from({ length: 6 }, (_, more) => usual + more).find(distinct) ?? usual
}

const byCarriageDial = ({ moves }: Operation): boolean =>
  moves.some(({ slide, action }) => slide === 'carriage' && action === 'take-up')

const REMEDIES: Record<Fault['kind'], string> = {
  'outside-form': 'check the tool against the form; a finer dial, or the compound parallel, leaves less to rounding',
  'moved-in-contact': 'give more clearance (clear:)',
  'shank-or-obstacle': 'grind the sides further back, or use a narrower blank',
  'beyond-travel': 'take a wider tool, or place the work so that less travel is needed',
  'not-clear': 'give more clearance (clear:)',
  'between-marks': 'check the dials in the lathe file',
  'open-zero': 'check the backlash in the lathe file',
  'spindle-standing': 'check the moves',
  'open-form': 'check the backlash in the lathe file',
  'carriage-lock': 'unlock the carriage to move it, lock it to cut',
  'set-up': 'check the steps and the diameters of the part, and where the feature is placed',
  'shifted-zero': 'set the compound parallel for this feature (compound: { angle: 0 })',
  'no-peck': 'limit the depth of one plunge (peck:), or take a wider tool',
  'counted-in': 'stop the spindle first, or set a stop (cross-feed: { stop: true })',
  'into-wall': 'sweep the floor from wall to wall (walls: swept)',
  'no-wall-plunge': 'leave more on the walls (leave-sides:), or sweep from wall to wall (walls: swept)',
  ledge: 'sweep the floor from wall to wall (walls: swept)',
  binding: 'take a narrower tool, so that the slot is widened on the way',
  ridge: 'allow a taller ridge (cusp:), or take dials with finer marks',
  'metal-left': 'check the tool against the form; a finer dial leaves less to rounding',
}
