import { either } from '../job/schema-walk.ts'
import { type Format, formatNamed, formatsOf } from '../print/registry.ts'
import { UsageError } from './io.ts'

type Asked = { readonly format: Format; readonly card?: boolean; readonly width?: number }

/** A card and a width are for formats that are printed in lines. */
export const inLinesOnly = ({ format, card }: Asked): void => {
  if (formatNamed(format).inLines === true) return
  const others = formatsOf('sheet').filter((each) => formatNamed(each).inLines === true)
  throw new UsageError(
    `${card === true ? '--card' : '--width'} has no place in ${format}: leave it out, or print ${either(others)}`,
  )
}
