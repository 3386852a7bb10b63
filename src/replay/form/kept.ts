import type { Form } from '../../moves/form.ts'

/**
 * Keeps what was worked out from two forms and some numbers: many replays begin from one part and go to one drawing. Forms are never changed once they
 * are made, and what is kept is dropped together with them.
 */
export const kept = <T>(): ((form: Form, other: Form, numbers: readonly number[], make: () => T) => T) => {
  const all = new WeakMap<Form, WeakMap<Form, Map<string, T>>>()
  return (form, other, numbers, make) => {
    const ofForm = all.get(form) ?? new WeakMap<Form, Map<string, T>>()
    all.set(form, ofForm)
    const ofBoth = ofForm.get(other) ?? new Map<string, T>()
    ofForm.set(other, ofBoth)
    const key = numbers.join(' ')
    const known = ofBoth.get(key)
    if (known !== undefined) return known
    const made = make()
    ofBoth.set(key, made)
    return made
  }
}
