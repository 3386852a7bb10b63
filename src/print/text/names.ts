import type { Sheet } from '../../sheet/sheet.ts'

/** The name to ask for, and to give, if it matters which sheet was cut. */
export const sheetName = ({ identity, continues }: Sheet): string =>
  continues === undefined
    ? identity === null
      ? 'nothing is planned'
      : `sheet ${identity}`
    : identity === null
      ? 'goes on from another one'
      : `goes on from ${identity}`
