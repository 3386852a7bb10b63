import type { Form } from '../moves/form.ts'
import type { Operation } from '../moves/operation.ts'
import { type Box, shrunk } from './form/dilate.ts'
import { cutInto } from './form/insert.ts'

/**
 * The forms that must be cut at the least, out of the part as it was. Where a form is stepped along a ridge of its cusp may stay, but not on
 * a floor that is fed across: that is held like any other.
 */
export const leastForms = ({ wanted, cusp }: Operation, before: Form, box: Box): readonly Form[] => {
  const less = (form: Form, by: Box): Form => {
    const target = [...before]
    cutInto(target, form)
    return shrunk(target, by)
  }
  if (cusp === undefined) return [less(wanted, box)]
  const floor = wanted.filter(({ curve }) => curve.kind === 'line' && curve.d0 === curve.d1)
  return [less(wanted, { ...box, deep: box.deep + cusp }), ...(floor.length === 0 ? [] : [less(floor, box)])]
}
