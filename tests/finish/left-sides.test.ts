import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

const read = (path: string): string => readFileSync(join(import.meta.dirname, '..', '..', path), 'utf8')
const files = Object.fromEntries(
  ['examples/jobs/04-strap-roller.yaml', 'examples/lathes/bench-lathe.yaml', 'examples/toolboxes/toolbox.yaml'].map(
    (path) => [path, read(path).replace('tool: blade\n', 'tool: blade\n    walls: swept\n')],
  ),
)
type Data = { features: { edge: { width: number } }[]; steps: { action: string; reading?: number }[] }
const finish = async (bottom: number, width: number): Promise<{ tool: number; across: number }> => {
  const job = 'examples/jobs/04-strap-roller.yaml'
  const given = ['--bottom-diameter', `${bottom}`, '--width', `${width}`, '--format', 'json']
  const { out } = await runIn({ files }, 'finish', job, '--feature', 'Strap groove', ...given)
  const { features, steps } = JSON.parse(out) as Data
  const across = steps.find(({ action }) => action === 'feed-across')!.reading!
  return { tool: features[0]!.edge.width, across }
}

// .004 is left on each side of a groove .84375 wide, so roughing measures .836 over a tool of .093, however deep the bottom came out: a zero that stands
// lower than it was set for has touched nothing at the near line. Feeding to .751 + .093 makes .844.
it('takes a width with metal left on the sides as it is, also where the bottom came out small', async () => {
  for (const bottom of [1.771, 1.773, 1.775, 1.777, 1.779])
    expect(await finish(bottom, 0.836), `${bottom}`).toEqual({ tool: 0.093, across: 0.751 })
})

it('finds a wider tool there', async () => {
  // .840 over the same places: the tool is .097, and .747 + .097 is .844 again.
  expect(await finish(1.773, 0.84)).toEqual({ tool: 0.097, across: 0.747 })
})
