import { format } from '../format.ts'

/** For programs. */
export const json = format({
  prints: ['sheet', 'finish', 'grind', 'check', 'replay'],
  load: async () => (await import('./printers.ts')).printers,
  endings: ['.json'],
  namesSkipped: true,
})
