import { bounded } from '../../moves/bounds.ts'
import type { PlungeCuts } from '../../moves/cuts.ts'
import type { VeeTool } from '../../tools/tool.ts'
import type { Bench } from '../draft.ts'
import type { VGrooveFeature } from '../feature.ts'
import { roughDepthsTo } from '../plunge.ts'
import { defaultVeeInfeed, defaultVeeMargin, leftFor } from '../shop.ts'
import { shrinkingInfeeds } from './infeeds.ts'
import type { Shape } from './wanted.ts'

/** Roughed side by side if the root is wider than the nose, finished at the near and at the far flank. */
export function plungeCuts(bench: Bench, feature: VGrooveFeature, tool: VeeTool, shape: Shape): PlungeCuts {
  const { cutting } = feature
  const first = shape.depth * shape.t
  const over = Math.max(0, shape.root - tool.nose)
  const margin = Math.min(cutting.leaveSides ?? defaultVeeMargin(bench.units), over / 2)
  const infeed = cutting.infeed ?? defaultVeeInfeed(bench.units)
  const leave = leftFor(bench.units, { ...cutting, infeed }, shape.depth)
  const spacing = tool.nose > 0 ? tool.nose * 0.9 : over || 1
  const gaps = bounded(Math.max(0, Math.ceil((over - 2 * margin) / spacing - 1e-9)))
  const places = Array.from(
    { length: gaps + 1 },
    (_, i) => first + margin + (gaps === 0 ? 0 : ((over - 2 * margin) * i) / gaps),
  )
  return {
    style: 'plunge',
    roughPlaces: places,
    first,
    last: first + over,
    spacing,
    depth: shape.depth,
    roughDepths: leave > 0 ? shrinkingInfeeds(roughDepthsTo, shape.depth - leave, infeed, tool.nose, shape.t) : [],
    infeed,
    walls: 'swept',
    peck: cutting.peck,
    layer: null,
  }
}
