import type { Ask } from './ask.ts'

/** Asked of a choice among jobs: see `among.ts`, which puts several on one sheet. */
export const refusal: Ask = { says: 'which of several jobs cannot be cut, and why', make: () => [] }
