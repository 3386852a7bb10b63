import { describe, expect, it } from 'vitest'
import { sheetFor } from '../../src/compile.ts'
import { pinForBottom, pinForVee, pinSeatsInVee } from '../../src/features/over-pins.ts'
import { radiusGauges, stockPins } from '../../src/handbook/pins.ts'
import type { Curve, Form } from '../../src/moves/form.ts'
import type { Check } from '../../src/moves/inspection.ts'
import type { FeaturePlan } from '../../src/plan/plan.ts'
import { PRINTERS } from '../../src/print/printers.ts'
import { INCH, type Length, MM } from '../../src/units/length.ts'
import { good, LATHE, runIn, SHOP } from '../cli/world.ts'
import { examplePlans, exampleSheets } from '../print/examples.ts'

type Planned = Extract<FeaturePlan, { status: 'planned' }>

const planned = examplePlans().flatMap(([file, plan]) =>
  plan.features.flatMap((feature, index) =>
    feature.status === 'planned' ? [[`${file} ${index + 1} ${feature.kind}`, feature] as const] : [],
  ),
)
const overPins = planned.flatMap(([name, feature]) =>
  (feature.inspection ?? []).flatMap((one) => (one.pin === null ? [] : [[name, feature, one] as const])),
)

/** Depth of a curve, from its description in the types; nothing of the replay. */
const depthOf = (curve: Curve, z: Length): Length =>
  curve.kind === 'line'
    ? curve.d0 + ((curve.d1 - curve.d0) * (z - curve.z0)) / (curve.z1 - curve.z0)
    : curve.dc + curve.side * Math.sqrt(Math.max(0, curve.r ** 2 - (z - curve.zc) ** 2))

/** How far from the axis the center of a ball stays that rests on a form at `zc`: no point of the form may enter the ball. */
const rest = (form: Form, zc: Length, ball: Length): Length => {
  let highest = 0
  for (const { from, to, curve } of form) {
    const [a, b] = [Math.max(from, zc - ball / 2), Math.min(to, zc + ball / 2)]
    for (let i = 0; a < b && i <= 400; i++) {
      const z = a + ((b - a) * i) / 400
      const radius = -depthOf(curve, Math.min(z, b))
      highest = Math.max(highest, radius + Math.sqrt(Math.max(0, (ball / 2) ** 2 - (z - zc) ** 2)))
    }
  }
  return highest
}

/** Over two balls let down into the replayed form, wherever along the work they go deepest. */
const letDown = ({ trace, operation }: Planned, ball: Length): Length => {
  const { from, to } = operation.region
  let [a, b] = [from, to]
  for (let round = 0; round < 60; round++) {
    const [left, right] = [a + (b - a) / 3, b - (b - a) / 3]
    if (rest(trace.surely, left, ball) <= rest(trace.surely, right, ball)) b = right
    else a = left
  }
  return 2 * rest(trace.surely, (a + b) / 2, ball) + ball
}

describe('over two pins', () => {
  it('is asked of grooves, arcs and Vs among the examples', () => {
    expect(overPins.length).toBeGreaterThan(8)
    expect(new Set(overPins.map(([, { kind }]) => kind))).toEqual(new Set(['groove', 'concave radius', 'v-groove']))
  })

  it.each(overPins)('%s: balls let down into the replayed form stand as the table says', (_, feature, one) => {
    expect(Math.abs(letDown(feature, one.pin!) - one.planned)).toBeLessThan(INCH / 10_000)
    expect(one.planned).toBeGreaterThan(feature.operation.surface)
    expect([...stockPins('inch'), ...stockPins('mm')].map(({ diameter }) => diameter)).toContain(one.pin)
  })

  it('takes no pin that falls to the floor, lies on the edges or sinks below the surface', () => {
    const vee = { width: 0.5 * INCH, halfAngle: 19, root: 0.25 * INCH }
    expect(pinSeatsInVee(vee, 0.4 * INCH)).toBe(true)
    expect(pinSeatsInVee(vee, 0.26 * INCH)).toBe(false) // p cos α < root
    expect(pinSeatsInVee(vee, 0.53 * INCH)).toBe(false) // p cos α > W
    expect(pinSeatsInVee({ ...vee, root: 0 }, 0.3 * INCH)).toBe(false) // below the surface
    expect(pinSeatsInVee({ width: INCH, halfAngle: 60, root: 0.4 * INCH }, 0.81 * INCH)).toBe(false) // on the floor
  })

  it('stands proud of a shoulder beside the groove, or says nothing', () => {
    const vee = { diameter: INCH, width: 0.25 * INCH, halfAngle: 30, root: 0 }
    expect(pinForVee('inch', vee, INCH)).not.toBeNull()
    expect(pinForVee('inch', vee, 2 * INCH)).toBeNull()
    expect(pinForBottom('mm', 20 * MM, 4 * MM, 30 * MM)).toBeNull()
    const pin = pinForBottom('mm', 20 * MM, 4 * MM, 24 * MM)!
    expect([pin.diameter > 2 * MM, pin.diameter < 4 * MM]).toEqual([true, true])
  })

  it('finds pins and gauges in ascending stock', () => {
    for (const units of ['inch', 'mm'] as const) {
      const pins = stockPins(units).map(({ diameter }) => diameter)
      expect(pins).toEqual([...new Set(pins)].sort((a, b) => a - b))
      expect(radiusGauges(units)).toEqual([...new Set(radiusGauges(units))].sort((a, b) => a - b))
    }
    expect(stockPins('inch').map(({ label }) => label)).toEqual(expect.arrayContaining(['7/16 in', '1 in', '1 1/8 in']))
  })
})

describe('the table of a real job', () => {
  const files = (sizes: string) => ({
    'job.yaml': good('bench.yaml').replace(/width:.*?, tool/, `${sizes}, tool`),
    'bench.yaml': LATHE,
  })
  const inspection = async (sizes: string): Promise<Record<string, unknown>[]> => {
    const { out, err } = await runIn({ files: files(sizes) }, 'sheet', '--format', 'json', 'job.yaml')
    expect(err).toBe('')
    return JSON.parse(out).features[0].inspection
  }
  const row = async (sizes: string, id: string) => (await inspection(sizes)).find(({ id: its }) => its === id)

  it('works the limits of the bottom out from those of the depth', async () => {
    const bottom = await row('width: 0.156 ±0.005, depth: 0.070 +0.004 -0', 'bottomDiameter')
    expect(bottom).toMatchObject({ planned: 1.356, limits: [1.352, 1.36], measured: null, verdict: null })
    expect(bottom!.using).toBe('blade micrometer, blades .030 in: an anvil of 1/4 in does not enter .156, ±.0005')
  })

  it('gives a pair of gauges where the width has limits, and none where it has not', async () => {
    expect(await row('width: 0.156 ±0.005, depth: 0.070', 'goNoGo')).toMatchObject({ pair: { go: 0.151, noGo: 0.161 } })
    expect(await row('width: 0.156, depth: 0.070', 'goNoGo')).toBeUndefined()
  })

  it('takes an ordinary micrometer where its anvil enters', async () => {
    const wide = await inspection('width: 0.300 ±0.005, depth: 0.070')
    expect(wide.find(({ id }) => id === 'bottomDiameter')!.using).toBe('micrometer: an anvil of 1/4 in enters, ±.0005')
    expect(wide.find(({ id }) => id === 'overPins')).toBeUndefined()
  })

  it('prints the sizes as replayed, rounded to the dial', async () => {
    // .0705 is not on a dial of thousandths: what is printed is what is cut.
    expect(await row('width: 0.156, depth: 0.0705', 'depth')).toMatchObject({ planned: 0.07 })
  })

  it('stands at the end of the text sheet only on request', async () => {
    const plain = await runIn({ files: SHOP }, 'sheet', 'shop/good.yaml')
    const asked = await runIn({ files: SHOP }, 'sheet', '--inspection', 'shop/good.yaml')
    expect(plain.out).not.toContain('INSPECTION')
    expect(asked.out.startsWith(plain.out)).toBe(true)
    expect(asked.out).toContain(
      ' width                           .156          .151 to .161  _________  ____\n    gauge blocks or feelers, by their fit, ±.0005\n',
    )
  })
})

describe('every table', () => {
  it.each(exampleSheets())('%s: 80 plain columns, a row and blanks for each size', (_, sheet) => {
    const printed = PRINTERS.text(sheet, { inspection: true }).slice(PRINTERS.text(sheet).length)
    const rows = sheet.features.flatMap((one) => (one.status === 'planned' ? one.inspection : []))
    for (const line of printed.split('\n')) {
      expect(line.length, line).toBeLessThanOrEqual(80)
      expect(line).toMatch(/^[\x20-\x7e°±]*$/)
      expect(line).toBe(line.trimEnd())
    }
    expect(printed).not.toMatch(/undefined|NaN|null|Infinity|\[object/)
    expect(printed.match(/_{9} {2}_{4}$/gm)?.length ?? 0).toBe(rows.filter(({ asked }) => asked).length)
  })

  it.each(planned)('%s: planned is what was replayed and budgeted; ids are unique', (_, feature) => {
    const rows: readonly Check[] = feature.inspection ?? []
    // What another tool finishes is inspected when it is finished.
    if (feature.kind === 'roughing') {
      expect(rows).toEqual([])
      return
    }
    // The legs of a stair are no sizes: of a corner that is stepped around only the radius is gauged.
    expect(rows.length).toBeGreaterThan(
      feature.kind === 'corner radius' && feature.operation.cusp !== undefined ? 0 : 2,
    )
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length)
    for (const { id, planned: value, limits } of rows) {
      const budgeted = feature.budget.find((size) => size.id === id)
      if (budgeted !== undefined) expect(value).toBe(budgeted.planned)
      if (limits !== null) expect(limits[0]).toBeLessThan(limits[1])
    }
  })

  it('gives every figure an id of its own', () => {
    for (const [, plan] of examplePlans()) {
      const ids = sheetFor(plan).features.flatMap((one) =>
        one.status === 'planned'
          ? one.inspection.flatMap(({ planned: size, limits, pin, pair, by }) =>
              [
                size,
                ...(limits ?? []),
                ...(pin === null ? [] : [pin]),
                ...(pair ?? []),
                ...(by === null ? [] : [by.within]),
              ].map(({ id }) => id),
            )
          : [],
      )
      expect(new Set(ids).size).toBe(ids.length)
    }
  })
})
