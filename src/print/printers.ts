import { FORMATS, type Printer, printerOf, type SheetFormat } from './registry.ts'

const loaded = await Promise.all(FORMATS.map(async (format) => [format, await printerOf('sheet', format)] as const))

/** The printer of a whole sheet for each format, all of them loaded: for the library, which prints at once. */
export const PRINTERS = Object.fromEntries(loaded) as Readonly<Record<SheetFormat, Printer>>
