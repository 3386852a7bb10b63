import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { Given } from '../diagnostics/given.ts'
import type { GivenLookup } from './read-feature.ts'
import type { Places } from './reader.ts'

/**
 * Gives the rules of a kind the values of a mapping and takes their reports, so that the rules need not know files and
 * paths.
 */
export const givenLookup =
  (places: Places, diagnostics: Diagnostic[]): GivenLookup =>
  <T extends object>(values: T): Given<T> => {
    const place = places.get(values)
    if (!place) throw new Error(`not read from any file: ${JSON.stringify(values)}`)
    return {
      values,
      has: (key) => place.keys.has(key),
      report: (key, code, message, hint) => {
        const at = key === null ? undefined : place.keys.get(key)
        diagnostics.push({
          code,
          severity: 'error',
          origin: { file: place.file, path: at ?? place.path },
          at: at && !code.endsWith('-key') && !code.endsWith('-keys') ? 'value' : 'key',
          message,
          hint,
        })
      },
      origin: { file: place.file, path: place.path },
    }
  }
