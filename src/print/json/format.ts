import { format } from '../format.ts'

/** For programs. */
export const json = format({
  prints: ['sheet', 'finish', 'grind', 'check', 'replay'],
  load: async () => (await import('./printers.ts')).printers,
  forClass: {
    prints: ['worksheet', 'key', 'grades'],
    load: async () => (await import('./class.ts')).printers,
  },
  endings: ['.json'],
  namesSkipped: true,
})
