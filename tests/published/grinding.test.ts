import { describe, expect, it } from 'vitest'
import { runIn } from '../cli/world.ts'
import rows from './grinding.json' with { type: 'json' }
import { type Job, jobText, sheetOf, within } from './whole-job.ts'

it('has the rows', () => {
  expect(Object.fromEntries(Object.entries(rows).map(([name, list]) => [name, list.length]))).toEqual({
    reliefs: 8,
    secondReliefs: 5,
    grooving: 1,
    lessRelief: 1,
    holder: 1,
    holders: 3,
    thread: 1,
    bits: 1,
    gauges: 1,
    gaugeStep: 1,
    rest: 2,
    tongue: 1,
  })
})

type Range = [number, number]
type Ground = { ground: Range; inUse: Range }
type Form = {
  blank: number | null
  rake: { ground: number; inUse: number; advised: Range | null }
  endRelief: Ground
  sideRelief: Ground
  gauge: { radius: number; off: number } | null
}
type Sheet = { cautions: string[]; tools: { forms: Form[] }[] }

const ground = async (job: Job): Promise<{ sheet: Sheet; form: Form }> => {
  const { out, status, err } = await runIn(
    { files: { 'job.yaml': jobText(job) } },
    'grind',
    'job.yaml',
    '--format',
    'json',
  )
  expect([status, err]).toEqual([0, ''])
  const sheet = JSON.parse(out) as Sheet
  return { sheet, form: sheet.tools[0]!.forms[0]! }
}

const groove = (material = 'mild steel', more = ''): Job => ({
  units: 'inch',
  part: 'diameter: 2, length: 3',
  tool: `shape: square, width: 0.125, reach: 0.2${more}`,
  feature: 'kind: groove, near: 0.5, width: 0.125, depth: 0.1',
  material,
})

/** Works of the textbook's table as the program names them. */
const NAMES: Readonly<Record<string, string>> = {
  aluminium: 'aluminum',
  'machine steel': 'mild steel',
  'tool steel (unhardened)': 'tool steel',
  'aluminium bronze': 'bronze',
  'manganese bronze': 'bronze',
  'bronze castings': 'bronze',
  'cast iron, soft 170 HB': 'soft cast iron',
}

describe('relief of grooving tools', () => {
  // A Navy manual: end and side relief of a grooving tool generally somewhat less than of a turning tool.
  it.each(rows.reliefs)(
    '$work: sides less than the $sideRelief of a turning tool ($source)',
    async ({ work, sideRelief }) => {
      const { form } = await ground(groove(NAMES[work] ?? work))
      expect(form.sideRelief.inUse[1]).toBeLessThan(sideRelief[0]!)
      expect(form.sideRelief.inUse[0]).toBeGreaterThan(0)
    },
  )

  it.each(rows.secondReliefs)('$work: sides less than $sideRelief ($source)', async ({ work, sideRelief }) => {
    const { form } = await ground(groove(NAMES[work] ?? work))
    expect(form.sideRelief.inUse[1]).toBeLessThan(sideRelief[0]!)
  })

  // The textbook's front relief: the range that is advised in use begins no higher.
  it.each(rows.reliefs)(
    '$work: front $frontRelief lies in what is advised ($source)',
    async ({ work, frontRelief }) => {
      const { form } = await ground(groove(NAMES[work] ?? work))
      within(frontRelief[0]!, ...form.endRelief.inUse)
    },
  )
})

describe('rake and the holder', () => {
  it.each(rows.grooving)('a grooving tool may be ground with $backRake° ($source)', async ({ backRake }) => {
    for (const material of ['mild steel', 'brass', 'cast iron', 'tool steel']) {
      const { form } = await ground(groove(material))
      expect(form.rake).toMatchObject({ ground: backRake, inUse: backRake })
      within(backRake, ...form.rake.advised!)
    }
  })

  // The rise of the holder must be taken into account in the end clearance (Navy manual); the angles of holders are from memory.
  it.each(rows.holders)('a holder that tilts $degrees°: so much more end relief is ground', async ({ degrees }) => {
    const { form } = await ground(groove('mild steel', `, holder-angle: ${degrees}, rake-ground: 0`))
    expect(form.endRelief.ground[0] - form.endRelief.inUse[0]).toBeCloseTo(degrees, 9)
    expect(form.endRelief.ground[1] - form.endRelief.inUse[1]).toBeCloseTo(degrees, 9)
    expect(form.rake.inUse).toBeCloseTo(degrees, 9)
    const level = await ground(groove('mild steel', `, holder-angle: ${degrees}, rake-ground: -${degrees}`))
    expect(level.form.rake.inUse).toBeCloseTo(0, 9)
  })

  it.each(rows.thread)('a $included° threading tool: front $frontRelief, rake $backRake ($source)', async (row) => {
    const { form } = await ground({
      ...groove(),
      tool: `shape: vee, angle: ${row.included}, nose: 0.01, reach: 0.2`,
      feature: `kind: v-groove, angle: ${row.included}, width: 0.1, near: 0.5`,
    })
    within(row.frontRelief, ...form.endRelief.inUse)
    expect(form.rake.inUse).toBe(row.backRake)
  })
})

describe('radius gauges', () => {
  // A set of twenty leaves, .020 to .400; by hundredths up to .100.
  it.each(rows.gaugeStep)('has each radius by $step from $smallest to $largest ($source)', async (row) => {
    for (let leaf = Math.round(row.smallest / row.step); leaf <= Math.round(row.largest / row.step); leaf++) {
      const radius = leaf * row.step
      const { form } = await ground({
        ...groove(),
        tool: `shape: round, radius: ${radius.toFixed(3)}, reach: 0.3`,
        feature: `kind: radius, shape: concave, radius: ${radius.toFixed(3)}, depth: ${(radius / 2).toFixed(4)}, center: 1`,
      })
      expect(form.gauge!.radius).toBeCloseTo(radius, 9)
      expect(form.gauge!.off).toBeCloseTo(0, 9)
    }
  })

  it.each(rows.gauges)('has the ends of the set, $smallest and $largest ($source)', async (row) => {
    for (const radius of [row.smallest, row.largest]) {
      const { form } = await ground({
        ...groove(),
        tool: `shape: round, radius: ${radius}, reach: 0.5`,
        feature: `kind: radius, shape: concave, radius: ${radius}, depth: ${radius / 4}, center: 1`,
      })
      expect(form.gauge!.off).toBeCloseTo(0, 9)
    }
  })
})

describe('at the wheel', () => {
  it.each(rows.rest)('the work rest no more than $value from it ($source)', async ({ value }) => {
    const { sheet } = await ground(groove())
    expect(
      sheet.cautions.some((text) => text.includes(`Work rest no more than ${value.toFixed(3).slice(1)} from`)),
    ).toBe(true)
  })

  it.each(rows.tongue)('the tongue guard no more than $value ($source)', async ({ value }) => {
    const { sheet } = await ground(groove())
    expect(
      sheet.cautions.some((text) => text.includes(`Tongue guard no more than ${value.toFixed(3).slice(1)} from`)),
    ).toBe(true)
  })
})

// An early textbook: all measurements with the lathe at rest.
describe('measuring', () => {
  it('is told with the spindle standing, wherever a sheet tells it', () => {
    const { steps } = sheetOf({ ...groove(), feature: 'kind: groove, near: 0.5, width: 0.3, depth: 0.1' })
    let turning = false
    let measured = 0
    for (const step of steps) {
      if (step.action === 'start') turning = true
      if (step.action === 'stop') turning = false
      if (step.action !== 'measure') continue
      measured++
      expect(turning).toBe(false)
    }
    expect(measured).toBeGreaterThan(0)
  })
})
