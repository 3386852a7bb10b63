import { format } from '../format.ts'

/** For people. */
export const text = format({
  prints: ['sheet', 'finish', 'grind', 'check', 'replay'],
  load: async () => (await import('./printers.ts')).printers,
  endings: ['.txt'],
})
