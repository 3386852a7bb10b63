import type { FormatFacts } from '../format.ts'

/** For the view of findings of a build server: every problem at its line. */
export const sarif: FormatFacts<'check'> = {
  prints: ['check'],
  load: async () => (await import('./printers.ts')).printers,
  endings: [],
  namesSkipped: true,
}
