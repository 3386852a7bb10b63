import { format } from '../format.ts'

/** For a phone, a screen or paper. */
export const html = format({
  prints: ['sheet', 'finish'],
  load: async () => (await import('./printers.ts')).printers,
  forClass: {
    prints: ['worksheet', 'key', 'grades', 'page'],
    load: async () => (await import('./class.ts')).printers,
  },
  endings: ['.html', '.htm'],
  drawn: true,
})
