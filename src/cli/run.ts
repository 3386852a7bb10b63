import { withDoor } from './door.ts'
import type { Io } from './io.ts'
import { VERSION_LINE } from './version.ts'

/** The same, keeping the names of the files that are read, and the folders of --root. */
const withInputs = (io: Io): Io => {
  const inputs = new Set<string>()
  const roots: string[] = []
  return {
    ...io,
    inputs,
    roots,
    readFile: (path, limits) => {
      inputs.add(path)
      return io.readFile(path, limits)
    },
  }
}

/**
 * The whole program: arguments in, exit status out. 0 done, 1 cannot be cut as asked, 2 input or command wrong, 70 an
 * error of the program. The version is printed here, because reading a command line takes longer than printing it.
 */
export const run = async (args: readonly string[], io: Io): Promise<number> => {
  const [first, ...rest] = args
  if (rest.length === 0 && (first === '--version' || first === '-V')) {
    io.stdout.write(`${VERSION_LINE}\n`)
    return 0
  }
  const { runCommand } = await import('./command-line.ts')
  return runCommand(args, withInputs(withDoor(io)))
}
