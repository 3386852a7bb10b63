import { format } from '../format.ts'

/** For people. */
export const text = format({
  prints: ['sheet', 'finish', 'grind', 'check', 'replay'],
  load: async () => (await import('./printers.ts')).printers,
  forClass: {
    prints: ['worksheet', 'key', 'grades', 'page'],
    load: async () => (await import('./class.ts')).printers,
  },
  endings: ['.txt'],
  inLines: true,
})
