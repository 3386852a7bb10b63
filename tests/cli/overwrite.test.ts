import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { realIo } from '../../src/cli/real-io.ts'
import { run } from '../../src/cli/run.ts'
import { starter } from '../../src/cli/starters.ts'

describe('a sheet written over the job it came from', () => {
  it('is refused even with --force, and the job is left as it was', async () => {
    const job = join(mkdtempSync(join(tmpdir(), 'groovewright-')), 'job.yaml')
    writeFileSync(job, starter('job'))
    const said: string[] = []
    const io = { ...realIo(process), stderr: { isTTY: false, write: (text: string) => void said.push(text) } }
    expect(await run(['sheet', job, '-o', job, '--force'], io)).toBe(2)
    expect(said.join('')).toContain('is a file that this was read from')
    expect(readFileSync(job, 'utf8')).toBe(starter('job'))
  })
})
