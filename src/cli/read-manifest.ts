import type { Manifest } from '../exercise/manifest.ts'
import { type Io, reasonOf, UsageError } from './io.ts'

/** Some tens of thousands of sheets. */
const MOST_MANIFEST_BYTES = 512 * 1024 * 1024

/** The manifest of a set, as handout wrote it. */
export const readManifest = (path: string, io: Io): Manifest => {
  let text: string
  try {
    text = new TextDecoder().decode(io.readFile(path, { most: MOST_MANIFEST_BYTES, pipe: true }))
  } catch (error) {
    throw new UsageError(`cannot read ${path}: ${reasonOf(error)}`)
  }
  const data = parsed(text)
  if (isManifest(data)) return data
  throw new UsageError(`${path} is no manifest: give the manifest.json that groovewright handout wrote`)
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

const isManifest = (data: unknown): data is Manifest => {
  if (typeof data !== 'object' || data === null || !('manifest' in data) || data.manifest !== 1) return false
  if (!('learners' in data) || !Array.isArray(data.learners)) return false
  return (data.learners as unknown[]).every(
    (one) => typeof one === 'object' && one !== null && 'blanks' in one && Array.isArray(one.blanks) && 'shop' in one,
  )
}
