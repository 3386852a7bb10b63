import { escaped } from '../diagnostics/escaped.ts'
import type { Io, Sink } from './io.ts'

/**
 * Whatever leaves for a terminal or a file leaves here: nothing but our own controls (a color, an erased line) moves a
 * cursor or hides a text. Those are marked by what no file can have in its name, because it is another in every run.
 */
export const withDoor = (io: Io): Io => {
  const mark = `\u0000${Math.random().toString(36).slice(2)}\u0000`
  const through = (text: string): string =>
    text
      .split(mark)
      .map((part, i) => (i % 2 === 0 ? escaped(part) : part))
      .join('')
  const behind = (sink: Sink): Sink => ({
    get isTTY() {
      return sink.isTTY
    },
    get closed() {
      return sink.closed === true
    },
    write: (text) => sink.write(through(text)),
    control: (sequence) => `${mark}${sequence}${mark}`,
  })
  return {
    ...io,
    stdout: behind(io.stdout),
    stderr: behind(io.stderr),
    writeFile: (path, text, force) => io.writeFile(path, through(text), force),
  }
}
