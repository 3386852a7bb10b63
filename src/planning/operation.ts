import type { Draft } from '../features/draft.ts'
import { kindWords } from '../features/registry.ts'
import { findMaterial } from '../handbook/materials.ts'
import { formingFeed, restAt } from '../handbook/pace.ts'
import { spindleSpeed } from '../handbook/spindle.ts'
import type { Job } from '../job/job.ts'
import type { Edge } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import type { Pace, Spindle } from '../moves/stated.ts'

export function operationFor(
  draft: Draft,
  edge: Edge,
  angle: number,
  spindle: Spindle,
  moves: Operation['moves'],
): Operation {
  const { feature, surface, placing, touch, wanted, region, dimensions, cuts } = draft
  return {
    feature: feature.index,
    name: feature.name,
    kind: draft.roughs === undefined ? kindWords(feature) : 'roughing',
    origin: feature.origin,
    toolName: draft.tool.name,
    edge,
    angle,
    surface,
    placing,
    touch,
    lines: draft.layout.map(({ fromEnd }) => fromEnd),
    wanted,
    ...(draft.atLeast === undefined ? {} : { atLeast: draft.atLeast }),
    region,
    dimensions,
    rpm: spindle.rpm,
    // The cusp that the job asks for or the shop's default, not the ridge of the places chosen.
    ...(cuts.style === 'steps' ? { cusp: { most: cuts.cusp, given: cuts.cuspGiven } } : {}),
    ...(feature.cutting.peck === null ? {} : { peck: feature.cutting.peck }),
    moves,
  }
}

/** How the hand feeds it at that speed: by the width of the edge. */
export function paceFor(job: Job, operation: Operation, rpm: number): Pace {
  const { pieces } = operation.edge
  return {
    feed: formingFeed(pieces.at(-1)!.to - pieces[0]!.from, job.units),
    rest: restAt(rpm, job.part.material.name),
  }
}

export function spindleFor(job: Job, draft: Draft): Spindle {
  const { speedUnits, source } = job.part.material
  const carbide = draft.tool.bit === 'carbide' ? (findMaterial(job.part.material.name)?.carbideFactor ?? 1) : 1
  const cuttingSpeed = job.part.material.cuttingSpeed * carbide
  const factor = draft.feature.cutting.speedFactor ?? 0.5
  const chosen = spindleSpeed({
    cuttingSpeed,
    speedUnits,
    diameter: draft.surface,
    factor,
    speeds: job.lathe.spindleSpeeds,
  })
  return { rpm: chosen.rpm, wanted: chosen.wanted, tooFast: chosen.tooFast, cuttingSpeed, speedUnits, source, factor }
}
