import type { Code } from '../diagnostics/codes.ts'
import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import type { Files } from '../job/read-files.ts'
import type { SourceFile } from '../source/source.ts'
import { at, isScalar, type Tree, treeOf, withValue } from './tree.ts'

/** A job with the lathe and the toolbox that it names in it, so that every value has a path. */
export const inlined = (source: SourceFile, files: Files): Tree | null => {
  let tree = treeOf(source)
  for (const [key, as] of [
    ['lathe', 'lathe'],
    ['tools', 'toolbox'],
  ] as const) {
    const named = at(tree, key)
    if (named === null || !isScalar(named)) continue
    const included = files.open(named.written, { file: source.file, path: [key], as })
    if (included === undefined) return null
    tree = withValue(tree, key, treeOf(included))
  }
  return tree
}

export const problem = (
  file: string,
  path: Diagnostic['origin']['path'],
  code: Code,
  message: string,
  hint: string,
): Diagnostic => ({ code, severity: 'error', origin: { file, path }, message, hint })
