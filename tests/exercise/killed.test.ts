import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { EXERCISE, FILES, JOB } from './class.ts'

/** The real program on the real disk, ended in the middle of its work by what cannot be caught. */
const folder = mkdtempSync(join(tmpdir(), 'groovewright-set-'))
afterAll(() => rmSync(folder, { recursive: true }))

const ENDS: Readonly<Record<string, RegExp>> = {
  '.html': /<\/html>\n$/,
  '.svg': /<\/svg>\n$/,
  '.json': /\}\n$/,
  '.txt': /pass \/ fail _+\n$/,
  '.csv': /\n$/,
  '.yaml': /value: ""\n$/,
}

it('leaves whole files, and no manifest, where it is killed', async () => {
  writeFileSync(join(folder, 'job.yaml'), JOB)
  writeFileSync(join(folder, 'bench.yaml'), FILES['bench.yaml'])
  writeFileSync(join(folder, 'exercise.yaml'), EXERCISE.replace('sheets: 3', 'sheets: 500'))
  const running = spawn('node', [resolve('bin/groovewright.js'), 'handout', 'exercise.yaml', '--out', 'set'], {
    cwd: folder,
  })
  const ended = new Promise((done) => running.on('exit', done))
  while (!existsSync(join(folder, 'set', '004.txt'))) await new Promise((go) => setTimeout(go, 20))
  running.kill('SIGKILL')
  await ended
  const names = readdirSync(join(folder, 'set'), { recursive: true, encoding: 'utf8' }).filter((name) =>
    /(^|[\\/])[^.\\/][^\\/]*\.\w+$/.test(name),
  )
  expect(names.length).toBeGreaterThan(10)
  expect(names).not.toContain('manifest.json')
  for (const name of names)
    expect([name, readFileSync(join(folder, 'set', name), 'utf8')]).toEqual([
      name,
      expect.stringMatching(ENDS[/\.\w+$/.exec(name)![0]]!),
    ])
}, 60_000)
