import { printHtml } from './print.ts'

export const printers = { sheet: printHtml, finish: printHtml }
