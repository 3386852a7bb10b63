import type { Manifest } from '../exercise/manifest.ts'
import { type Io, UsageError } from './io.ts'
import { readJson } from './read-json.ts'

/** Some tens of thousands of sheets. */
const MOST_MANIFEST_BYTES = 512 * 1024 * 1024

/** The manifest of a set, as handout wrote it. */
export const readManifest = (path: string, io: Io): Manifest => {
  const read = readJson(path, MOST_MANIFEST_BYTES, io)
  if (!read.ok) throw new UsageError(read.why)
  if (isManifest(read.data)) return read.data
  throw new UsageError(`${path} is no manifest: give the manifest.json that groovewright handout wrote`)
}

const isManifest = (data: unknown): data is Manifest => {
  if (typeof data !== 'object' || data === null || !('manifest' in data) || data.manifest !== 1) return false
  if (!('learners' in data) || !Array.isArray(data.learners)) return false
  return (data.learners as unknown[]).every(
    (one) => typeof one === 'object' && one !== null && 'blanks' in one && Array.isArray(one.blanks) && 'shop' in one,
  )
}
