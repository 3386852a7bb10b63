import type { Io } from './io.ts'

/** How many are done, on one line of a terminal; nothing where nobody looks. Between two, a signal is heard. */
export const progressOn = (io: Io, all: number) => {
  let done = 0
  const control = (sequence: string): string => io.stderr.control?.(sequence) ?? sequence
  return {
    step: async (): Promise<void> => {
      done++
      if (io.stderr.isTTY) io.stderr.write(`${control('\r')}${done} of ${all}`)
      // Signals wait while a file is written; twice, because they are handed on in the turn after the next.
      for (let turn = 0; turn < 3; turn++) await new Promise((go) => setImmediate(go))
    },
    end: (): void => {
      if (io.stderr.isTTY && done > 0) io.stderr.write(control('\r\u001b[K'))
    },
  }
}
