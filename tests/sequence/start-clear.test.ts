import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet } from '../brute/sheet-shape.ts'
import { program } from '../cases/program.ts'

const sheet = async (job: string): Promise<Sheet> =>
  JSON.parse((await program('sheet', '--format', 'json', job)).stdout) as Sheet
const TOUCHES = /the spindle starts with the tool touching the work/
const starts = (data: Sheet) => bruteForce(data).problems.filter((problem) => TOUCHES.test(problem))
const JOBS = readdirSync('examples/jobs').filter((name) => name.endsWith('.yaml'))

/** The replay of the tests reads the sheet alone: the edge against the stock and its shoulders, wherever the lost motion left it. */
describe('the spindle never starts with the tool touching', () => {
  it.each(JOBS)('in the example %s', async (name) => {
    expect(starts(await sheet(`examples/jobs/${name}`))).toEqual([])
  })

  it('at a shoulder on the headstock side the tool goes to its first place before both starts', async () => {
    const data = await sheet('tests/words/jobs/two-necks.yaml')
    expect(bruteForce(data).problems).toEqual([])
    const neck = data.steps.filter(({ feature }) => feature === 0)
    const before = neck.flatMap(({ action }, i) => (action === 'start' ? [neck[i - 1]!.action] : []))
    expect(before).toEqual(['return', 'return'])
    // Started right after the back-out, as the collar stands 3.965 over the seat and the back-out is 1.10.
    const [start, away] = [
      neck.find(({ action }) => action === 'start')!,
      neck.find(({ action }) => action === 'go-past')!,
    ]
    const early = data.steps.flatMap((step) => (step === start ? [] : step === away ? [start, away] : [step]))
    expect(starts({ ...data, steps: early }).length).toBeGreaterThan(0)
  })

  it('with a tool as wide as the neck it goes past its place, and onto it when the spindle turns', async () => {
    const data = await sheet('tests/words/jobs/whole-neck.yaml')
    expect(bruteForce(data).problems).toEqual([])
    const around = data.steps.flatMap(({ action }, i) =>
      action === 'start' ? [[data.steps[i - 1]!.action, data.steps[i + 1]!.action]] : [],
    )
    expect(around).toEqual([
      ['go-past', 'return'],
      ['go-past', 'return'],
    ])
  })

  it('beside a collar with the compound nearly square and the carriage to move along, it is backed out over the collar', async () => {
    const data = await sheet('tests/words/jobs/square-compound-neck.yaml')
    expect(data.features[0]!.status).toBe('planned')
    expect(bruteForce(data).problems).toEqual([])
  })
})
