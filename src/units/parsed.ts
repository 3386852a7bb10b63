/**
 * The result of a reader of one value: the value, or what is wrong with the text and what would be right. Sentences
 * without a final period.
 */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string; readonly hint: string }

export const parsed = <T>(value: T): Parsed<T> => ({ ok: true, value })

export const refused = (message: string, hint: string): Parsed<never> => ({ ok: false, message, hint })
