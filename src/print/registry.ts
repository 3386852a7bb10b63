import type { Sheet } from '../sheet/sheet.ts'
import { printCsv } from './csv/print.ts'
import { printJson } from './json/print.ts'
import { printText } from './text/print.ts'

/** A format is a function from the neutral sheet to the bytes of a file. */
export type Printer = (sheet: Sheet, parts?: Parts) => string

/** What is printed only on request. */
export type Parts = { readonly inspection?: boolean }

export const FORMATS = ['text', 'json', 'csv'] as const
export type Format = (typeof FORMATS)[number]

export const PRINTERS: Readonly<Record<Format, Printer>> = { text: printText, json: printJson, csv: printCsv }
