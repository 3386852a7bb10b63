import type { FormatFacts } from '../format.ts'

/** For the view of tests of a build server: a suite for each job, a case for each feature. */
export const junit: FormatFacts<'check'> = {
  prints: ['check'],
  load: async () => (await import('./printers.ts')).printers,
  endings: [],
  namesSkipped: true,
}
