import type { Budgeted } from '../budget/budgeted.ts'
import type { Scale } from '../lathe/lathe.ts'
import { readingFigure } from '../phrase/dial.ts'
import { dimensionFigure } from '../phrase/dimensions.ts'
import { identify } from '../phrase/figure.ts'
import type { Figure, Phrase } from '../phrase/phrase.ts'
import { causeWords, labelOf } from '../plan/labels.ts'
import type { Plan } from '../plan/plan.ts'
import { INCH, inUnits, type Units } from '../units/length.ts'
import type { Planned } from './scene.ts'
import type { ProofLine } from './sheet.ts'

/** What was replayed, and the range of each finished dimension. */
export const proofOf = (plan: Plan, feature: Planned, position: number) => ({
  replayed: identify(`feature.${position + 1}.proof`, replayed(plan, feature)),
  lines: aligned(
    feature.budget.map((budgeted) =>
      line(budgeted, aimOf(feature, budgeted), plan.units, `feature.${position + 1}.proof.${budgeted.id}`),
    ),
  ),
})

/** All lengths with as many decimals as the one that needs most. */
const aligned = (lines: readonly ProofLine[]): readonly ProofLine[] => {
  const lengths = lines.filter(({ id, settled }) => id !== 'angle' && !settled)
  const digits = Math.max(
    ...lengths.flatMap(({ planned, low, high, measured }) =>
      [planned, low, high, ...(measured === null ? [] : [measured.low, measured.high])].map((one) => one.digits),
    ),
  )
  return lines.map((one) => {
    if (!lengths.includes(one)) return one
    const { planned, low, high } = one
    const { measured } = one
    return {
      ...one,
      planned: { ...planned, digits },
      low: { ...low, digits },
      high: { ...high, digits },
      measured:
        measured === null
          ? null
          : { ...measured, low: { ...measured.low, digits }, high: { ...measured.high, digits } },
    }
  })
}

const aimOf = ({ operation }: Planned, { id }: Budgeted): number =>
  operation.dimensions.find((one) => one.id === id)?.aim ?? Number.NaN

const replayed = (plan: Plan, { operation }: Planned): Phrase => {
  const each: (readonly [string, Scale])[] = [
    ['cross-feed', plan.lathe.crossFeed],
    ['compound', plan.lathe.compound.scale],
    ...(plan.lathe.carriage !== null && operation.moves.some(byCarriage)
      ? ([['carriage', plan.lathe.carriage]] as const)
      : []),
  ]
  const dials = each.flatMap(([name, scale]): Phrase[] =>
    scale.kind === 'dial'
      ? [['0 to ', { ...readingFigure(scale, scale.backlash), role: 'backlash' }, ` (${name})`]]
      : [],
  )
  if (dials.length === 0) return ['CHECKED BY REPLAY, move by move; the readouts have no lost motion']
  return [
    'CHECKED BY REPLAY, any backlash ',
    ...dials.flatMap((dial, i) => (i === 0 ? dial : [dials.length > i + 1 ? ', ' : ' and ', ...dial])),
  ]
}

const byCarriage = ({ slide, count }: Planned['operation']['moves'][number]): boolean =>
  slide === 'carriage' && typeof count === 'number'

const line = (budgeted: Budgeted, aim: number, units: Units, place: string): ProofLine => {
  const one = (role: Figure['role'], value: number, name: string): Figure => ({
    ...dimensionFigure(role, budgeted.id, value, units),
    id: `${place}.${name}`,
  })
  const { limits, spare } = budgeted
  return {
    id: budgeted.id,
    label: labelOf(budgeted.id),
    settled: settled(budgeted, aim),
    verdict: budgeted.verdict,
    planned: one('planned', budgeted.planned, 'planned'),
    low: { ...beyondLimit(one('low', budgeted.low, 'low'), budgeted, 0, units), toward: 'down' },
    high: { ...beyondLimit(one('high', budgeted.high, 'high'), budgeted, 1, units), toward: 'up' },
    rss: { ...one('rss', budgeted.rss, 'rss'), ...(budgeted.id === 'angle' ? {} : { digits: finest(units) }) },
    limits: limits === null ? null : [one('limit', limits[0], 'limit.low'), one('limit', limits[1], 'limit.high')],
    measured: measuredOf(budgeted, units, place),
    spare: spare === null ? null : { ...spareFigure(budgeted, units), id: `${place}.spare` },
    worstCause: budgeted.worstCause === 'none' ? null : causeWords(budgeted.worstCause),
    remedy: budgeted.verdict === 'may not hold' ? identify(`${place}.remedy`, remedy(budgeted, units)) : null,
  }
}

const measuredOf = (budgeted: Budgeted, units: Units, place: string): ProofLine['measured'] => {
  const { id, measured } = budgeted
  if (measured === undefined) return null
  const one = (role: Figure['role'], value: number, name: string): Figure => ({
    ...dimensionFigure(role, id, value, units),
    id: `${place}.measured.${name}`,
  })
  return {
    low: { ...beyondLimit(one('low', measured.low, 'low'), budgeted, 0, units), toward: 'down' },
    high: { ...beyondLimit(one('high', measured.high, 'high'), budgeted, 1, units), toward: 'up' },
    rss: { ...one('rss', measured.rss, 'rss'), ...(id === 'angle' ? {} : { digits: finest(units) }) },
    worstCause: measured.worstCause === 'none' ? null : causeWords(measured.worstCause),
    better: measured.better,
  }
}

/** Ten-thousandths of an inch, or micrometers. */
const finest = (units: Units): number => (units === 'inch' ? 4 : 3)

/** Never rounded so that more is to spare than there is, or less is beyond a limit. */
const spareFigure = ({ id, spare, verdict }: Budgeted, units: Units): Figure => {
  const toward = verdict === 'holds' ? 'down' : 'up'
  const plain = dimensionFigure('spare', id, Math.abs(spare ?? 0), units)
  if (id === 'angle') return { ...plain, toward }
  const digits = Math.min(plain.digits, finest(units))
  return { ...plain, digits: toward === 'up' ? trulyShown(plain.value, digits) : digits, toward }
}

/** Beyond its limit, with enough digits that it does not show much further beyond than it is. */
const beyondLimit = (figure: Figure, { id, limits }: Budgeted, end: 0 | 1, units: Units): Figure => {
  if (limits === null || id === 'angle') return figure
  const limit = inUnits(limits[end], units)
  const beyond = end === 0 ? limit - figure.value : figure.value - limit
  if (beyond < 1e-8) return figure
  // Outward of a low bound is down: so its negative is rounded up.
  return { ...figure, digits: trulyShown(end === 0 ? -figure.value : figure.value, figure.digits, beyond) }
}

/** Digits with which rounding up adds no more than half of a difference; six at the most. */
const trulyShown = (value: number, digits: number, difference: number = value): number => {
  const shown = (places: number): number => Math.ceil(value * 10 ** places - 1e-6) / 10 ** places
  let places = digits
  while (places < 6 && shown(places) - value > difference / 2) places++
  return places
}

/** Within a millionth of an inch in pm, or half of the minute to which an angle is shown. */
const settled = ({ id, planned, low, high, limits }: Budgeted, aim: number): boolean => {
  const most = id === 'angle' ? 1 / 120 : INCH / 1_000_000
  return limits === null && [planned, low, high].every((size) => Math.abs(size - aim) < most)
}

/** What would make it hold: less of the largest error. */
const remedy = (budgeted: Budgeted, units: Units): Phrase => {
  return [
    `would hold with `,
    spareFigure(budgeted, units),
    ` less of "${causeWords((budgeted.measured ?? budgeted).worstCause)}", the largest cause`,
  ]
}
