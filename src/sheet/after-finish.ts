import type { Again } from '../finish/again.ts'
import { bottomWanted } from '../finish/stop.ts'
import type { Slide } from '../moves/operation.ts'
import { markFigure } from './dial.ts'
import { length } from './figure.ts'
import type { Plan } from './plan.ts'
import { type Planned, scaleOf } from './scene.ts'
import type { Phrase, Role } from './sheet.ts'

/**
 * Under the last measuring: what is still to be saved, and what is not. `first` is the number of the feature's first step, `by` the slide that
 * finishes. Where the drawing gives no limits, a step of the dial is the least that can be taken off.
 */
export const afterFinish = (
  plan: Plan,
  feature: Planned,
  again: Again,
  finishes: readonly number[],
  by: Slide,
  first: number,
): Phrase[] => {
  const { operation } = feature
  const show = (value: number, role: Role = 'limit') => length(role, value, plan.units)
  const steps = `steps ${first + again.from} to ${first + again.to} again`
  const further = (indexes: readonly number[]): string =>
    `${steps}, ${indexes.length === 1 ? `step ${first + indexes[0]!}` : 'every finishing step'}: `
  const mark = (slide: Slide): Phrase => {
    const scale = scaleOf(plan, slide)!
    if (scale.kind === 'readout') return [`one step of the ${scale.range === undefined ? 'readout' : 'indicator'}`]
    return [{ ...markFigure(scale, scale.readTo), role: 'take-up' }, ' mark']
  }
  const lines: Phrase[] = []
  if (again.perStep !== null) {
    const { aim, limits } = bottomWanted(operation)
    const [low, high] = limits ?? [null, aim + again.perStep]
    const hangs = !operation.dimensions.some(({ id, fixed }) => id === 'bottomDiameter' && fixed === true)
    const edge = (value: number): number => (hangs ? operation.surface - value : value)
    lines.push([
      `METAL LEFT if ${hangs ? 'outside less bottom is under ' : 'the bottom is over '}`,
      show(edge(high)),
      `: ${further(finishes)}`,
      ...mark(by),
      ' deeper than before for every ',
      show(again.perStep, 'spare'),
      ...(low === null ? [] : [`; ${hangs ? 'over ' : 'under '}`, show(edge(low)), ' it is past saving']),
    ])
  }
  const width = operation.dimensions.find(({ id }) => id === 'width')
  // The width of a V follows its depth: only the bottom is told there.
  if (again.across !== null && width !== undefined && operation.dimensions.every(({ id }) => id !== 'angle')) {
    const [low, high] = width.limits ?? [width.aim - again.across.perStep, null]
    lines.push([
      'and if the width is under ',
      show(low),
      `: likewise, step ${first + again.across.index}: `,
      ...mark(again.across.slide),
      ' further for every ',
      show(again.across.perStep, 'spare'),
      ...(high === null ? [] : ['; over ', show(high), ' it is past saving']),
    ])
  }
  return lines
}
