import { format } from '../format.ts'

/** The drawings alone. */
export const svg = format({
  prints: ['sheet'],
  load: async () => (await import('./printers.ts')).printers,
  endings: ['.svg'],
  drawn: true,
  movesAlone: 'the drawings alone',
})
