import { dirname, resolve, sep } from 'node:path'
import type { Io } from './io.ts'

/** Where includes may come from: folders with all that is below them. Real paths: a link leads where it leads. */
export const isBelow = (file: string, folders: readonly string[], io: Io): boolean => {
  const path = real(file, io)
  return folders.some((folder) => {
    const root = real(folder, io)
    return path === root || path.startsWith(root.endsWith(sep) ? root : `${root}${sep}`)
  })
}

/**
 * For a job: the folder above its own (jobs/ beside lathes/), and the folder that the program is run in. Above a home or
 * directly below the root is everybody's: there it is only the job's own folder.
 */
export const usualRoots = (folder: string, io: Io): readonly string[] => {
  const own = real(folder, io)
  const above = dirname(own)
  const shared = dirname(above) === above || own === io.env.HOME
  return [shared ? own : above, '.']
}

/** Of what is not there, as it would be. */
const real = (path: string, io: Io): string => {
  try {
    return io.realPath(path)
  } catch {
    return resolve(path)
  }
}
