import type { Code } from './codes.ts'
import type { Origin } from './diagnostic.ts'

/**
 * The keys of one mapping as read. `values` holds the values that could be read; a key that is given but wrong is in
 * `has` and not in `values`, so that rules about combinations do not report it a second time.
 */
export type Given<T> = {
  readonly values: T
  readonly has: (key: keyof T & string) => boolean
  /** Reports at the named key if it is given, otherwise at the mapping itself. */
  readonly report: (key: (keyof T & string) | null, code: Code, message: string, hint: string) => void
  readonly origin: Origin
}

/** A schema's output as far as it could be read: every key may be missing, at every depth. */
export type AsRead<T> = T extends string | number | boolean | null | undefined | { readonly aim: number }
  ? T
  : T extends readonly (infer E)[]
    ? readonly (AsRead<E> | undefined)[]
    : { readonly [K in keyof T]?: AsRead<Exclude<T[K], undefined>> | undefined }
