import { describe, expect, it } from 'vitest'
import { program } from '../cases/program.ts'

/** The words of a job that was followed at the lathe, in one line. */
const told = async (name: string, command = 'sheet'): Promise<string> =>
  (await program(command, `tests/words/jobs/${name}.yaml`)).stdout.replace(/\s+/g, ' ')

describe('the carriage is brought back onto its line', () => {
  it('swung-by-carriage: away by marks that are counted, and back onto it; not "back, then toward the headstock"', async () => {
    const text = await told('swung-by-carriage')
    // 0.50 of backlash is 5 marks of 0.10; and five marks more.
    expect(text).toContain('CARRIAGE away from the line toward the tailstock, at least 10 marks, then back onto it')
    expect(text).not.toContain('onto the line again')
  })
  it('readout-carriage: a readout has stayed, not a dial', async () => {
    const text = await told('readout-carriage')
    expect(text).toContain('LOCK, then see that the readout has stayed where it was')
    expect(text).not.toContain('that the dial has stayed')
    expect(await told('swung-by-carriage')).toContain('LOCK, then see that the dial has stayed where it was')
  })
})

describe('a bent leg stands where there is a face for it', () => {
  it('two-necks: behind a collar on the face of the collar, before it on its own', async () => {
    const text = await told('two-necks')
    expect(text).toContain('the bent leg on the headstock-side face of "collar"')
    expect(text).toContain('the bent leg on the tailstock-side end of "collar"')
    expect(text).not.toContain('the bent leg on the tailstock-side end of "shaft"')
  })
  it('collar-corner: for the line down the face, on the cylinder', async () => {
    expect(await told('collar-corner')).toContain(
      'the bent leg on the tailstock-side end of "collar"; for the line down the face, on the cylinder',
    )
  })
})

it('a compound that goes into the work is turned with the cross-feed well out', async () => {
  expect(await told('swung-by-carriage')).toMatch(
    /COMPOUND cross-feed well out; then turn toward the headstock, 12 marks/,
  )
  // Swung the other way it goes out of the work, and parallel it stays where it is.
  expect(await told('readout-carriage')).not.toContain('well out')
  expect(await told('two-necks')).not.toContain('well out')
})

it('the gaps at the grinding wheel are whole millimeters, and never more than the rule allows', async () => {
  const text = await told('two-necks', 'grind')
  // 29 CFR 1910.215(a)(4) and (b)(9): 1/8 in and 1/4 in.
  for (const [what, most] of [
    ['Work rest', 25.4 / 8],
    ['Tongue guard', 25.4 / 4],
  ] as const) {
    const gap = Number(new RegExp(`${what} no more than (\\d+) mm from the wheel`).exec(text)?.[1])
    expect(gap).toBe(Math.floor(most))
  }
})
