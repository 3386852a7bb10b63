import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import { golden, program, projectText, ROOT, yamlNames } from './program.ts'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })
const names = yamlNames('examples/broken')

test('there are at least a dozen mistakes, and their goldens are no more and no fewer', () => {
  expect(names.length).toBeGreaterThanOrEqual(12)
  const kept = readdirSync(join(ROOT, 'examples/broken'))
    .filter((name) => !name.endsWith('.yaml'))
    .sort()
  expect(kept).toEqual(names.map((name) => `${name}.expected.txt`))
})

describe.each(names)('%s', (name) => {
  const path = `examples/broken/${name}.yaml`

  test('is told as it was before: standard output, standard error and exit status', async () => {
    const { status, stdout, stderr } = await program('sheet', path)
    const told = [
      `$ groovewright sheet ${path}`,
      ...section('standard output', stdout),
      ...section('standard error', stderr),
      `exit status ${status}`,
      '',
    ].join('\n')
    expect(told).toBe(golden(`examples/broken/${name}.expected.txt`, told))
  })

  test('points at the place with a remedy, or refuses the feature with one; nothing proven is lost', async () => {
    const { status, stdout, stderr } = await program('sheet', path)
    const json = await program('sheet', '--format', 'json', path)
    expect(json.status).toBe(status)
    if (status === 2) {
      expect(stdout + json.stdout).toBe('')
      const places = [...stderr.matchAll(/^(\S+):(\d+):(\d+): error: /gm)]
      expect(places.length).toBeGreaterThan(0)
      expect(stderr.match(/^ {2}remedy: /gm)).toHaveLength(places.length)
      for (const [, file, line, column] of places) {
        expect(file).toBe(path)
        expect(projectText(path).split('\n')[Number(line) - 1]!.length).toBeGreaterThanOrEqual(Number(column))
      }
      return
    }
    expect(status).toBe(1)
    const { features, steps } = JSON.parse(json.stdout)
    const refused = features.filter((one: { status: string }) => one.status === 'refused')
    expect(refused.length).toBeGreaterThan(0)
    expect(stdout.match(/^REFUSED /gm)).toHaveLength(refused.length)
    for (const one of refused) {
      expect(one.refusal.reason.length * one.refusal.remedy.length).toBeGreaterThan(0)
      expect(steps.filter((step: { feature: number }) => step.feature === features.indexOf(one))).toEqual([])
      expect(stderr).toContain(one.refusal.reason)
    }
    const planned = features.filter((one: { status: string }) => one.status === 'planned')
    expect(new Set(steps.map((step: { feature: number }) => step.feature)).size).toBe(planned.length)
  })
})

const section = (name: string, text: string): string[] => [
  `-- ${name} --`,
  ...(text === '' ? [] : [text.replace(/\n$/, '')]),
]
