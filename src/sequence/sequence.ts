import { sequenceCorner } from './corner.ts'
import { sequenceFlank } from './flank.ts'
import { sequencePlunges } from './plunge.ts'
import type { Request, Sequenced } from './request.ts'
import { sequenceSteps } from './steps.ts'

/** Turns a request into ordered dial moves, every reading rounded once and every cut approached forward. */
export function sequence(request: Request): Sequenced {
  if (request.cuts.style === 'steps') return sequenceSteps(request, request.cuts)
  if (request.cuts.style === 'flank') return sequenceFlank(request, request.cuts)
  return request.cuts.style === 'corner'
    ? sequenceCorner(request, request.cuts)
    : sequencePlunges(request, request.cuts)
}
