import { describe, expect, it } from 'vitest'
import { bruteForce } from '../brute/brute-force.ts'
import type { Sheet, SheetStep } from '../brute/sheet-shape.ts'
import { program } from '../cases/program.ts'

/** A sheet that was followed at the lathe: its words in one line, and its data. */
async function sheet(job: string): Promise<{ text: string; data: Sheet; step(number: number): SheetStep }> {
  const text = (await program('sheet', job)).stdout.replace(/\s+/g, ' ')
  const data = JSON.parse((await program('sheet', '--format', 'json', job)).stdout) as Sheet
  return { text, data, step: (number) => data.steps.find((one) => one.number === number)! }
}
const ours = (name: string) => `tests/words/jobs/${name}.yaml`
const example = (name: string) => `examples/jobs/${name}.yaml`
const said = (step: SheetStep): string => step.say!

describe('the compound is swung to one side of its zero, not the other', () => {
  it('c-flank: 17° from square on the other side goes in too, and cuts the other flank', async () => {
    const { step } = await sheet(ours('c-flank'))
    expect(said(step(2))).toContain('feeding forward goes INTO the work and TOWARD THE HEADSTOCK')
    expect(said(step(2))).toContain('on the other side of 0 it also goes in, but toward the tailstock: WRONG')
  })
  it("m-left: 119° 30' is given as a swivel marked to 90° is set", async () => {
    const { step } = await sheet(ours('m-left'))
    expect(said(step(2))).toContain("60° 30' on the far side of 90°, 29° 30' past it")
    expect(said(step(2))).toContain('feeding forward goes OUT of the work and TOWARD THE HEADSTOCK')
    expect(said(step(2))).toContain('on the near side of 90° it goes INTO the work: WRONG')
  })
  it('b-wide: 90° from square is parallel on both sides, and forward is toward the headstock on one', async () => {
    const { step } = await sheet(ours('b-wide'))
    expect(said(step(2))).toContain('so that feeding forward goes TOWARD THE HEADSTOCK')
    expect(said(step(2))).toContain('on the other side of 0 it goes toward the tailstock: WRONG')
  })
})

describe('a back-out tells what it clears itself', () => {
  // By hand: reading out, less the backlash of the cross-feed, less the compound's reading times the sine of its angle, rounded down.
  it('c-flank: 14.00 out less 0.16, and at 8.90 of the compound less 8.90 · sin 73°', async () => {
    const { step, data } = await sheet(ours('c-flank'))
    expect(said(step(11))).toContain('clears by 13.84')
    const deep = step(20).reading! * Math.sin((73 * Math.PI) / 180)
    expect(said(step(21))).toContain(`clears by ${(Math.floor((14 - 0.16 - deep) * 100) / 100).toFixed(2)}`)
    expect(said(step(21))).toContain('clears by 5.32')
    expect(bruteForce(data).problems).toEqual([])
  })
  it('c-flank: back on 0 the cross-feed stands clear by what the compound went back, less its backlash', async () => {
    // 1.00 back, of which up to 0.15 is lost: 0.85 · sin 73° = 0.8129.
    expect(said((await sheet(ours('c-flank'))).step(13))).toContain('0.81 clear of the work')
  })
  it('the flank-fed pulley: 1.000 out by a dial of diameter, less its backlash of .014', async () => {
    expect(said((await sheet(example('18-flank-feed'))).step(11))).toContain('clears by .493')
  })
})

it('oversize stock makes a V deeper, and the note says by how much', async () => {
  // c-flank: 80.06 for 80.00: 0.03 on the radius; twice that times tan 17° on the width.
  const { text } = await sheet(ours('c-flank'))
  expect(text).toContain(
    'the stock measures 80.06: depth and its limits are 0.030 more, width and its limits 0.018 more.',
  )
  expect((0.06 * Math.tan((17 * Math.PI) / 180)).toFixed(3)).toBe('0.018')
  const smaller = await sheet(example('11-tray-valve'))
  expect(smaller.text).toContain(
    'the stock measures 31.94: depth and its limits are 0.030 less, width and its limits 0.019 less.',
  )
})

describe('words that were read wrong at the lathe', () => {
  it('metal left: marks are counted from the limit', async () => {
    const { text } = await sheet(example('01-press-screw'))
    expect(text).toMatch(/1 mark deeper than before for every \.002 or part of it past that limit/)
  })
  it('a V: the nose stands to one side of a line, not "in"', async () => {
    expect((await sheet(example('17-pulley-to-the-lines'))).text).toContain(
      'The near flank reaches its line when the nose is .150 to the headstock side of that line.',
    )
  })
  it('a dial that stands on 0 goes from it, not past it', async () => {
    const { data } = await sheet(example('03-mill-spindle'))
    const from0 = data.steps.filter((step, i) => {
      const before = data.steps.slice(0, i).findLast(({ slide, reading }) => slide === step.slide && reading !== null)
      return (
        before?.reading === 0 && step.feature === before.feature && typeof step.reading === 'number' && step.reading < 0
      )
    })
    expect(from0.length).toBeGreaterThan(2)
    for (const step of from0) {
      expect(said(step)).not.toContain('past 0')
      expect(said(step)).toMatch(/from 0/)
    }
  })
  it('the bent leg stands on a face that is named', async () => {
    const { text } = await sheet(example('03-mill-spindle'))
    expect(text).toContain('the bent leg on the tailstock-side end of "flange"')
    expect(text).not.toContain('on that end;')
  })
  it('a shoulder is touched with the spindle stopped', async () => {
    const { data } = await sheet(example('03-mill-spindle'))
    const aligned = data.steps.filter((step) => step.action === 'align' && said(step).includes('touch the face'))
    expect(aligned.length).toBeGreaterThan(0)
    for (const step of aligned) expect(said(step)).toContain('spindle stopped')
  })
  it('a corner by eye stands a hair to one side of a line', async () => {
    const { text } = await sheet(example('17-pulley-to-the-lines'))
    expect(text).toMatch(
      /the tailstock-side corner is (a hair \(\.\d+\)|about \.\d+) to the headstock side of the tailstock line/,
    )
    expect(text).not.toContain('inside the')
  })
  it('a job in millimeters is not told of thousandths', async () => {
    const { stdout, stderr } = await program('check', ours('too-wide-in-mm'))
    expect(stdout + stderr).toContain('grind the tool to 2.90 or a few hundredths under')
    expect(stdout + stderr).not.toContain('thousandths')
  })
  it('a file is used with the spindle stopped', async () => {
    expect((await sheet(example('19-no-form-tool'))).text).toContain('the file only with the spindle stopped')
  })
})

describe('the travel of the compound', () => {
  it('b-wide: what must lie free of it is told before its zero is set', async () => {
    const { step, data } = await sheet(ours('b-wide'))
    const readings = data.steps.filter(({ slide }) => slide === 'compound').map(({ reading }) => reading ?? 0)
    expect([Math.max(...readings), -Math.min(...readings)]).toEqual([11.05, 0.5])
    const takeUp = data.steps.find(({ action, slide }) => action === 'take-up' && slide === 'compound')!
    expect(said(takeUp)).toContain('wind it back first: 11.1 of travel needed ahead, 0.5 behind')
    expect(takeUp.number).toBeLessThan(data.steps.find(({ action }) => action === 'zero')!.number)
    expect(said(step(takeUp.number))).toContain('marks or more')
  })
  it('is not spoken of where it hardly moves', async () => {
    expect((await sheet(example('02-tap-plug'))).text).not.toContain('wind it back')
  })
})

it('f-tilt: rake in use in steel is warned of on the sheet, as by grind', async () => {
  const { text } = await sheet(ours('f-tilt'))
  expect(text).toMatch(/WARNING 14° 30' of rake in use, where this metal is formed with 2° at most/)
  const ground = (await program('grind', ours('f-tilt'))).stdout.replace(/\s+/g, ' ')
  expect(ground).toContain("14° 30' of rake in use, where this metal is formed with 2° at most")
})

it('c-flank: the step that sets a speed that is too fast says not to go on, and what to do', async () => {
  const speed = (await sheet(ours('c-flank'))).step(4)
  expect(said(speed)).toContain('63 rpm: LOWEST AVAILABLE, TOO FAST: DO NOT FORM AT THIS SPEED')
  expect(said(speed)).toContain('do not go on: 42 rpm is wanted; engage the back gear')
})

it('a blank that is flush at a shoulder is relieved there, and only there', async () => {
  const { data } = await sheet(example('03-mill-spindle'))
  const fits = data.steps.filter(({ action }) => action === 'fit-tool').map(said)
  expect(fits.some((say) => say.includes('relieve its headstock side all the way up'))).toBe(true)
  expect(fits.some((say) => say.includes('relieve its tailstock side all the way up'))).toBe(true)
  expect((await sheet(example('01-press-screw'))).text).not.toContain('relieve its')
})

it('numbers of an inch drawing in a job in millimeters are asked about', async () => {
  const { stdout, stderr } = await program('check', ours('inch-numbers-in-mm'))
  expect(stdout + stderr).toContain('is units: mm right?')
})

describe('chips', () => {
  it('wait for a stop, nothing held to running work, told once, oil on steel and iron dry', async () => {
    const steel = (await sheet(example('03-mill-spindle'))).text
    expect(steel.match(/drip cutting oil; no brush or rag at running work: STOP for chips/g)).toHaveLength(1)
    expect((await sheet(ours('c-flank'))).text).toContain('cut dry; no brush or rag')
  })
})
