/** A stored sheet is a file that anyone may have edited: everything in it is unknown until it is checked. */
export type Data = { readonly [key: string]: unknown }

export const isData = (value: unknown): value is Data =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const dataIn = (value: unknown): Data => (isData(value) ? value : {})
export const listIn = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : [])
export const textIn = (value: unknown): string => (typeof value === 'string' ? value : '')
export const numberIn = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) ? value : null

/** Equal as written in a file. */
export const sameData = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)
