import { describe, expect, it } from 'vitest'
import type { Move } from '../../src/moves/operation.ts'
import { plain } from '../../src/phrase/words.ts'
import { newProgram } from '../../src/sequence/program.ts'
import type { Request } from '../../src/sequence/request.ts'
import { rangeRefusal } from '../../src/sequence/set-up.ts'
import type { StepPlaces } from '../../src/sequence/steps-places.ts'
import { cuspNotKept } from '../../src/sequence/steps-refusals.ts'
import { INCH, MM } from '../../src/units/length.ts'
import { bench, move } from '../replay/shop.ts'

describe('a ridge that the marks cannot keep', () => {
  const offered = (units: 'inch' | 'mm', exact: number) => {
    const refusal = cuspNotKept({ units } as Request, { exact } as StepPlaces)
    if (refusal.ok) throw new Error('planned')
    return [refusal.code, refusal.offers?.[0]?.change.cusp, plain(refusal.offers![0]!.say, units)]
  }

  it('is offered as the next ten thousandth of the units above it', () => {
    expect(offered('inch', 0.00123 * INCH)).toEqual(['cusp-not-kept', 0.0013 * INCH, 'allow that cusp (cusp: .0013)'])
    expect(offered('mm', 0.01234 * MM)).toEqual(['cusp-not-kept', 0.0124 * MM, 'allow that cusp (cusp: 0.0124)'])
  })
})

describe('an indicator on the carriage', () => {
  const carriage = {
    kind: 'readout',
    units: 'inch',
    resolution: 0.001 * INCH,
    reads: 'depth',
    range: 0.25 * INCH,
  } as const
  const request = { units: 'inch', lathe: { ...bench, carriage } } as unknown as Request
  const refused = (...counts: number[]) => {
    const program = { ...newProgram({ file: 'job.yaml', path: [] }) }
    const moves: Move[] = counts.map((count) => move('move-carriage', 'carriage', count))
    return rangeRefusal(request, { ...program, moves })
  }

  it('follows to the end of its range and no further, counted from the one end of the way to the other', () => {
    expect(refused(0, 250)).toBeNull()
    expect(refused(-100, 150)).toBeNull()
    expect(refused(-100, 151)).toMatchObject({ ok: false, code: 'beyond-travel' })
    expect(refused(251)).toMatchObject({ ok: false, code: 'beyond-travel' })
  })

  it('is not asked about where the carriage has a dial, or its range is not given', () => {
    expect(rangeRefusal({ ...request, lathe: bench }, newProgram({ file: 'job.yaml', path: [] }))).toBeNull()
  })
})
