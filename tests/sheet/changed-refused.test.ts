import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'
import { FILES, jobPath } from '../judge/tried.ts'

const JOB = jobPath('neck')
const wide = FILES[JOB]!.replace('width: 0.0935', 'width: 0.150')
const sheet = (job: string, kept: Record<string, string>, ...args: string[]) =>
  runIn({ files: { ...FILES, ...kept, [JOB]: job } }, 'sheet', JOB, ...args)

test('the tool that makes a feature refused is told as changed, and told back when it is planned again', async () => {
  const before = (await sheet(FILES[JOB]!, {}, '--format', 'json')).out
  const refused = await sheet(wide, { 'kept.json': before }, '--since', 'kept.json')
  expect(refused.status).toBe(1)
  expect(refused.out).toMatch(
    /GRINDING NECK:\n {2}is: planned, with steps -> REFUSED: [\s\S]*\n {2}tool width: \.0935 -> \.150\n/,
  )
  const after = (await sheet(wide, {}, '--format', 'json')).out
  expect(JSON.parse(after).features[0]).toMatchObject({ status: 'refused', tool: 'relief', edge: { width: 0.15 } })
  const again = await sheet(FILES[JOB]!, { 'kept.json': after }, '--since', 'kept.json')
  expect(again.out).toContain('tool width: .150 -> .0935')
  expect(again.out).not.toContain('undersize')
})
