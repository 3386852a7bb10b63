import { type Data, dataIn, isData, listIn, numberIn, sameData, textIn } from '../sheet/changed/data.ts'

/**
 * What a kept sheet relies on and today's job gives differently: the same readings would then not be the same cuts. How
 * finely a dial is read and its lost motion may have changed, and so may the sizes of the drawing: today's are used.
 */
export const otherFacts = (kept: Data, today: Data, last: string): readonly string[] => [
  ...compared('units', kept.units, today.units),
  ...DIALS.flatMap(([key, name]) => {
    const [then, now] = [dataIn(kept.lathe)[key], dataIn(today.lathe)[key]]
    if (!isData(then) || !isData(now)) return []
    return SCALE.flatMap(([part, word]) => compared(`${word} of the ${name}`, then[part], now[part]))
  }),
  ...upTo(today, last).flatMap((feature) => {
    const name = textIn(feature.name)
    const then = listIn(kept.features)
      .map(dataIn)
      .find((one) => textIn(one.name) === name)
    return then === undefined || then.status !== 'planned' ? [] : featureFacts(name, then, feature)
  }),
]

const DIALS = [
  ['crossFeed', 'cross-feed'],
  ['compound', 'compound'],
  ['carriage', 'carriage'],
] as const
const SCALE = [
  ['units', 'units'],
  ['graduation', 'marks'],
  ['perTurn', 'turn'],
  ['reads', 'sense'],
  ['readout', 'kind'],
] as const
const FEATURE = [
  ['kind', 'kind'],
  ['compoundAngle', 'angle of the compound'],
  ['surface', 'diameter it is cut on'],
  ['placing', 'place the tool is brought to'],
  ['touch', 'touch'],
] as const
const EDGE = ['shape', 'width', 'nose', 'angle', 'radius'] as const

const featureFacts = (name: string, then: Data, now: Data): readonly string[] =>
  [
    ...FEATURE.flatMap(([key, word]) => compared(word, then[key], now[key])),
    ...EDGE.flatMap((key) => compared(`${key} of the tool`, dataIn(then.edge)[key], dataIn(now.edge)[key])),
  ].map((words) => `${JSON.stringify(name)}: ${words}`)

/** The features up to and including the named one. */
const upTo = (sheet: Data, last: string): readonly Data[] => {
  const all = listIn(sheet.features).map(dataIn)
  return all.slice(0, all.findIndex(({ name }) => name === last) + 1).filter(({ status }) => status === 'planned')
}

/** What an older sheet does not contain is no difference. */
const compared = (what: string, then: unknown, now: unknown): readonly string[] =>
  then === undefined || now === undefined || alike(then, now)
    ? []
    : [`the ${what} was ${shown(then)} and is ${shown(now)} now`]

const alike = (then: unknown, now: unknown): boolean => {
  const [one, other] = [numberIn(then), numberIn(now)]
  return one !== null && other !== null ? Math.abs(one - other) < 1e-7 : sameData(then, now)
}

const shown = (value: unknown): string => (typeof value === 'object' && value !== null ? 'another' : String(value))
