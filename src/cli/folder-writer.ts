import { dirname, join } from 'node:path'
import { codeOf, type Io, reasonOf, UsageError } from './io.ts'

/** `last`: the file that says that all others are there; it is on the disk when it has its name. */
export type FolderWriter = { readonly write: (name: string, text: string, last?: boolean) => void }

/** Writes files into a folder that is made if it is not there; each whole or not at all. */
export const folderWriter = (folder: string, force: boolean, io: Io): FolderWriter => {
  const made = new Set<string>()
  const doing = (path: string, what: () => void): void => {
    try {
      what()
    } catch (error) {
      throw new UsageError(`cannot write ${JSON.stringify(path)}: ${reasonOf(error)}`)
    }
  }
  return {
    write: (name, text, last = false) => {
      const path = join(folder, name)
      const parent = dirname(path)
      if (!made.has(parent)) doing(parent, () => io.makeFolder(parent))
      made.add(parent)
      doing(path, () => io.writeFile(path, text, force, { ofMany: !last }))
    },
  }
}

/** Whether a folder has a file of that name; false where there is no such folder. */
export const holds = (folder: string, file: string, io: Io): boolean => {
  try {
    return (io.readDir(folder) ?? []).some(({ name }) => name === file)
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false
    throw new UsageError(`cannot write to ${JSON.stringify(folder)}: ${reasonOf(error)}`)
  }
}
