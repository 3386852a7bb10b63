import { describe, expect, test } from 'vitest'
import { good, LATHE, runIn, SHOP } from '../cli/world.ts'

const stored = async (): Promise<string> =>
  (await runIn({ files: SHOP }, 'sheet', '--format', 'json', 'shop/good.yaml')).out
const check = (files: Record<string, string>, ...args: string[]) =>
  runIn({ files }, 'check', '--against', 'kept', 'shop/good.yaml', ...args)

describe('check --against', () => {
  test('a sheet that is still planned is said with no more words than before', async () => {
    const plain = await runIn({ files: SHOP }, 'check', 'shop/good.yaml')
    const { status, out } = await check({ ...SHOP, 'kept/good.json': await stored() })
    expect({ status, out }).toEqual({ status: plain.status, out: plain.out })
    expect(status).toBe(0)
  })

  test('a lathe that wears shows in the steps that it changes', async () => {
    const kept = await stored()
    const files = {
      ...SHOP,
      'kept/good.json': kept,
      'shop/bench.yaml': LATHE.replace('backlash: 0.006', 'backlash: 0.020'),
    }
    const { status, out } = await check(files)
    expect(status).toBe(1)
    expect(out).toContain('not the sheet that is kept')
    expect(out).toContain('    compound backlash: .006 -> .020')
    expect(out).toMatch(/ {6}step 5 COMPOUND .* 11 marks or more -> .* 25 marks or more/)
    // Past by more than the lost motion: .010 before 0 is no longer enough for .020, and on paper the mark is the dial's.
    expect(out).toContain('step 23 COMPOUND back past 90 (.010 before 0) -> 70 (.030 before 0)')
    expect(out).not.toContain('step 13 ')
    expect(out).toContain('1 job: 0 good, 1 good but not as kept')
  })

  test('another depth is told by its readings, as data too', async () => {
    const files = {
      ...SHOP,
      'kept/good.json': await stored(),
      'shop/good.yaml': good().replace('0.070 +0.004', '0.072 +0.004'),
    }
    const { status, out } = await check(files, '--format', 'json')
    expect(status).toBe(1)
    const [job] = JSON.parse(out).jobs
    expect(job.against.outcome).toBe('different')
    expect(job.against.differences.length).toBeLessThanOrEqual(13)
    expect(job.against.differences.join('\n')).toMatch(/drawn.*0\.070.*0\.072/)
    expect(JSON.parse(out).summary).toMatchObject({ jobs: 1, good: 0, goodButNotAsKept: 1 })
  })

  test('a changed number that no step says is not overlooked', async () => {
    const sheet = JSON.parse(await stored())
    sheet.steps.at(-3).group = 'rough'
    const { status, out } = await check({ ...SHOP, 'kept/good.json': JSON.stringify(sheet) })
    expect(status).toBe(1)
    expect(out).toMatch(/steps\.\d+\.group: "rough" -> /)
  })

  test('a sheet that was kept with what is added on request is compared in what both have', async () => {
    const { out: kept } = await runIn(
      { files: SHOP },
      ...['sheet', '--format', 'json', '--slips', '--grind', '--inspection', 'shop/good.yaml'],
    )
    expect(JSON.parse(kept).slips).toHaveLength(1)
    expect(JSON.parse(kept).features[0].grind).toBeDefined()
    expect((await check({ ...SHOP, 'kept/good.json': kept })).status).toBe(0)
    const worn = { ...SHOP, 'shop/bench.yaml': LATHE.replace('backlash: 0.006', 'backlash: 0.020') }
    const { status, out } = await check({ ...worn, 'kept/good.json': kept })
    expect(status).toBe(1)
    expect(out).toContain('compound backlash: .006 -> .020')
    expect(out).not.toMatch(/slips|grind/)
  })

  test('only what is good and as it is kept counts as good', async () => {
    const files = { ...SHOP, 'shop/other.yaml': good(), 'kept/good.json': await stored() }
    const { status, out } = await runIn({ files }, 'check', '--against', 'kept', 'shop')
    expect(status).toBe(1)
    expect(out).toContain('2 jobs: 1 good, 1 good but not as kept')
    expect(await runIn({ files }, 'check', 'shop')).toMatchObject({
      status: 0,
      out: expect.stringContaining('2 jobs: 2 good'),
    })
  })

  test('a sheet that is missing or is none', async () => {
    expect(await check({ ...SHOP })).toMatchObject({
      status: 1,
      out: expect.stringContaining('no sheet is kept: kept/good.json'),
    })
    expect(await check({ ...SHOP, 'kept/good.json': '{}' })).toMatchObject({
      status: 2,
      out: expect.stringContaining('is no sheet'),
    })
    const piped = await runIn({ files: SHOP, stdin: good() }, 'check', '--against', 'kept', '-')
    expect(piped.status).toBe(2)
  })
})
