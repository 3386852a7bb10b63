import { isOnLine, type Placing, type Touch } from '../moves/placing.ts'
import type { Prose } from '../phrase/phrase.ts'
import { about, exact, say } from '../phrase/say.ts'
import { INCH, type Length, MM, type Units } from '../units/length.ts'
import type { Planned } from './scene.ts'

/** Words for what the tool is brought to, made only from the data that is replayed. */
export type PlacingWords = {
  /** It is on `to`, or is brought to it in the way that `to` describes. */
  readonly on: boolean
  readonly point: string
  readonly to: Prose
}

export const placingWords = ({ edge, operation }: Planned, units: Units): PlacingWords => ({
  point:
    edge.shape === 'vee' && edge.nose === 0 && isOnLine(operation.placing)
      ? 'point of the tool'
      : pointOf(operation.placing, edge.shape),
  to: against(operation.placing, edge.shape, units),
  on: 'line' in operation.placing.against || ('beside' in operation.placing.against && edge.shape !== 'corner'),
})

/** The compound feeds the side of a tool, or the deep tip of a hollow, to a face. */
const pointOf = ({ point, against }: Placing, shape: Planned['edge']['shape']): string => {
  if ('beside' in against) return `${shape === 'corner' ? TIPS[point] : BESIDE[point]} of the tool`
  return POINTS[point]
}

const POINTS: Readonly<Record<Placing['point'], string>> = {
  'tailstock-corner': 'tailstock-side corner of the tool',
  'headstock-corner': 'headstock-side corner of the tool',
  'nose-tailstock-corner': 'tailstock-side corner of the nose',
  'nose-headstock-corner': 'headstock-side corner of the nose',
  tip: 'tip of the tool, rocking the carriage lightly',
}
const BESIDE: Readonly<Record<Placing['point'], string>> = {
  'tailstock-corner': 'tailstock side',
  'headstock-corner': 'headstock side',
  'nose-tailstock-corner': 'tailstock side of the nose',
  'nose-headstock-corner': 'headstock side of the nose',
  tip: 'tip',
}

/** The deep tip of a hollow corner tool is toward the tailstock. */
const TIPS: Readonly<Record<Placing['point'], string>> = {
  ...BESIDE,
  'tailstock-corner': 'deep tip',
  'headstock-corner': 'outer tip',
}

const against = ({ point, against }: Placing, shape: Planned['edge']['shape'], units: Units): Prose => {
  if ('line' in against) return say`the ${about('place', against.line, units)} line`
  if ('between' in against)
    return say`midway between the lines, at ${about('place', (against.between[0] + against.between[1]) / 2, units)}`
  if ('face' in against)
    return `touch the face of the shoulder on the ${point === 'headstock-corner' ? 'headstock' : 'tailstock'} side`
  return shape === 'corner'
    ? say`close to the face at ${exact('place', against.beside, units)}, not touching`
    : 'the face of the corner'
}

/** What is felt when the cross-feed is fed in gently. */
export const touchWords = ({ edge, operation }: Planned, units: Units): Prose => {
  const { at }: Touch = operation.touch
  const end =
    edge.shape === 'square'
      ? 'edge'
      : edge.shape === 'vee' && edge.nose !== 0
        ? 'nose'
        : edge.shape === 'vee'
          ? 'point'
          : 'tip'
  if (at !== null) {
    if ('past' in at.against)
      return `only the ${at.point === 'headstock-corner' ? 'outer' : 'deep'} tip touches the cylinder`
    const [from, to] = within(at.against.over, units)
    const beside = isOnLine(operation.placing) ? ' beside the lines' : ''
    return say`the ${end} touches the cylinder${beside}, its middle by carriage between ${about('place', from, units)} and ${about('place', to, units)}`
  }
  return 'between' in operation.placing.against
    ? `the ${end} touches midway between the lines`
    : `the ${end} touches the turning surface`
}

/** By whole hundredths of an inch, or half millimeters, where there is room for that: nobody needs to be nearer. */
const within = ([from, to]: readonly [Length, Length], units: Units): readonly [Length, Length] => {
  const step = units === 'inch' ? INCH / 100 : MM / 2
  const [low, high] = [Math.ceil(from / step) * step, Math.floor(to / step) * step]
  return low < high ? [low, high] : [from, to]
}

/** How much of the edge is over the work if only a tip may touch, pm; null if the whole edge may. */
export const overWork = ({ at }: Touch): number | null => (at !== null && 'past' in at.against ? at.against.by : null)
