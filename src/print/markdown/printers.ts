import { printMarkdown } from './print.ts'

export const printers = { sheet: printMarkdown, finish: printMarkdown }
