import type { Bench, Draft } from '../features/draft.ts'
import { reachFor } from '../features/plunge.ts'
import { kindOf } from '../features/registry.ts'
import { pastTheDepth } from '../features/shop.ts'
import type { GrindFacts } from '../moves/grinding.ts'
import { grindFacts } from '../tools/grind/facts.ts'
import { shapeOf } from '../tools/registry.ts'

/** How the tool of a drafted feature is ground, for the form of the draft. */
export function groundFor(bench: Bench, draft: Draft): GrindFacts {
  const { feature, tool, surface } = draft
  const size = (id: string) => draft.dimensions.find((each) => each.id === id)?.aim
  return grindFacts(tool, {
    feature: feature.name,
    units: bench.units,
    work: bench.work,
    material: bench.part.material.name,
    surface,
    depth: size('depth') ?? size('radius') ?? 0,
    width: null,
    aimedWidth: null,
    severalPlaces: false,
    shoulder: shapeOf(tool).grinding.sidesPassSteps ? shoulderBeside(bench, draft) : 0,
    half: null,
    radius: null,
    ...kindOf(feature).formToGrind?.(bench, draft, feature),
  })
}

/** Height of the tallest step near a form, from the reach that a tool for it would need. */
const shoulderBeside = (bench: Bench, { region }: Draft): number =>
  reachFor(bench, region.from, region.to, 0) - pastTheDepth(bench.units)
