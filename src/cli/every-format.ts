import type { ClassPrinters } from '../print/format.ts'
import { type ClassPrinted, classFormatsOf, classPrinterOf, formatNamed } from '../print/registry.ts'
import type { FolderWriter } from './folder-writer.ts'

/** Prints one thing in every format that has it, each to a file of that name with its own ending. */
export type PrintAll<P extends ClassPrinted> = (
  name: string,
  what: Parameters<ClassPrinters[P]>[0],
  files: FolderWriter,
) => void

export const inEveryFormat = async <P extends ClassPrinted>(what: P): Promise<PrintAll<P>> => {
  const printers = await Promise.all(
    classFormatsOf(what).map(async (format) => ({
      ending: formatNamed(format).endings[0]!,
      print: (await classPrinterOf(what, format)) as (data: Parameters<ClassPrinters[P]>[0]) => string,
    })),
  )
  return (name, data, files) => {
    for (const { ending, print } of printers) files.write(`${name}${ending}`, print(data))
  }
}
