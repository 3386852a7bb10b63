import { either } from '../job/schema-walk.ts'
import { type Format, formatNamed, formatsOf } from '../print/registry.ts'
import { UsageError } from './io.ts'

/** What stands beside the steps of a sheet has no place in a format that has the moves or the drawings alone. */
export const noPlaceIn = (option: string, format: Format): void => {
  const { movesAlone } = formatNamed(format)
  if (movesAlone === undefined) return
  const others = formatsOf('sheet').filter((each) => formatNamed(each).movesAlone === undefined)
  throw new UsageError(`${option} has no place in ${movesAlone}: leave it out, or print ${either(others)}`)
}
