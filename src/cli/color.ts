import type { Io, Sink } from './io.ts'

/** Text as shown on a terminal. */
export type Paint = Readonly<Record<'red' | 'yellow' | 'green', (text: string) => string>>

/** Flag, then NO_COLOR, then FORCE_COLOR, then TERM=dumb, then whether this stream is a terminal. */
export const colored = (flag: boolean | undefined, env: Io['env'], sink: Sink): boolean => {
  if (flag !== undefined) return flag
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false
  const force = env.FORCE_COLOR
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false'
  if (env.TERM === 'dumb') return false
  return sink.isTTY
}

/**
 * The library looks for a terminal as soon as it is loaded, which takes time: it is not loaded if nothing is colored.
 */
export const paintFor = async (flag: boolean | undefined, env: Io['env'], sink: Sink): Promise<Paint> => {
  if (!colored(flag, env, sink)) return { red: unchanged, yellow: unchanged, green: unchanged }
  const { Chalk } = await import('chalk')
  return new Chalk({ level: 1 })
}

const unchanged = (text: string): string => text
