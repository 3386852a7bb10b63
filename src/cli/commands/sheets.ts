import { join } from 'node:path'
import { compile } from '../../compile.ts'
import { formatNamed, printerOf } from '../../print/registry.ts'
import { findJobs } from '../find-jobs.ts'
import { folderWriter, holds } from '../folder-writer.ts'
import { type Io, UsageError } from '../io.ts'
import { loaderFor } from '../load.ts'
import { guardInputs } from '../output.ts'
import { progressOn } from '../progress.ts'
import { reportDiagnostics } from '../report.ts'
import { namesFor } from '../safe-names.ts'
import { refusals, type SheetOptions, sheetOf } from './sheet.ts'

/**
 * Writes the sheet of every job named, and of every job in the folders named, into one folder. A job that cannot be read
 * has no file and does not stop the others; the status is the worst of them.
 */
export const sheetsCommand = async (
  paths: readonly string[],
  out: string,
  options: SheetOptions,
  io: Io,
): Promise<number> => {
  if (options.output !== undefined)
    throw new UsageError('give -o for one sheet or --out for a folder of them, not both')
  if (options.since !== undefined) throw new UsageError('--since is about one sheet: leave out --out')
  if (paths.includes('-')) throw new UsageError('--out names files by their jobs, and standard input has no name')
  const { jobs, missing } = findJobs(paths, io)
  for (const { path, why } of missing) io.stderr.write(`groovewright: cannot read ${JSON.stringify(path)}: ${why}\n`)
  if (jobs.length === 0) {
    io.stderr.write('groovewright: no job found: a job is a YAML file with "features:"\n')
    return 2
  }
  const files = namesFor(jobs, formatNamed(options.format).endings[0]!)
  if (options.force !== true) guardExisting(files, out, io)
  const statuses = await writeAll(jobs, files, out, options, io)
  return Math.max(missing.length > 0 ? 2 : 0, ...statuses)
}

/** Asked before any of them is written. */
const guardExisting = (files: readonly string[], out: string, io: Io): void => {
  const there = files.filter((file) => holds(out, file, io))
  if (there.length === 0) return
  const named = there.slice(0, 3).join(', ')
  throw new UsageError(
    `${JSON.stringify(out)} has ${named}${there.length > 3 ? `, and ${there.length - 3} more,` : ''} already; say --force to replace; nothing was written`,
  )
}

const writeAll = async (
  jobs: readonly string[],
  files: readonly string[],
  out: string,
  options: SheetOptions,
  io: Io,
): Promise<number[]> => {
  const print = await printerOf('sheet', options.format)
  const writer = folderWriter(out, options.force === true, io)
  const progress = progressOn(io, jobs.length)
  const statuses: number[] = []
  for (const [i, job] of jobs.entries()) {
    const { plan, diagnostics, sources } = compile(job, loaderFor(io, null))
    if (diagnostics.length > 0) progress.end()
    await reportDiagnostics(diagnostics, sources, options.color, io)
    if (plan === null) statuses.push(2)
    else {
      guardInputs(sources.keys(), { output: join(out, files[i]!) }, io)
      writer.write(files[i]!, print(await sheetOf(plan, options, io), options))
      statuses.push(await refusals(plan, sources, options, io))
    }
    progress.step()
  }
  progress.end()
  return statuses
}
