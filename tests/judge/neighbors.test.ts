import { expect, test } from 'vitest'
import { runIn } from '../cli/world.ts'
import { FILES, jobPath } from './tried.ts'

const sheet = async (name: string) => (await runIn({ files: FILES }, 'sheet', '--format', 'csv', jobPath(name))).out
const replay = (name: string, list: string, ...args: string[]) =>
  runIn({ files: { ...FILES, 'mine.csv': list } }, 'replay', jobPath(name), 'mine.csv', ...args)

test('a gouged shoulder is told, by the far edge that the drawing gives and by the metal gone beside it', async () => {
  const list = await sheet('neck')
  expect(list).toContain('feed-across,compound,0,')
  const { status, out } = await replay('neck', list.replace('feed-across,compound,0,', 'feed-across,compound,0.005,'))
  expect(status).toBe(1)
  expect(out).toMatch(/width .* cut \.1345; holds/)
  expect(out).toMatch(/far edge from end +wanted 1\.400; cut 1\.405; does not hold/)
  expect(out).toContain('.005 too far toward the headstock, cannot be saved')
  // Flange 1 3/8 and journal .7508: (1.375 − .7508) / 2 + .030 deep.
  expect(out).toContain(
    'metal is gone from the part beside it on the headstock side, .005 along and .3421 deep, cannot',
  )
  expect(out).not.toContain('can be saved')
})

test('half a mark is all that a shoulder has, and the list of the sheet needs no more', async () => {
  const list = await sheet('neck')
  expect((await replay('neck', list)).status).toBe(0)
  const one = await replay('neck', list.replace('feed-across,compound,0,', 'feed-across,compound,0.001,'))
  expect(one.status).toBe(1)
  expect(one.out).toContain('.001 too far toward the headstock')
})

test('metal gone from the neighbor with some backlash only cannot be saved either', async () => {
  // Past the shoulder by 5 marks on the way to the last place, and fed across back onto it, on slack.
  const list = (await sheet('neck')).replaceAll('shift,compound,0,', 'shift,compound,0.005,')
  const { out } = await replay('neck', list, '--format', 'json')
  const [feature] = JSON.parse(out).features
  expect(feature.saved).toBe(false)
  expect(feature.beside).toMatchObject([{ side: 'headstock', along: 0.005 }])
})

test('a middle that the drawing gives is judged, and the edges that it does not give are not', async () => {
  const { status, out } = await replay('rounds', await sheet('rounds'))
  expect(status).toBe(0)
  expect(out).toMatch(/center from end +wanted 1\.250; cut 1\.250; holds/)
  expect(out).toMatch(/Fillet groove: proven[\s\S]*near edge from end +wanted 1\.750/)
  expect(out.match(/near edge from end/g)).toHaveLength(1)
})

test('what the form can come to for some backlash agrees with what is said of the part', async () => {
  const { status, out } = await runIn(
    { files: FILES },
    'replay',
    'examples/jobs/01-press-screw.yaml',
    'examples/moves/press-screw-from-habit.yaml',
  )
  expect(status).toBe(1)
  expect(out).toContain('first fault  examples/moves/press-screw-from-habit.yaml:20: ')
  // Rough went to .055: with the whole backlash the finish leaves that beside the near wall.
  expect(out).toMatch(/ depth +limits \.068 to \.076; cut \.055 to \.072; does not hold for every backlash/)
  expect(out).toMatch(/bottom diameter +wanted \.7305; cut \.7305 to \.7645; does not hold for every backlash/)
  expect(out).toContain('(.017 deeper with some backlash than with another)')
  expect(out).toContain('with some backlash .013 left in the depth, can be saved')
})
