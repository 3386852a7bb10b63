import { isOnLine } from '../../moves/placing.ts'
import { figure, identify, length } from '../../phrase/figure.ts'
import type { Phrase } from '../../phrase/phrase.ts'
import { about, exact, joinedBy, say } from '../../phrase/say.ts'
import type { Units } from '../../units/length.ts'
import { beforeStart } from '../cautions.ts'
import type { Sheet, SheetStep } from '../sheet.ts'
import type { Box, CellPart, PlannedFeature } from './types.ts'

/** A step that is no cut, in as few words as it needs for who knows the work. */
export const boxOf = (
  step: SheetStep,
  part: CellPart,
  feature: PlannedFeature,
  sheet: Pick<Sheet, 'units' | 'part'>,
): Box => ({
  step: step.number,
  thing: step.thing,
  does: identify(`card.step.${step.number}`, does(step, part, feature, sheet)),
})

const does = (
  step: SheetStep,
  part: CellPart,
  feature: PlannedFeature,
  { units, part: { held } }: Pick<Sheet, 'units' | 'part'>,
): Phrase => {
  const { tool, lines, compoundAngle } = feature
  switch (step.action) {
    case 'layout':
      return lines.length === 0
        ? step.does
        : joinedBy(
            ', ',
            lines.map((line) => length('place', line, units)),
          )
    case 'swing':
      return compoundAngle === 0 ? ['parallel'] : step.does
    case 'set-speed':
      return step.short ?? step.does
    case 'fit-tool':
      return [`"${tool}" on center, square`]
    case 'take-up':
      return takeUp(step)
    case 'align':
      return aligned(step, feature, units)
    case 'touch-off':
      return touched(step, feature)
    case 'zero':
      return ['set 0']
    case 'stop':
      return ['STOP']
    case 'unlock':
      return step.group === 'end' ? ['unlock, run it clear'] : step.does
    case 'deburr':
      if (step.purpose === 'chamfer' || step.purpose === 'burr') return step.short ?? step.does
      return ['spindle STOPPED']
    case 'start':
      return step.group === 'rough' || step.group === 'set up' ? [...step.does, `, ${beforeStart(held)}`] : step.does
    case 'lock':
      return isOnLine(feature.placing) ? ['LOCK, look again'] : step.does
    case 'measure':
      return []
    default:
      return dial(step, part)
  }
}

/** A hollow that hangs over a corner touches by one tip after the other. */
const byTips = ({ at }: PlannedFeature['touch']): boolean => at !== null && 'past' in at.against

/** What the edge is fed to by hand. */
const touched = ({ slide, does }: SheetStep, { touch }: PlannedFeature): Phrase => {
  if (byTips(touch)) return [slide === 'compound' ? 'deep' : 'outer', ' tip only touches, power off']
  if (touch.at !== null) return [...does, ', power off']
  return slide === 'compound' ? does : ['touch, power off']
}

const takeUp = ({ takeUp, atLeast, slide, does, first = [] }: SheetStep): Phrase => [
  ...first,
  ...(slide === 'compound' && takeUp !== undefined && takeUp !== atLeast
    ? ['forward ', figure('take-up', takeUp, 'mark', 2), ' marks or more']
    : does),
]

const aligned = ({ does, purpose }: SheetStep, { placing, touch }: PlannedFeature, units: Units): Phrase => {
  const { point, against } = placing
  const corner = CORNERS[point]
  if (purpose === 'only-tip')
    return touch.at !== null && 'by' in touch.at.against
      ? say`outer tip ${exact('tool', touch.at.against.by, units)} over`
      : does
  if (byTips(touch) && 'beside' in against)
    return say`deep tip near the face at ${exact('place', against.beside, units)}`
  if (corner === undefined) return does
  if ('line' in against) return say`${corner} on ${about('place', against.line, units)}`
  return 'face' in against ? [`${corner} touches the shoulder`] : does
}

const CORNERS: Readonly<Partial<Record<PlannedFeature['placing']['point'], string>>> = {
  'tailstock-corner': 'tailstock corner',
  'headstock-corner': 'headstock corner',
  'nose-tailstock-corner': 'tailstock corner of nose',
  'nose-headstock-corner': 'headstock corner of nose',
}

/** Turned to a reading; at a stop the turns are counted. */
const dial = ({ action, purpose, slide, does }: SheetStep, { passing, at, whole }: CellPart): Phrase => {
  if (slide === null || at === does) return does
  if (purpose === 'clear-to-measure') return whole === null ? does : ['OUT ', ...whole]
  if (purpose === 'come-back') return whole === null ? does : ['IN ', ...whole, ' to ', ...at]
  const way = action === 'back-out' ? 'OUT ' : action === 'go-past' ? 'back ' : slide === 'cross-feed' ? 'in ' : 'on '
  return [way, ...passing, ...(passing.length > 0 ? [' '] : ['to ']), ...at]
}
