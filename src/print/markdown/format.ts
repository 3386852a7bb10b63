import { format } from '../format.ts'

/** For a wiki, a chat or a note book: CommonMark, with boxes to tick and tables. */
export const markdown = format({
  prints: ['sheet', 'finish'],
  load: async () => (await import('./printers.ts')).printers,
  endings: ['.md', '.markdown'],
})
