import { csv } from './csv/format.ts'
import type { FormatPrinters, Printer } from './format.ts'
import { html } from './html/format.ts'
import { json } from './json/format.ts'
import { svg } from './svg/format.ts'
import { text } from './text/format.ts'

export type { Parts, Printer } from './format.ts'

/**
 * Every format, in the order in which they are listed: a new one is a folder and an entry here. The command line and
 * its help follow.
 */
const ALL = { text, json, csv, svg, html } as const satisfies Readonly<Record<string, FormatPrinters>>

export type Format = keyof typeof ALL
/**
 * What a command prints: the sheet, what remains of a feature, how tools are ground, or the result of checked jobs or
 * of a list of moves.
 */
export type Printed = 'sheet' | 'finish' | 'grind' | 'check' | 'replay'

export const FORMATS = Object.keys(ALL) as readonly Format[]

export const formatNamed = (format: Format): FormatPrinters => ALL[format]

export const formatsOf = (what: Printed): Format[] =>
  FORMATS.filter((format) => formatNamed(format)[what] !== undefined)

/** What the ending of a file's name asks for; null where it says nothing. */
export const formatByEnding = (file: string): Format | null =>
  FORMATS.find((format) => formatNamed(format).endings.some((ending) => file.toLowerCase().endsWith(ending))) ?? null

export const printerOf = <P extends Printed>(what: P, format: Format): NonNullable<FormatPrinters[P]> => {
  const print = formatNamed(format)[what]
  if (print === undefined) throw new Error(`${format} does not print ${what}: the command line should have refused it`)
  return print
}

/** The printer of a whole sheet for each of them. */
export const PRINTERS = Object.fromEntries(FORMATS.map((format) => [format, ALL[format].sheet])) as Readonly<
  Record<Format, Printer>
>
