import type { Figure, Role } from '../phrase/phrase.ts'
import type { Corrections, Sheet, SheetFeature, SheetStep } from './sheet.ts'

/** The same width for every value behind it. */
const BLANK = '_____'

/**
 * The sheet with every figure of these roles left blank, and also every plain number of the sheet with the same
 * information: so that none of it is printed, in any format. `keep`: ids of figures that are printed all the same.
 */
export const hidden = (
  sheet: Sheet,
  roles: ReadonlySet<Role>,
  keep: (figure: Figure) => boolean = () => false,
): Sheet => {
  if (roles.size === 0) return sheet
  // A picture shows the answers, and so do the changes since another sheet.
  const { grind, changed: _, slips, drawing: __, ...plain } = withBlanks(sheet, roles, keep) as Sheet
  const hides = (...some: readonly Role[]): boolean => some.some((role) => roles.has(role))
  return {
    ...plain,
    // The name is worked out from the moves: anyone who has it could try readings until it matches.
    identity: null,
    features: plain.features.map((feature) => withoutNumbers(feature, hides)),
    steps: plain.steps.map((step) => stepWithout(step, hides)),
    // This shows the tool in plain numbers too.
    ...(grind === undefined || hides('tool', 'angle', 'instrument') ? {} : { grind }),
    ...(slips === undefined ? {} : { slips }),
  }
}

type Hides = (...some: readonly Role[]) => boolean

/** Every figure of the tree, at any depth. */
const withBlanks = (part: unknown, roles: ReadonlySet<Role>, keep: (figure: Figure) => boolean): unknown => {
  if (Array.isArray(part)) return part.map((one) => withBlanks(one, roles, keep))
  if (typeof part !== 'object' || part === null) return part
  if (isFigure(part)) return roles.has(part.role) && !keep(part) ? blank(part) : part
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, withBlanks(one, roles, keep)]))
}

const isFigure = (part: object): part is Figure => 'role' in part && 'value' in part && 'digits' in part

const blank = ({ id, role, unit, from }: Figure): Figure => ({
  id,
  role,
  value: Number.NaN,
  unit,
  digits: 0,
  from,
  text: BLANK,
})

const stepWithout = (step: SheetStep, hides: Hides): SheetStep => {
  const { atLeast, takeUp, place, ...rest } = step
  const open = hides('reading', 'mark', 'turns')
  return {
    ...rest,
    ...(open ? { reading: null, turns: null, mark: null } : {}),
    ...(atLeast === undefined || takeUp === undefined || hides('take-up') ? {} : { atLeast, takeUp }),
    ...(place === undefined || hides('place') ? {} : { place }),
    ...(step.corrections === undefined ? {} : { corrections: tableWithout(step.corrections, open) }),
    ...(step.widthCorrections === undefined ? {} : { widthCorrections: tableWithout(step.widthCorrections, open) }),
    ...(step.metalLeft === undefined
      ? {}
      : {
          metalLeft: {
            ...step.metalLeft,
            sizes: step.metalLeft.sizes.map((size) => (open ? { ...size, reading: Number.NaN } : size)),
          },
        }),
  }
}

type Table = { readonly rows: readonly { readonly finishes: Corrections['rows'][number]['finishes'] }[] }

const tableWithout = <T extends Table>(table: T, open: boolean): T =>
  open
    ? {
        ...table,
        rows: table.rows.map((row) => ({
          ...row,
          finishes: row.finishes.map(({ step }) => ({ step, reading: Number.NaN, turns: null, mark: null })),
        })),
      }
    : table

const withoutNumbers = (feature: SheetFeature, hides: Hides): SheetFeature => {
  if (feature.status === 'refused') return feature
  const { spindle, zero, placing, touch, lines, drawing: _, ...rest } = feature
  const where = hides('place', 'along')
  return {
    ...rest,
    undersize: hides('undersize') ? null : feature.undersize,
    compoundAngle: hides('angle') ? Number.NaN : feature.compoundAngle,
    spindle: hides('speed')
      ? { ...spindle, rpm: Number.NaN, wanted: Number.NaN, cuttingSpeed: Number.NaN, factor: Number.NaN }
      : spindle,
    zero: where || hides('reading', 'depth') ? { fromEnd: Number.NaN, diameter: Number.NaN } : zero,
    placing: where ? (withoutNumbersIn(placing) as typeof placing) : placing,
    touch: where ? (withoutNumbersIn(touch) as typeof touch) : touch,
    lines: where ? [] : lines,
    clear: hides('clearance') ? Number.NaN : feature.clear,
    cusp: feature.cusp === null || !hides('planned') ? feature.cusp : { ...feature.cusp, ridge: Number.NaN },
  }
}

/** The same without its numbers. */
const withoutNumbersIn = (part: unknown): unknown => {
  if (typeof part === 'number') return Number.NaN
  if (Array.isArray(part)) return part.map(withoutNumbersIn)
  if (typeof part !== 'object' || part === null) return part
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, withoutNumbersIn(one)]))
}
