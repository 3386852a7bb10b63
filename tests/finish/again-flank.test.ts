import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'

/** All files of the examples, by the names that a job calls them. */
const files = (): Record<string, string> =>
  Object.fromEntries(
    readdirSync('examples', { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.yaml') && !name.includes('broken'))
      .map((name) => [join('examples', name), readFileSync(join('examples', name), 'utf8')]),
  )

const finished = async (bottom: string) => {
  const args = ['finish', 'examples/jobs/18-flank-feed.yaml', '--bottom-diameter', bottom, '--measured-again']
  const { out } = await runIn({ files: files() }, ...args, '--format', 'json')
  const { out: text } = await runIn({ files: files() }, ...args)
  return {
    steps: JSON.parse(out).steps as { number: number; action: string; slide: string; reading: number }[],
    words: text.replace(/\s+/g, ' '),
  }
}

it('a V fed along its flank that was roughed much too shallow is roughed again from the clear start of its runs', async () => {
  const { steps, words } = await finished('2.400')
  const rough = steps.slice(1, 4).map(({ action, slide, reading }) => [action, slide, reading])
  // As on its sheet: the compound back behind its start first, the cross-feed in to the line of the run, and the spindle.
  expect(rough).toEqual([
    ['go-past', 'compound', -0.01],
    ['return', 'cross-feed', -0.061],
    ['start', undefined, undefined],
  ])
  // From the step after what comes back from the stop to the measuring and the coming back of the new one.
  expect(words).toContain('Steps 26 to 39 rough again')
  expect(words).toContain('the zero of the cross-feed is .0550 further out than it was set for')
})

it('the zero is further in where the bottom came out smaller', async () => {
  expect((await finished('2.286')).words).toMatch(
    /the zero of the cross-feed is \.002\d* further in than it was set for/,
  )
})
