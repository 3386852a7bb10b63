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
    expect(out).toContain('lathe.compound.backlash: 0.006 -> 0.02')
    expect(out).toMatch(/ {4}- step 5 COMPOUND.* 11 marks/)
    expect(out).toMatch(/ {4}\+ step 5 COMPOUND.* 25 marks/)
    expect(out).not.toContain('step 13 ')
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
  })

  test('a changed number that no step says is not overlooked', async () => {
    const sheet = JSON.parse(await stored())
    sheet.steps.at(-3).group = 'rough'
    const { status, out } = await check({ ...SHOP, 'kept/good.json': JSON.stringify(sheet) })
    expect(status).toBe(1)
    expect(out).toMatch(/steps\.\d+\.group: "rough" -> /)
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
