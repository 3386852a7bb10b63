import { join } from 'node:path'
import { suggest } from '../diagnostics/suggest.ts'
import { readSource } from '../source/read-source.ts'
import { MOST_BYTES } from '../source/text.ts'
import type { Io } from './io.ts'
import { codeOf, reasonOf } from './io.ts'

export type Found = {
  readonly jobs: readonly string[]
  /** YAML files of a folder that are not jobs: lathes, toolboxes, anything else. */
  readonly skipped: readonly string[]
  readonly missing: readonly { readonly path: string; readonly why: string }[]
}

/**
 * A file given by name is a job, whatever is in it; in a folder, and in the folders below it, a job is a YAML mapping
 * with `features` or a key like it.
 */
export const findJobs = (paths: readonly string[], io: Io): Found => {
  const jobs: string[] = []
  const skipped: string[] = []
  const missing: { path: string; why: string }[] = []
  for (const path of new Set(paths)) {
    try {
      const files = path === '-' ? null : filesIn(path, io)
      if (files === null) jobs.push(path)
      else for (const file of files) (isJob(file, io) ? jobs : skipped).push(file)
    } catch (error) {
      missing.push({ path, why: reasonOf(error) })
    }
  }
  return { jobs: [...new Set(jobs)], skipped: [...new Set(skipped)], missing }
}

const filesIn = (path: string, io: Io): string[] | null => {
  const entries = io.readDir(path)
  if (entries === null) return null
  // By code point, so that the order is the same on every machine.
  const sorted = [...entries].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  return sorted.flatMap(({ name, folder }) => {
    if (name.startsWith('.') || name === 'node_modules') return []
    if (folder) return filesIn(join(path, name), io) ?? []
    return /\.ya?ml$/i.test(name) ? [join(path, name)] : []
  })
}

/**
 * A file that is broken or locked may be a job: it is checked, and its problems are reported. The same applies to a
 * file with the keys of a job, however its `features` is spelled, and even without it.
 */
const isJob = (file: string, io: Io): boolean => {
  const data = dataOf(file, io)
  if (data === undefined) return true
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return false
  if ('features' in data) return true
  const tool = (value: unknown): boolean => typeof value === 'object' && value !== null && 'shape' in value
  if ('moves' in data || 'cross-feed' in data || Object.values(data).some(tool)) return false
  const near = Object.keys(data).filter((key) =>
    JOB_KEYS.some((known) => known === key || suggest(key, [known]) !== null),
  )
  return near.length >= 3 || suggest('features', Object.keys(data)) !== null
}

/** Three of these make a job: no other file of a workshop has so many. */
const JOB_KEYS = ['title', 'units', 'part', 'lathe', 'tools', 'features', 'cutting', 'drawing-number']

const dataOf = (file: string, io: Io): unknown => {
  try {
    return readSource(io.readFile(file, { most: MOST_BYTES, pipe: false }), file).data
  } catch (error) {
    if (codeOf(error) === null) throw error
    return undefined
  }
}
