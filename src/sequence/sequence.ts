import { sequenceCorner } from './corner.ts'
import { sequenceFlank } from './flank.ts'
import { sequencePlunges } from './plunge.ts'
import { TooManyMoves } from './program.ts'
import type { Request, Sequenced } from './request.ts'
import { sequenceStairs } from './stairs.ts'
import { sequenceSteps } from './steps.ts'
import { tooManyMoves } from './too-many-moves.ts'

/** Turns a request into ordered dial moves, every reading rounded once and every cut approached forward. */
export function sequence(request: Request): Sequenced {
  try {
    return bySort(request)
  } catch (error) {
    if (error instanceof TooManyMoves) return tooManyMoves(request)
    throw error
  }
}

function bySort(request: Request): Sequenced {
  if (request.cuts.style === 'steps') return sequenceSteps(request, request.cuts)
  if (request.cuts.style === 'stairs') return sequenceStairs(request, request.cuts)
  if (request.cuts.style === 'flank') return sequenceFlank(request, request.cuts)
  return request.cuts.style === 'corner'
    ? sequenceCorner(request, request.cuts)
    : sequencePlunges(request, request.cuts)
}
