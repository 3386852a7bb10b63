import { hashed, spelled } from '../plan/identity.ts'

/** A short name for one sheet of one set, on its answer form: made only from what the learner is given, so that it tells no answer. */
export const setName = (set: {
  readonly title: string
  readonly seed: string
  readonly sheet: string
  readonly job: string
}): string => spelled(hashed(JSON.stringify([set.title, set.seed, set.sheet, set.job])))
