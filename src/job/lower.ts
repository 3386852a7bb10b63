import type { Bench } from '../features/draft.ts'
import { placeSteps } from '../features/place.ts'
import { instrumentsOf } from '../lathe/instruments.ts'
import type { Setup } from '../moves/operation.ts'
import { linePiece } from '../moves/pieces.ts'
import type { Job } from './job.ts'

/** The part on the bench: its steps with their places, and the tools. */
export const benchOf = (job: Job): Bench => ({
  carriageByEye: job.lathe.carriage === null,
  instruments: instrumentsOf(job.lathe),
  units: job.units,
  work: job.work,
  part: job.part,
  steps: placeSteps(job.part.steps),
  tools: job.tools,
})

/** The part in the machine: what the replay may cut and the obstacles. d = −radius of the measured stock. */
export function setupOf(bench: Bench): Setup {
  const centers = bench.part.held === 'between centers'
  const length = bench.steps.at(-1)?.end ?? 0
  const { dog, overhang, held } = bench.part
  const beforeDog = dog === null ? null : length - dog
  return {
    stock: bench.steps.map((step) => linePiece(step.start, -step.measured / 2, step.end, -step.measured / 2)),
    // On a mandrel the dog is behind the work, and both centers are in the mandrel.
    jaws: held === 'mandrel' ? null : centers ? beforeDog : overhang,
    tailstockCenter: centers || bench.part.held === 'chuck and center',
  }
}
