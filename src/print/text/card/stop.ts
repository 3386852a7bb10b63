import { heldWords, number, words } from '../../../phrase/words.ts'
import type { Stop } from '../../../sheet/card/types.ts'
import type { StopTable } from '../../../sheet/sheet.ts'
import type { Units } from '../../../units/length.ts'
import { wrap } from '../columns.ts'
import { flowed } from './boxes.ts'

const BLANK = '______'
const IN = 4

/** A blank for each size, with what it should be; or the tables that ask for it and say what follows. */
export const stopLines = ({ sizes, tables, rules }: Stop, units: Units, width: number): string[] => {
  const room = width - IN
  const asked = tables.length === 0
  const rest = sizes.filter(({ id }) => !tables.some(({ by }) => by === id))
  const pins = sizes.flatMap(({ label, over }) => (over === undefined ? [] : [`${label}: ${words(over, units)}`]))
  return [
    ...flowed(
      rest.map(({ label, size, limits }) => {
        const wanted =
          limits === null ? `(${number(size, units)})` : limits.map((limit) => number(limit, units)).join(' to ')
        return asked ? `${label} ${BLANK} ${wanted}` : `${label} ${wanted}`
      }),
      room,
    ),
    ...pins.flatMap((each) => wrap(each, room)),
    ...tables.flatMap((table) => tableLines(table, units, room)),
    ...rules.flatMap((rule) => wrap(heldWords(rule, units), room)),
  ].map((line) => ' '.repeat(IN) + line)
}

const tableLines = ({ by, at, expected, rows, short }: StopTable, units: Units, width: number): string[] =>
  flowed(
    [
      `${words(at, units)}: ${ASKED[by]} (${number(expected, units)})`,
      ...rows.map(({ keys, reading }) => `${words(keys, units)}: ${words(reading, units)}`),
      ...short.map((rule) => words(rule, units)),
    ],
    width,
  )

const ASKED: Readonly<Record<StopTable['by'], string>> = {
  outsideLessBottom: `outside ${BLANK} less bottom ${BLANK} = ${BLANK}`,
  bottomDiameter: `bottom diameter ${BLANK}`,
  width: `width ${BLANK}`,
}
