import { expect, test } from 'vitest'
import { keysFor } from '../../src/cli/commands/keys.ts'
import { ASKS } from '../../src/exercise/asks/registry.ts'
import { CAUSES } from '../../src/grading/causes/registry.ts'
import type { Key } from '../../src/job/keys.ts'
import { keysInTables, withTables } from './key-tables.ts'
import { golden, program, projectText } from './program.ts'

const PAGE = 'examples/README.md'

test('the tables of keys are what the schemas say', () => {
  const page = withTables(projectText(PAGE))
  expect(golden(PAGE, page)).toBe(page)
})

const between = (page: string, name: string, lines: string): string =>
  page.replace(new RegExp(`(<!-- ${name} -->\\n)[\\s\\S]*?(<!-- end of )`), (_, begin, end) => begin + lines + end)

test('the words of an exercise, and the causes of a wrong answer, are those that the program has', () => {
  const row = (code: string, says: string): string => `| \`${code}\` | ${says} |\n`
  const head = (one: string, other: string): string => `| ${one} | ${other} |\n| --- | --- |\n`
  const words = Object.entries(ASKS).map(([word, { says }]) => row(word, says))
  const causes = CAUSES.map(({ code, says }) => row(code, says))
  const page = between(
    between(projectText(PAGE), 'words of hide', `${head('hide', 'the learner fills in')}${words.join('')}`),
    'causes',
    `${head('cause', 'what was done')}${causes.join('')}`,
  )
  expect(words.length + causes.length).toBeGreaterThan(30)
  expect(golden(PAGE, page)).toBe(page)
})

const told = ({ paths, only }: Key): string => `${paths[0]} (${only.join(', ')})`

test.each([
  ['job', ({ paths }: Key) => !/^(lathe|tools)\./.test(paths[0]!)],
  ['lathe', () => true],
  ['toolbox', () => true],
  ['exercise', () => true],
] as const)('every key of a %s stands in one table', (name, ownTable) => {
  const keys = keysFor(name).filter(ownTable).map(told)
  expect(keys.length).toBeGreaterThan(name === 'exercise' ? 9 : 20)
  expect(keysInTables(projectText(PAGE), name).map(told).sort()).toEqual(keys.sort())
})

test('every key of a list of moves is explained, and every action', async () => {
  const { moves } = JSON.parse((await program('schema', 'moves')).stdout).properties
  const { properties } = moves.items
  const words = [...Object.keys(properties), ...properties.action.enum, ...properties.slide.enum]
  expect(words.length).toBeGreaterThan(25)
  const section = projectText(PAGE).split('\n## Moves of your own\n')[1]!.split('\n## ')[0]!
  expect(words.filter((word) => !section.includes(`\`${word}\``))).toEqual([])
})
