import { join } from 'node:path'
import { type Io, reasonOf } from './io.ts'

export type AnswerFiles = {
  readonly paths: readonly string[]
  readonly missing: readonly { readonly path: string; readonly why: string }[]
}

/** Files by name; of a folder, and of those below it, the YAML and CSV files, but not the key. */
export const answerFiles = (given: readonly string[], io: Io): AnswerFiles => {
  const paths: string[] = []
  const missing: { path: string; why: string }[] = []
  for (const path of given) {
    try {
      paths.push(...(inFolder(path, io) ?? [path]))
    } catch (error) {
      missing.push({ path, why: reasonOf(error) })
    }
  }
  return { paths: [...new Set(paths)], missing }
}

const inFolder = (path: string, io: Io): string[] | null => {
  const entries = io.readDir(path)
  if (entries === null) return null
  const sorted = [...entries].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  return sorted.flatMap(({ name, folder }) => {
    if (name.startsWith('.')) return []
    if (folder) return inFolder(join(path, name), io) ?? []
    return /\.(ya?ml|csv)$/i.test(name) && !/^(key|grades)\./.test(name) ? [join(path, name)] : []
  })
}
