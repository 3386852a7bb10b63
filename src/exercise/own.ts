import type { Diagnostic } from '../diagnostics/diagnostic.ts'
import { type Load, openFiles } from '../job/read-files.ts'
import type { Learner } from './exercise.ts'
import { problem } from './inline.ts'
import { at, isScalar, scalar, type Tree, treeOf, withValue } from './tree.ts'

/**
 * What is only a learner's own, put into a job: a lathe file, and values by their path. Each file is read once;
 * `report` gets what is wrong with them.
 */
export const ownValues = (
  load: Load,
  report: (one: Diagnostic) => void,
): ((learner: Learner) => (tree: Tree) => Tree) => {
  const files = openFiles(load, report)
  const read = new Map<string, Tree | null>()
  const fileAt = (path: string, from: string): Tree | null => {
    const known = `${from}\n${path}`
    if (!read.has(known)) {
      const source = files.open(path, { file: from, path: [], as: 'lathe' })
      read.set(known, source === undefined ? null : treeOf(source))
    }
    return read.get(known) ?? null
  }
  return ({ own, from = '' }) =>
    (tree) => {
      let made = tree
      for (const [path, text] of own) {
        const there = at(made, path)
        const value = path === 'lathe' ? fileAt(text, from) : there !== null && isScalar(there) ? scalar(text) : null
        if (value !== null) made = withValue(made, path, value)
        else if (path !== 'lathe')
          report(
            problem(
              from,
              [],
              'learner',
              `the base job has nothing at ${path}`,
              'name a column learner, lathe, or a path of the job',
            ),
          )
      }
      return made
    }
}
