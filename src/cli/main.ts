import { realIo } from './real-io.ts'
import { run } from './run.ts'

/**
 * The program on the real streams. The status is set without ending the process, so that what is still in a pipe is
 * written. Names are short in the built files: with DEBUG, a stack trace names files and lines of the source.
 */
export const main = async (host: NodeJS.Process): Promise<void> => {
  if (host.env.DEBUG !== undefined && host.env.DEBUG !== '') host.setSourceMapsEnabled(true)
  const status = await run(host.argv.slice(2), realIo(host))
  if (status !== 0 || host.exitCode === undefined) host.exitCode = status
}
