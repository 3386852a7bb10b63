import { format } from '../format.ts'

/** The drawings alone. */
export const svg = format({
  prints: ['sheet', 'finish'],
  load: async () => (await import('./printers.ts')).printers,
  forClass: {
    prints: ['worksheet'],
    load: async () => (await import('./class.ts')).printers,
  },
  endings: ['.svg'],
  drawn: true,
  movesAlone: 'the drawings alone',
})
