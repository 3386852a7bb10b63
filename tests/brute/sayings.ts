import type { Ran } from './replay-once.ts'
import { dialOf } from './screws.ts'
import type { Sheet, SheetStep } from './sheet-shape.ts'

/**
 * People follow the words, not the fields: what a step says in words must be what its numbers say. Takes the replay
 * without lost motion for where the tool stands, and the one with the most of it for what a back-out clears.
 */
export function sayingProblems(sheet: Sheet, tight: Ran, loose: Ran): string[] {
  const before = new Map<string, number>()
  return sheet.steps.flatMap((step) => {
    const key = `${step.feature} ${step.slide}`
    const from = before.get(key) ?? null
    if (typeof step.reading === 'number' && step.action !== 'zero') before.set(key, step.reading)
    if (step.action === 'zero') before.set(key, step.reading ?? 0)
    if (step.say === undefined) return []
    const found = [
      ...turnProblems(sheet, step, from),
      ...depthProblems(step, tight),
      ...clearProblems(sheet, step, loose),
      ...expectedProblems(sheet, step, tight),
    ]
    return found.map((text) => `step ${step.number}: ${text}; it says "${step.say}"`)
  })
}

/** Whole turns to count, and how often the zero of the dial goes by on the way out. */
function turnProblems(sheet: Sheet, step: SheetStep, from: number | null): string[] {
  const dial = step.slide ? dialOf(sheet, step.slide) : null
  if (!dial || dial.readout || dial.perTurn === null || from === null || typeof step.reading !== 'number') return []
  const turned = Math.abs(step.reading - from) / dial.perTurn
  const counted = /(?:OUT|IN) (\d+) whole turns?(?: more|, count| to the same)/.exec(step.say!)
  if (counted !== null && Math.abs(Number(counted[1]) - turned) > 1e-6) return [`the turns to count are ${turned}`]
  const past = /OUT past 0(?:,? \(?(twice|\d+ times)\)?)?, stop/.exec(step.say!)
  if (past === null) return []
  const said = past[1] === undefined ? 1 : past[1] === 'twice' ? 2 : Number.parseInt(past[1], 10)
  const [start, stop] = [from / dial.perTurn, step.reading / dial.perTurn]
  const passes = Math.floor(start + 1e-9) - Math.ceil(stop - 1e-9) + 1
  // The zero that the dial leaves and the one it stops on may be counted or not: the words "stop on the next" decide.
  const open = [start, stop].filter((turns) => Math.abs(turns - Math.round(turns)) < 1e-9).length
  return said <= passes && said >= passes - open ? [] : [`zero goes by ${passes} times from ${from}`]
}

function depthProblems(step: SheetStep, run: Ran): string[] {
  const at = run.places.get(step.number)
  if (at === undefined || (step.action !== 'feed-in' && step.action !== 'feed-across')) return []
  return [
    ...differs(step.say!, /; ([\d.]+) deep/, at.surface / 2 - at.tip, 'the depth'),
    ...differs(step.say!, / ([\d.]+) dia/, at.tip * 2, 'the diameter'),
  ]
}

function clearProblems(sheet: Sheet, step: SheetStep, run: Ran): string[] {
  const at = run.places.get(step.number)
  if (at === undefined || at.inside === null) return []
  const said = /clears by ([\d.]+)/.exec(step.say!)
  if (said === null) return []
  // Told is what this very back-out clears: never more, and no less than its last place. Round and sloping edges fall between two nodes.
  const less = -at.inside - Number(said[1])
  const place = 10 ** -(said[1]!.split('.')[1]?.length ?? 0)
  const most = sheet.features[step.feature]!.edge?.shape === 'square' ? place : Number.POSITIVE_INFINITY
  return less >= -1e-5 && less <= most + 1e-5 ? [] : [`the clearance is ${(-at.inside).toFixed(6)}`]
}

function expectedProblems(sheet: Sheet, step: SheetStep, run: Ran): string[] {
  const at = run.measured.get(step.number)
  if (at === undefined) return []
  const edge = sheet.features[step.feature]!.edge!
  // The point of a sharp V, and the tip of a round end, fall between two nodes of the grid.
  const sharp = edge.shape === 'vee' && edge.nose! < run.grid.step
  const point = sharp
    ? run.grid.step / Math.tan((edge.angle! * Math.PI) / 360)
    : edge.shape === 'round'
      ? run.grid.step ** 2 / (8 * edge.radius!)
      : 0
  return [
    ...differs(step.say!, /; depth, ([\d.]+) expected/, at.depth, 'the depth', point),
    ...differs(step.say!, /bottom diameter, ([\d.]+) expected/, at.bottom, 'the bottom diameter', 2 * point),
    ...differs(step.say!, /; width, ([\d.]+) expected/, at.width, 'the width', 2 * run.grid.step),
  ]
}

/** A printed number stands for everything within half of its last place. */
function differs(say: string, pattern: RegExp, real: number, what: string, slack = 0): string[] {
  const found = pattern.exec(say)
  if (found === null) return []
  const places = found[1]!.split('.')[1]?.length ?? 0
  const off = Math.abs(Number(found[1]) - real)
  return off <= 0.5 * 10 ** -places + slack + 1e-5 ? [] : [`${what} is ${real.toFixed(6)}`]
}
