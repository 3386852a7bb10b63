import type { Load } from '../job/read-job.ts'
import { sortOfFile } from '../written/sort.ts'
import { STDIN } from './load.ts'

/** A list of moves given in place of the job, or a job in place of the moves; null if neither is the case. */
export function mistakenFiles(job: string, moves: string, load: Load): string | null {
  const isMoves = sortOf(job, load) === 'moves'
  const isJob = sortOf(moves, load) === 'job'
  if (isMoves && isJob)
    return `job and moves are the wrong way around, the job comes first: groovewright replay ${moves} ${job}`
  const [one, other] = [JSON.stringify(job), JSON.stringify(moves)]
  if (isMoves) return `${one} is a list of moves, and a job belongs there: groovewright replay JOB ${moves}`
  if (isJob)
    return `${other} is a job, and a list of moves belongs there: groovewright sheet ${moves} --format csv prints one to start from`
  return null
}

const sortOf = (path: string, load: Load): 'moves' | 'job' | null => {
  const read = load(path === '-' ? STDIN : path, null)
  return read.ok ? sortOfFile(read.bytes, read.file) : null
}
