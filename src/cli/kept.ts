import { toData } from '../print/json/print.ts'
import { type Data, isData } from '../sheet/changed/data.ts'
import type { Sheet } from '../sheet/sheet.ts'
import type { Io } from './io.ts'
import { readJson } from './read-json.ts'

export type Kept =
  | { readonly ok: true; readonly data: Data }
  | { readonly ok: false; readonly missing: boolean; readonly why: string }

/** Some ten times the longest sheet that is printed. */
const MOST_KEPT_BYTES = 32 * 1024 * 1024

/**
 * A sheet that was kept: a file as `sheet --format json` wrote it, with or without the parts that are added on request.
 */
export const readKept = (file: string, io: Io): Kept => {
  const read = readJson(file, MOST_KEPT_BYTES, io)
  if (!read.ok) return read
  const { data } = read
  return isData(data) && Array.isArray(data.steps)
    ? { ok: true, data }
    : { ok: false, missing: false, why: `${file} is no sheet: it should be what sheet --format json prints` }
}

/** Through text and back, so that what a file cannot hold (undefined, -0) is no difference. */
export const dataOf = (sheet: Sheet): Data => JSON.parse(JSON.stringify(toData(sheet))) as Data
