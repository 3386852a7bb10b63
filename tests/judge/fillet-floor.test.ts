import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'
import { FILES, jobPath } from './tried.ts'

test.each(['3/64', '1/16'])('fillets of %s are no part of the floor, that one pass takes flat', async (radius) => {
  const job = FILES[jobPath('rounds')]!.replace('corner-radius: 3/64', `corner-radius: ${radius}`)
  const files = { ...FILES, [jobPath('rounds')]: job }
  const { out } = await runIn({ files }, 'sheet', '--format', 'csv', jobPath('rounds'))
  const { out: json } = await runIn({ files }, 'sheet', '--format', 'json', jobPath('rounds'))
  const groove = JSON.parse(json).features.find(({ name }: { name: string }) => name === 'Fillet groove')
  expect(groove.finished.flatness).toMatchObject({ planned: 0, low: 0 })
  const replayed = await runIn({ files: { ...files, 'mine.csv': out } }, 'replay', jobPath('rounds'), 'mine.csv')
  expect(replayed.out).toMatch(/Fillet groove: proven[\s\S]*floor flat within +wanted \.000; cut \.000; holds/)
  expect(replayed.status).toBe(0)
})

test('a step in the floor between the fillets is still told', async () => {
  const { out } = await runIn({ files: FILES }, 'sheet', '--format', 'csv', jobPath('rounds'))
  const across = out.split('\n').find((row) => row.startsWith('Fillet groove,feed-across'))!
  const reading = Number(across.split(',')[3])
  // The pass along the floor stops .120 short: the rest of it stays as roughing left it.
  const short = out.replace(across, across.replace(String(reading), (reading - 0.12).toFixed(3)))
  const { out: told } = await runIn({ files: { ...FILES, 'm.csv': short } }, 'replay', jobPath('rounds'), 'm.csv')
  expect(told).toMatch(/floor flat within +wanted \.000; cut \.0[1-9]/)
})
