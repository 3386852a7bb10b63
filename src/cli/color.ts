import type { Io, Sink } from './io.ts'

/** Text as shown on a terminal. */
export type Paint = Readonly<Record<'red' | 'yellow' | 'green', (text: string) => string>>

/** Flag, then NO_COLOR, then FORCE_COLOR, then TERM=dumb, then whether this stream is a terminal. */
const colored = (flag: boolean | undefined, env: Io['env'], sink: Sink): boolean => {
  if (flag !== undefined) return flag
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false
  const force = env.FORCE_COLOR
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false'
  if (env.TERM === 'dumb') return false
  return sink.isTTY
}

const CODES = { red: 31, yellow: 33, green: 32 } as const
const DEFAULT = 39

export const paintFor = (flag: boolean | undefined, env: Io['env'], sink: Sink): Paint => {
  const on = colored(flag, env, sink)
  const code = (number: number): string => (sink.control ?? unchanged)(`\u001b[${number}m`)
  const paint = (color: keyof typeof CODES) =>
    on ? (text: string) => `${code(CODES[color])}${text}${code(DEFAULT)}` : unchanged
  return { red: paint('red'), yellow: paint('yellow'), green: paint('green') }
}

const unchanged = (text: string): string => text
