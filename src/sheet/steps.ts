import { readable } from '../lathe/lathe.ts'
import { readingOf } from '../phrase/dial.ts'
import { identify } from '../phrase/figure.ts'
import type { Plan } from '../plan/plan.ts'
import { scaleOf } from '../plan/scale.ts'
import { inUnits } from '../units/length.ts'
import { effectOf } from './effect.ts'
import { groupsOf } from './groups.ts'
import { handStep } from './hand.ts'
import type { Planned, Scene } from './scene.ts'
import { scenesOf } from './scene.ts'
import type { SheetStep } from './sheet.ts'
import { slideStep } from './slide.ts'

/** One numbered step for every move of a planned feature, counted on from `first`. */
export const stepsOf = (plan: Plan, feature: Planned, position: number, first: number): SheetStep[] => {
  const groups = groupsOf(feature.operation.moves)
  return scenesOf(plan, feature).map((scene, i) => step(scene, position, first + i, groups[i] ?? 'set up'))
}

const step = (scene: Scene, position: number, number: number, group: SheetStep['group']): SheetStep => {
  const { move } = scene
  const words = move.slide !== undefined && move.action !== 'touch-off' ? slideStep(scene, move.slide) : handStep(scene)
  const place = `step.${number}`
  return {
    number,
    feature: position,
    group,
    action: move.action,
    purpose: move.purpose ?? null,
    slide: move.slide ?? null,
    thing: words.thing,
    ...(words.first === undefined ? {} : { first: identify(`${place}.first`, words.first) }),
    ...(words.short === undefined ? {} : { short: identify(`${place}.short`, words.short) }),
    does: identify(`${place}.does`, words.does),
    effect: identify(`${place}.effect`, words.effect.length > 0 ? words.effect : effectOf(scene)),
    more: words.more.map((phrase, i) => identify(`${place}.more.${i + 1}`, phrase)),
    ...(words.expected === undefined
      ? {}
      : {
          expected: words.expected.map((one) => ({ ...one, size: { ...one.size, id: `${place}.expected.${one.id}` } })),
        }),
    ...stated(scene),
    ...atLeast(scene),
    ...(move.place === undefined ? {} : { place: move.place }),
  }
}

const atLeast = ({ plan, move }: Scene): Pick<SheetStep, 'atLeast' | 'takeUp'> => {
  const scale = move.slide === undefined ? null : scaleOf(plan, move.slide)
  if (move.action !== 'take-up' || typeof move.count === 'number' || scale === null) return {}
  const steps = move.takeUp ?? 0
  const atLeast = Number(inUnits(steps * readable(scale), scale.units).toFixed(9))
  return { atLeast, takeUp: scale.kind === 'dial' ? Number((steps * scale.readTo).toFixed(9)) : atLeast }
}

const stated = (scene: Scene): Pick<SheetStep, 'reading' | 'turns' | 'mark'> => {
  const { slide, action } = scene.move
  const count =
    slide === undefined || action === 'touch-off' ? null : scene.move.action === 'zero' ? 0 : (scene.move.count ?? null)
  if (slide === undefined || count === null) return { reading: null, turns: null, mark: null }
  const scale = scaleOf(scene.plan, slide)
  if (scale === null) return { reading: null, turns: null, mark: null }
  const { value, turns, mark } = readingOf(scale, count)
  return { reading: Number(inUnits(value, scale.units).toFixed(9)), turns, mark }
}
