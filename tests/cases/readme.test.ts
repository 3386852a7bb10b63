import { statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { program, projectText, ROOT } from './program.ts'

vi.setConfig({ testTimeout: 60_000 })

const SHEET = /(<!-- sheet of (\S+) -->\n```text\n)([\s\S]*?)(```\n<!-- end of sheet -->)/

test('the sheet in the README is the one that the program prints', async () => {
  const job = SHEET.exec(projectText('README.md'))?.[2]
  expect(projectText('README.md')).toContain(`npm ci && node bin/groovewright.js sheet ${job}\n`)
  const { stdout, status } = await program('sheet', job!)
  expect(status).toBe(0)
  if (process.env.GROOVEWRIGHT_ACCEPT === '1')
    writeFileSync(
      join(ROOT, 'README.md'),
      projectText('README.md').replace(SHEET, (_, before, __, ___, after) => before + stdout + after),
    )
  expect(SHEET.exec(projectText('README.md'))?.[3]).toBe(stdout)
})

test.each(['job', 'lathe', 'toolbox'])('the README explains every key of a %s', async (kind) => {
  const readme = projectText('README.md')
  const keys = keysOf(JSON.parse((await program('schema', kind)).stdout))
  expect(keys.size).toBeGreaterThan(5)
  expect([...keys].filter((key) => !new RegExp(`\`[^\`]*\\b${key}\\b[^\`]*\``).test(readme))).toEqual([])
})

test('the links of README and DEVELOPERS lead to files of the project', () => {
  for (const page of ['README.md', 'DEVELOPERS.md'])
    for (const [, to] of projectText(page).matchAll(/\]\(([^)#]+)\)/g))
      expect(() => statOf(to!), `${page}: ${to}`).not.toThrow()
})

const statOf = (path: string) => statSync(join(ROOT, path))

/** Every name of a property in a JSON Schema. */
function keysOf(schema: unknown): Set<string> {
  if (Array.isArray(schema)) return new Set(schema.flatMap((one) => [...keysOf(one)]))
  if (typeof schema !== 'object' || schema === null) return new Set()
  return new Set(
    Object.entries(schema).flatMap(([key, value]) => [
      ...(key === 'properties' ? Object.keys(value) : []),
      ...keysOf(value),
    ]),
  )
}
