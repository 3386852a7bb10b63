import { describe, expect, it } from 'vitest'
import { sheetSchema } from '../../src/print/json/schema.ts'
import { program, yamlNames } from '../cases/program.ts'
import { problems, strangers } from './conforms.ts'

const JOBS = [
  ...yamlNames('examples/jobs').map((name) => `examples/jobs/${name}.yaml`),
  'tests/tools/grind/tilted.yaml',
]

describe('the schema of the sheet, with everything on it', () => {
  it.each(JOBS)('%s has no key that the schema does not describe', { timeout: 120_000 }, async (job) => {
    const { stdout } = await program('sheet', job, '--grind', '--slips', '--inspection', '--format', 'json')
    const sheet = JSON.parse(stdout)
    expect(problems(sheetSchema(), sheet)).toEqual([])
    expect(strangers(sheetSchema(), sheet)).toEqual([])
    const planned = sheet.features.filter(({ status }: { status: string }) => status === 'planned')
    const shaped = planned.filter(({ kind }: { kind: string }) => kind !== 'roughing')
    expect(shaped.every((feature: object) => 'grind' in feature)).toBe(true)
    expect(sheet.slips.length).toBe(planned.length)
  })

  it('finds a key that is not described, wherever it stands', async () => {
    const { stdout } = await program('sheet', JOBS.at(-1)!, '--grind', '--format', 'json')
    const sheet = JSON.parse(stdout)
    sheet.features[0].grind.form.hollow.points[2].strange = 1
    sheet.features.at(-1).edge.strange = 1
    sheet.strange = 1
    expect(strangers(sheetSchema(), sheet)).toEqual([
      '$.features[0].grind.form.hollow.points[2].strange',
      `$.features[${sheet.features.length - 1}].edge.strange`,
      '$.strange',
    ])
  })
})
