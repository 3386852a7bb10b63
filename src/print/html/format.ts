import { format } from '../format.ts'

/** For a phone, a screen or paper. */
export const html = format({
  prints: ['sheet'],
  load: async () => (await import('./printers.ts')).printers,
  endings: ['.html', '.htm'],
  drawn: true,
})
