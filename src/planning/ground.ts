import type { Bench, Draft } from '../features/draft.ts'
import { reachFor } from '../features/plunge.ts'
import { oneOffUndersize, pastTheDepth, widestToGrind } from '../features/shop.ts'
import type { GrindFacts } from '../moves/grinding.ts'
import { grindFacts } from '../tools/grind/facts.ts'
import { shapeOf } from '../tools/registry.ts'

/** How the tool of a drafted feature is ground, for the form that the draft asks of it. */
export function groundFor(bench: Bench, draft: Draft): GrindFacts {
  const { feature, tool, surface, region } = draft
  const size = (id: string) => draft.dimensions.find((each) => each.id === id)?.aim
  const width = region.to - region.from
  const under = bench.work === 'one-off' ? Math.min(oneOffUndersize(bench.units), width / 10) : 0
  return grindFacts(tool, {
    feature: feature.name,
    units: bench.units,
    work: bench.work,
    material: bench.part.material.name,
    surface,
    depth: size('depth') ?? size('radius') ?? 0,
    width: feature.kind === 'groove' ? width : null,
    aimedWidth: feature.kind === 'groove' ? Math.round(Math.min(width - under, widestToGrind(bench.units))) : null,
    severalPlaces: feature.kind === 'groove' && width - under > widestToGrind(bench.units),
    shoulder: shapeOf(tool).grinding.sidesPassSteps ? shoulderBeside(bench, draft) : 0,
    half: feature.kind === 'v-groove' ? feature.angle.aim / 2 : null,
    radius: formRadius(draft),
  })
}

/** Height of the tallest step close to a groove, from what the reach of a tool for it would be. A V's flanks and a hollow meet it otherwise. */
function shoulderBeside(bench: Bench, { region, feature }: Draft): number {
  if (feature.kind === 'radius' && feature.shape === 'corner') return 0
  return reachFor(bench, region.from, region.to, 0) - pastTheDepth(bench.units)
}

/** The drawing's radius where the tool is the form's own; a smaller tool that steps along it is ground to its own radius. */
function formRadius({ feature, tool, cuts }: Draft): number | null {
  if (feature.kind !== 'radius' || (tool.shape !== 'round' && tool.shape !== 'corner')) return null
  const { aim, limits } = feature.radius
  // On a sloping face the form's own radius measures less than the drawing's.
  if (tool.rakeInUse !== 0) return cuts.style === 'steps' ? null : aim
  const [low, high] = limits ?? [aim * 0.99, aim * 1.01]
  return tool.radius >= low && tool.radius <= high ? aim : null
}
