import { Chalk, type ChalkInstance } from 'chalk'
import type { Io, Sink } from './io.ts'

/** Flag, then NO_COLOR, then FORCE_COLOR, then TERM=dumb, then whether this very stream is a terminal. */
export const colored = (flag: boolean | undefined, env: Io['env'], sink: Sink): boolean => {
  if (flag !== undefined) return flag
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false
  const force = env.FORCE_COLOR
  if (force !== undefined && force !== '') return force !== '0' && force !== 'false'
  if (env.TERM === 'dumb') return false
  return sink.isTTY
}

export const chalkFor = (flag: boolean | undefined, env: Io['env'], sink: Sink): ChalkInstance =>
  new Chalk({ level: colored(flag, env, sink) ? 1 : 0 })
