import type { Phrase } from '../../phrase/phrase.ts'
import type { Change, Changed, ChangedFeature } from '../sheet.ts'
import { type Data, dataIn, listIn, sameData, textIn } from './data.ts'
import { factsIn } from './facts.ts'
import { withIds } from './ids.ts'
import { sizesIn } from './sizes.ts'
import { changedSteps } from './steps.ts'

/**
 * The differences between today's sheet and one that was kept, both as `sheet --format json` prints them: facts of
 * lathe, part and tools, then each feature by its name, with its steps and its sizes. A part that was requested for
 * only one of the sheets (slips, grinding) is no change.
 */
export const changedSince = (before: Data, now: Data): Changed =>
  withIds({
    facts: [
      ...factsIn('', pick(before, HEAD), pick(now, HEAD), before, now),
      ...factsIn('lathe', before.lathe, now.lathe, before, now),
      ...factsIn('part', before.part, now.part, before, now),
      ...warnings(before, now, null, null),
    ],
    features: featuresIn(before, now),
  })

const HEAD = ['title', 'drawingNumber', 'units']
const OF_A_FEATURE = ['kind', 'tool', 'drawn', 'compoundAngle', 'surface']

const pick = (data: Data, keys: readonly string[]): Data => Object.fromEntries(keys.map((key) => [key, data[key]]))

const featuresIn = (before: Data, now: Data): ChangedFeature[] => {
  const [old, fresh] = [named(before), named(now)]
  const gone = [...old.keys()]
    .filter((name) => !fresh.has(name))
    .map((name): ChangedFeature => ({ name, fate: 'went', facts: [], steps: [], sizes: [] }))
  const there = [...fresh].flatMap(([name, index]): ChangedFeature[] => {
    const was = old.get(name)
    if (was === undefined) return [{ name, fate: 'came', facts: [], steps: [], sizes: [] }]
    const one = featureIn(name, before, was, now, index)
    return one.facts.length + one.steps.length + one.sizes.length === 0 ? [] : [one]
  })
  return [...there, ...gone]
}

/** A name is listed once; features with the same name (there are none in a good job) are taken in their order. */
const named = (sheet: Data): Map<string, number> => {
  const found = new Map<string, number>()
  listIn(sheet.features).forEach((feature, index) => {
    const name = textIn(dataIn(feature).name)
    found.set(found.has(name) ? `${name} (${index + 1})` : name, index)
  })
  return found
}

const featureIn = (name: string, before: Data, was: number, now: Data, is: number): ChangedFeature => {
  const [old, fresh] = [dataIn(listIn(before.features)[was]), dataIn(listIn(now.features)[is])]
  if (old.status !== fresh.status || fresh.status === 'refused') return statusChange(name, old, fresh, before, now)
  const ownSteps = (sheet: Data, index: number): readonly Data[] =>
    listIn(sheet.steps)
      .map(dataIn)
      .filter(({ feature }) => feature === index)
  return {
    name,
    fate: 'stayed',
    facts: [
      ...factsIn('', pick(old, OF_A_FEATURE), pick(fresh, OF_A_FEATURE), before, now),
      ...factsIn('tool', old.edge, fresh.edge, before, now),
      ...factsIn('', pick(dataIn(old.spindle), ['rpm']), pick(dataIn(fresh.spindle), ['rpm']), before, now),
      ...warnings(before, now, was, is),
    ],
    steps: changedSteps(ownSteps(before, was), ownSteps(now, is), before, now),
    sizes: sizesIn(dataIn(old.finished), dataIn(fresh.finished), before, now),
  }
}

/** Planned then and refused now, or the other way: all its steps came or went, and that is reported once. */
const statusChange = (name: string, old: Data, fresh: Data, before: Data, now: Data): ChangedFeature => {
  const statusOf = ({ status, refusal }: Data): Phrase =>
    status === 'refused' ? [`REFUSED: ${textIn(dataIn(refusal).reason)}`] : ['planned, with steps']
  const facts = sameData(statusOf(old), statusOf(fresh))
    ? []
    : [{ what: 'is', before: statusOf(old), now: statusOf(fresh) }]
  return { name, fate: 'stayed', facts: [...facts, ...toolIn(old, fresh, before, now)], steps: [], sizes: [] }
}

/**
 * The tool with which it was planned and the one with which it is refused, or the other way. The size of a tool in the
 * work (its angle or radius under a sloping face, how much it is under the drawing) is only known for a planned
 * feature.
 */
const toolIn = (old: Data, fresh: Data, before: Data, now: Data): Change[] => {
  const [a, b] = [dataIn(old.edge), dataIn(fresh.edge)]
  if (textIn(old.tool) === '' || textIn(fresh.tool) === '') return []
  const inWork = a.face === undefined && b.face === undefined ? ['undersize'] : ['undersize', 'angle', 'radius', 'face']
  const without = (edge: Data): Data =>
    Object.fromEntries(Object.entries(edge).filter(([key]) => !inWork.includes(key)))
  return [
    ...factsIn('', pick(old, ['tool']), pick(fresh, ['tool']), before, now),
    ...factsIn('tool', without(a), without(b), before, now),
  ]
}

/** A warning that came or went, in its own words. */
const warnings = (before: Data, now: Data, was: number | null, is: number | null): Change[] => {
  const textsOf = (sheet: Data, feature: number | null): string[] =>
    listIn(sheet.warnings)
      .map(dataIn)
      .filter((warning) => warning.feature === feature)
      .map(({ say }) => textIn(say))
  const [old, fresh] = [textsOf(before, was), textsOf(now, is)]
  if (sameData(old, fresh)) return []
  return [
    ...old.filter((say) => !fresh.includes(say)).map((say): Change => ({ what: 'warning', before: [say], now: null })),
    ...fresh.filter((say) => !old.includes(say)).map((say): Change => ({ what: 'warning', before: null, now: [say] })),
  ]
}
