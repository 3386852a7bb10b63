import type { Path, Span } from '../diagnostics/diagnostic.ts'
import type { Place, SourceFile } from './source.ts'

/** Finds paths in the tree of a file. */
export function locator(
  root: Place,
  spanOf: (from: number, to: number) => Span,
): Pick<SourceFile, 'locate' | 'scalarSource'> {
  return {
    locate: (path, at) => {
      const { place, missing } = find(root, path)
      return spanOf(...rangeOf(place, missing ? 'key' : at))
    },
    scalarSource: (path) => {
      const { place, missing } = find(root, path)
      return missing ? undefined : place.scalar
    },
  }
}

/** Follows a path as far as it goes. */
function find(root: Place, path: Path): { place: Place; missing: boolean } {
  let place = root
  for (const step of path) {
    const child = place.children.get(String(step))
    if (!child) return { place, missing: true }
    place = child
  }
  return { place, missing: false }
}

/**
 * If there is no key (root, items of lists), the range of the value is used; if nothing is written after a key, the
 * range of the key.
 */
const rangeOf = (place: Place, at: 'key' | 'value'): readonly [number, number] =>
  place.key && (at === 'key' || !place.written) ? place.key : place.value
