import type { FormPicture } from '../../grading/grades.ts'
import { short } from '../markup.ts'
import { between, depthsOf, frameAt, replaced, scaleFor, scaleWords, trace } from './curves.ts'
import { GRAY, letters, line, path, WEIGHT } from './pen.ts'
import type { Picture } from './picture.ts'

const WIDTH = 150
const FORM = 110
const DEEP = 45
const TOP = 16

/** What the readings of a learner cut, over what the drawing wants. Headstock to the left. */
export const overlayOf = ({ name, before, wanted: form, cut, region, feature }: FormPicture): Picture => {
  const wanted = replaced(before, form, region)
  const beside = region.to - region.from
  const [from, to] = [region.from - beside, region.to + beside]
  const shown = [between(wanted, from, to), between(cut, from, to)].flat()
  const [high, low] = shown.length === 0 ? [0, 1e9] : depthsOf(shown)
  const scale = scaleFor([
    [to - from, FORM],
    [low - high, DEEP],
  ])
  const width = ((to - from) / 1e9) * scale
  const frame = frameAt(scale, [20 + width + (from / 1e9) * scale, TOP - (high / 1e9) * scale])
  const bottom = TOP + ((low - high) / 1e9) * scale + 8
  const body = between(wanted, from, to)
  const metal = body.length === 0 ? '' : `${trace(body, frame)}V${short(bottom)}H${short(20 + width)}Z`
  return {
    id: `cut-${feature + 1}`,
    kind: 'form',
    feature,
    step: null,
    title: `${name}: what was cut, over the drawing`,
    desc: 'The form that the drawing wants as a full line, and what these readings cut as a dashed one.',
    width: WIDTH,
    height: bottom + 14,
    drawn: [
      letters([2, 5.5], `${name}, ${scaleWords(scale)}`, { bold: true }),
      ...(metal === '' ? [] : [path(metal, { width: 0, fill: GRAY.metal })]),
      path(trace(between(wanted, from, to), frame), { width: WEIGHT.heavy, as: 'wanted' }),
      path(trace(between(cut, from, to), frame), { width: WEIGHT.edge, dash: '2 1.2', as: 'cut' }),
      line([4, bottom + 7], [14, bottom + 7], { width: WEIGHT.heavy }),
      letters([16, bottom + 8], 'the drawing'),
      line([50, bottom + 7], [60, bottom + 7], { width: WEIGHT.edge, dash: '2 1.2' }),
      letters([62, bottom + 8], 'cut with these readings'),
    ],
  }
}
