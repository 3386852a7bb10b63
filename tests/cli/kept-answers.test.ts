import { expect, it } from 'vitest'
import { good, LATHE, mayNotHold, misspelt, refused, runAnew } from './world.ts'

/** Answers are kept for the tests that follow because of this. */
it.each([
  ['good.yaml', good()],
  ['may-not-hold.yaml', mayNotHold()],
  ['refused.yaml', refused()],
  ['misspelt.yaml', misspelt()],
])('the same question in the same world has the same answer: %s', async (name, text) => {
  const world = { files: { [name]: text, 'bench.yaml': LATHE } }
  for (const format of ['text', 'json', 'html']) {
    const first = await runAnew(world, 'sheet', name, '--format', format)
    await runAnew({ files: { ...world.files, [name]: good() } }, 'sheet', name, '--card')
    expect(await runAnew(world, 'sheet', name, '--format', format)).toEqual(first)
  }
})
