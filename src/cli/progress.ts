import type { Io } from './io.ts'

/** How many are done, on one line of a terminal; nothing where nobody looks. */
export const progressOn = (io: Io, all: number) => {
  let done = 0
  const control = (sequence: string): string => io.stderr.control?.(sequence) ?? sequence
  return {
    step: (): void => {
      done++
      if (io.stderr.isTTY) io.stderr.write(`${control('\r')}${done} of ${all}`)
    },
    end: (): void => {
      if (io.stderr.isTTY && done > 0) io.stderr.write(control('\r\u001b[K'))
    },
  }
}
