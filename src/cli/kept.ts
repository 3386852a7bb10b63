import { toData } from '../print/json/print.ts'
import { type Data, isData } from '../sheet/changed/data.ts'
import type { Sheet } from '../sheet/sheet.ts'
import { codeOf, type Io, reasonOf } from './io.ts'

export type Kept =
  | { readonly ok: true; readonly data: Data }
  | { readonly ok: false; readonly missing: boolean; readonly why: string }

/** Some ten times the longest sheet that is printed. */
const MOST_KEPT_BYTES = 32 * 1024 * 1024

/**
 * A sheet that was kept: a file as `sheet --format json` wrote it, with or without the parts that are added on request.
 */
export const readKept = (file: string, io: Io): Kept => {
  let text: string
  try {
    const bytes = io.readFile(file, { most: MOST_KEPT_BYTES, pipe: true })
    if (bytes.length > MOST_KEPT_BYTES) return { ok: false, missing: false, why: `${file} is larger than any sheet` }
    text = new TextDecoder().decode(bytes)
  } catch (error) {
    return { ok: false, missing: codeOf(error) === 'ENOENT', why: `cannot read ${file}: ${reasonOf(error)}` }
  }
  const data = parsed(text)
  if (data !== null) return { ok: true, data }
  return { ok: false, missing: false, why: `${file} is no sheet: it should be what sheet --format json prints` }
}

/** Through text and back, so that what a file cannot hold (undefined, -0) is no difference. */
export const dataOf = (sheet: Sheet): Data => JSON.parse(JSON.stringify(toData(sheet))) as Data

const parsed = (text: string): Data | null => {
  try {
    const data: unknown = JSON.parse(text)
    return isData(data) && Array.isArray(data.steps) ? data : null
  } catch {
    return null
  }
}
