import { spawnSync } from 'node:child_process'
import { basename } from 'node:path'
import { elapsed, median } from './measure.mjs'
import { BIN, ROOT } from './places.mjs'

/** Each command in turn beside a bare start, now behind it and now before it: whatever slows the machine down slows both of a pair. */
export const startUp = (jobs, pairs) => {
  const commands = [
    { name: 'groovewright --version', args: ['--version'] },
    ...jobs.map((job) => ({ name: `groovewright sheet ${basename(job, '.yaml')}`, args: ['sheet', job] })),
  ]
  const ratios = commands.map(() => [])
  // The first of all only brings the files into memory.
  for (let pair = -1; pair < pairs; pair++)
    for (const [i, { args }] of commands.entries()) {
      const ours = () => elapsed(() => launch([BIN, ...args]))
      const bare = () => elapsed(() => launch(['-e', '0']))
      const [first, second] = pair % 2 === 0 ? [bare(), ours()] : [ours(), bare()]
      if (pair >= 0) ratios[i].push(pair % 2 === 0 ? second / first : first / second)
    }
  return commands.map(({ name }, i) => ({ name, value: median(ratios[i]) }))
}

const launch = (args) => {
  const { status, stderr } = spawnSync(process.execPath, args, { cwd: ROOT, encoding: 'utf8' })
  if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}: ${stderr}`)
}
