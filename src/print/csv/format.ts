import { format } from '../format.ts'

/** For spreadsheets, and as a list of moves that can be replayed. */
export const csv = format({
  prints: ['sheet'],
  load: async () => (await import('./printers.ts')).printers,
  movesAlone: 'a table of moves',
  endings: ['.csv'],
})
