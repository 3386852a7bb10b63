import { format } from '../format.ts'

/** For spreadsheets, and as a list of moves that can be replayed. */
export const csv = format({
  prints: ['sheet'],
  load: async () => (await import('./printers.ts')).printers,
  forClass: {
    prints: ['worksheet', 'key', 'grades'],
    load: async () => (await import('./class.ts')).printers,
  },
  movesAlone: 'a table of moves',
  endings: ['.csv'],
})
