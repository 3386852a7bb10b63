import { csv } from './csv/format.ts'
import type { ClassPrinted, ClassPrinters, FormatFacts, Printed, Printers } from './format.ts'
import { html } from './html/format.ts'
import { json } from './json/format.ts'
import { junit } from './junit/format.ts'
import { markdown } from './markdown/format.ts'
import { sarif } from './sarif/format.ts'
import { svg } from './svg/format.ts'
import { text } from './text/format.ts'

export type { ClassPrinted, Parts, Printed, Printer } from './format.ts'

/**
 * Every format, in the order in which they are listed: a new one is a folder and an entry here. The command line and
 * its help follow.
 */
const SHEETS = { text, json, csv, svg, html, markdown } as const

/** Those that print no sheet, only the result of a check. */
const REPORTS = { junit, sarif } as const

const ALL = { ...SHEETS, ...REPORTS } as const

export type SheetFormat = keyof typeof SHEETS
export type Format = keyof typeof ALL

export const FORMATS = Object.keys(SHEETS) as readonly SheetFormat[]
const EVERY = Object.keys(ALL) as readonly Format[]

export const formatNamed = (format: Format): FormatFacts => ALL[format] as FormatFacts

export const formatsOf = (what: Printed): Format[] =>
  EVERY.filter((format) => formatNamed(format).prints.includes(what))

/** The formats that a command offers, whatever it prints. */
export const offeredFor = (what: Printed | ClassPrinted): Format[] =>
  what === 'worksheet' || what === 'key' || what === 'grades' || what === 'page'
    ? classFormatsOf(what)
    : formatsOf(what)

export const classFormatsOf = (what: ClassPrinted): Format[] =>
  EVERY.filter((format) => formatNamed(format).forClass?.prints.includes(what) === true)

export const classPrinterOf = async <P extends ClassPrinted>(what: P, format: Format): Promise<ClassPrinters[P]> => {
  const print = (await formatNamed(format).forClass?.load())?.[what]
  if (print === undefined) throw new Error(`${format} does not print ${what}: the command line should have refused it`)
  return print
}

/** What the ending of a file's name asks for; null where it says nothing. */
export const formatByEnding = (file: string): Format | null =>
  FORMATS.find((format) => formatNamed(format).endings.some((ending) => file.toLowerCase().endsWith(ending))) ?? null

export const printerOf = async <P extends Printed>(what: P, format: Format): Promise<Printers[P]> => {
  if (!formatsOf(what).includes(format))
    throw new Error(`${format} does not print ${what}: the command line should have refused it`)
  return (await formatNamed(format).load())[what]
}
