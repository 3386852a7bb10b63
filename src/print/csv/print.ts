import type { Sheet, SheetStep } from '../../sheet/sheet.ts'
import { inUnits } from '../../units/length.ts'

const COLUMNS = ['feature', 'action', 'slide', 'reading', 'at-least', 'why']

/** The steps as a table, one row per move: a spreadsheet can change it and a replay can read it. */
export const printCsv = (sheet: Sheet): string => {
  const names = sheet.features.map(({ name, index }) => (plainName(name, sheet) ? name : String(index + 1)))
  const byEye = sheet.steps.some(({ place }) => place !== undefined)
  const place = (step: SheetStep): string[] =>
    byEye ? [decimal(step.place === undefined ? null : inUnits(step.place, sheet.units))] : []
  const rows = sheet.steps.map((step) => [...cells(step, names[step.feature]!), ...place(step)].map(quoted).join(','))
  return `${[[...COLUMNS, ...(byEye ? ['place'] : [])].join(','), ...rows].join('\n')}\n`
}

const cells = (step: SheetStep, feature: string): string[] => [
  feature,
  step.action,
  step.slide ?? '',
  step.reading === null ? '' : decimal(step.reading),
  // Marks of a take-up before its dial has a zero: the only move without a reading.
  decimal(step.takeUp ?? null),
  step.purpose ?? '',
]

const decimal = (value: number | null): string =>
  value === null
    ? ''
    : value
        .toFixed(9)
        .replace(/\.?0+$/, '')
        .replace(/^-0$/, '0')

/** A name is printed only if it is unique, and if no spreadsheet takes it for a formula. */
const plainName = (name: string, { features }: Sheet): boolean =>
  /^[A-Za-z]/.test(name) &&
  name.trim() === name &&
  features.filter((other) => other.name.toLowerCase() === name.toLowerCase()).length === 1

const quoted = (cell: string): string => (/[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)
